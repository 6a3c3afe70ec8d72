using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// A board whose analogue channels can be calibrated: they measure by <see cref="CalibratedChannel.InForce"/>, and their counts are
/// handed on in each control period.
/// </summary>
public sealed class CalibratedBoard : IBoard
{
    private readonly IBoard _board;
    private readonly AnalogChannel?[] _inputs = new AnalogChannel?[(int)CalibrationChannel.Count];

    /// <summary>One for each <see cref="CalibrationChannel"/>; those that the board has not are not fitted.</summary>
    public readonly CalibratedChannel[] Channels = new CalibratedChannel[(int)CalibrationChannel.Count];

    /// <summary>Takes what the wiring says of its channels as their nominal values, and puts the calibrated ones in its place.</summary>
    /// <param name="board">The board; what is read there is read here.</param>
    /// <param name="inputs">Its inputs; none where they stay closed.</param>
    /// <param name="map">Its wiring.</param>
    public CalibratedBoard(IBoard board, InputPanel? inputs, PinMap map)
    {
        _board = board;
        Adopt(CalibrationChannel.SupplyVolts, inputs?.Supply, map.Supply);
        Adopt(CalibrationChannel.ArmatureAmps, inputs?.Armature, map.Armature);
        Adopt(CalibrationChannel.FieldAmps, inputs?.Field, map.Field);
        Adopt(CalibrationChannel.TachoSpeed, inputs?.Tacho, map.Tacho);
    }

    /// <inheritdoc/>
    public int MicrosecondCounter() => _board.MicrosecondCounter();

    /// <inheritdoc/>
    public bool TryRead(Readings readings)
    {
        bool isRead = _board.TryRead(readings);
        for (int i = 0; i < Channels.Length; i++)
        {
            AnalogChannel? input = _inputs[i];
            if (input != null) Channels[i].Counts = input.Counts;
        }

        return isRead;
    }

    /// <inheritdoc/>
    public void Write(Outputs outputs) => _board.Write(outputs);

    private void Adopt(CalibrationChannel id, AnalogChannel? input, AnalogSetup setup)
    {
        CalibratedChannel channel = new CalibratedChannel();
        channel.Id = id;
        channel.Nominal.OffsetCounts = setup.Calibration.OffsetCounts;
        channel.Nominal.UnitsPerCount = setup.Calibration.UnitsPerCount;
        if (input != null) channel.FullScaleCounts = input.FullScaleCounts;
        setup.Calibration = channel.InForce;
        _inputs[(int)id] = input;
        Channels[(int)id] = channel;
    }
}
