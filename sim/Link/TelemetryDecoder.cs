using StarterCtl.Engine.Records;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>Makes rows of a record of the samples that a board sends, so that a board's record and a simulated one lie over each other.</summary>
/// <remarks>What only a simulation knows, the torques, is not a number here, nor is what a board does not send.</remarks>
public sealed class TelemetryDecoder
{
    private const double SecondsPerMicrosecond = 1e-6;

    private readonly TelemetryMessage _message = new();
    private long _microseconds;
    private int _lastMicroseconds;
    private int _lastDropped;
    private bool _hasBegun;

    /// <summary>Samples that the board left out since the first that came.</summary>
    public long Dropped { get; private set; }

    /// <summary>Takes a sample.</summary>
    /// <param name="frame">A frame of <see cref="MessageId.Telemetry"/> and of its length.</param>
    public Sample Take(Frame frame)
    {
        _message.Read(frame);
        // The board's counters are short: they run on here by their differences.
        _microseconds = _hasBegun ? _microseconds + unchecked((uint)(_message.TimeMicroseconds - _lastMicroseconds)) : unchecked((uint)_message.TimeMicroseconds);
        Dropped += _hasBegun ? (_message.DroppedSamples - _lastDropped) & 0xFFFF : 0;
        _lastMicroseconds = _message.TimeMicroseconds;
        _lastDropped = _message.DroppedSamples;
        _hasBegun = true;
        return Row();
    }

    private Sample Row() => new()
    {
        TimeSeconds = _microseconds * SecondsPerMicrosecond,
        SupplyVolts = _message.SupplyVolts,
        ArmatureAmps = _message.ArmatureAmps,
        SpeedRadPerSec = _message.SpeedRadPerSec,
        BackEmfVolts = _message.BackEmfVolts,
        ResistiveBackEmfVolts = Is(TelemetrySwitches.ResistiveValid) ? _message.ResistiveBackEmfVolts : float.NaN,
        TorqueNewtonMetres = double.NaN,
        LoadTorqueNewtonMetres = double.NaN,
        ArmatureCelsius = float.NaN,
        FieldCelsius = float.NaN,
        HottestSectionCelsius = float.NaN,
        ResistorCelsius = float.NaN,
        Phase = _message.Phase,
        Stage = _message.Stage,
        Reason = _message.Reason,
        ReasonQuantity = _message.ReasonQuantity,
        ReasonLimit = _message.ReasonLimit,
        CloseLine = Is(TelemetrySwitches.CloseLine),
        LineClosed = Is(TelemetrySwitches.LineClosed),
        CloseStages = _message.CloseStages,
        StagesClosed = _message.StagesClosed,
        Fault = _message.Fault,
        FieldAmps = _message.FieldAmps,
        CloseBrake = Is(TelemetrySwitches.CloseBrake),
        BrakeClosed = Is(TelemetrySwitches.BrakeClosed),
        CloseField = Is(TelemetrySwitches.CloseField),
        FieldClosed = Is(TelemetrySwitches.FieldClosed),
        SpeedValid = Is(TelemetrySwitches.SpeedValid),
    };

    private bool Is(TelemetrySwitches bit) => (_message.Switches & bit) != 0;
}
