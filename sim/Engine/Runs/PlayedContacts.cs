using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// Auxiliary contacts for a controller that decides otherwise than the recorded one: a contact whose coil is told something else
/// follows it at once, until commands and recorded contact agree again. Every other contact is as recorded.
/// </summary>
internal sealed class PlayedContacts
{
    private const int LineBit = 1 << 16;
    private const int BrakeBit = 1 << 17;
    private const int FieldBit = 1 << 18;
    private const int StageBits = LineBit - 1;

    private int _commandsThen;
    private int _played;

    /// <summary>Puts the contacts of a tick into its readings.</summary>
    /// <param name="recorded">The tick as recorded; the readings are its own.</param>
    /// <param name="outputs">What the controller commanded on the tick before.</param>
    /// <param name="readings">Readings of this tick.</param>
    public void Show(in Sample recorded, Outputs outputs, Readings readings)
    {
        int commandsNow = Bits(outputs.CloseStages, outputs.CloseLine, outputs.CloseBrake, outputs.CloseField);
        int contactsThen = Bits(readings.StagesClosed, readings.LineClosed, readings.BrakeClosed, readings.FieldClosed);
        int differ = _commandsThen ^ commandsNow;
        _played = differ | (_played & (contactsThen ^ commandsNow));
        int contacts = (contactsThen & ~_played) | (commandsNow & _played);
        readings.StagesClosed = contacts & StageBits;
        readings.LineClosed = (contacts & LineBit) != 0;
        readings.BrakeClosed = (contacts & BrakeBit) != 0;
        readings.FieldClosed = (contacts & FieldBit) != 0;
        _commandsThen = Bits(recorded.CloseStages, recorded.CloseLine, recorded.CloseBrake, recorded.CloseField);
    }

    private static int Bits(int stages, bool line, bool brake, bool field) =>
        (stages & StageBits) | (line ? LineBit : 0) | (brake ? BrakeBit : 0) | (field ? FieldBit : 0);
}
