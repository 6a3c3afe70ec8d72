using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Drives every output of a board once in each control period: first all that go off, line before brake before stages before field, then all that go on
/// in the opposite order. So nothing closes before what must be open has been told to open.
/// </summary>
public sealed class OutputPanel
{
    private readonly PinMap _map;
    private readonly IDigitalOutput?[] _outputs = new IDigitalOutput?[PinMap.RoleCount];

    /// <summary>Opens every output, each of them off from its first instant.</summary>
    /// <param name="map">A wiring that <see cref="BoardCheck"/> has passed.</param>
    /// <param name="pins">The board.</param>
    public OutputPanel(PinMap map, IBoardPins pins)
    {
        _map = map;
        Open(pins, PinRole.LineCoil);
        Open(pins, PinRole.BrakeCoil);
        for (int i = 0; i < Settings.MostStages; i++) Open(pins, PinRole.StageCoil1 + i);
        Open(pins, PinRole.FieldCoil);
        Open(pins, PinRole.ReadyLamp);
        Open(pins, PinRole.RunningLamp);
        Open(pins, PinRole.TrippedLamp);
    }

    /// <summary>Writes every output once.</summary>
    public void Write(Outputs outputs)
    {
        WriteIfOff(PinRole.LineCoil, outputs.CloseLine);
        WriteIfOff(PinRole.BrakeCoil, outputs.CloseBrake);
        for (int i = 0; i < Settings.MostStages; i++) WriteIfOff(PinRole.StageCoil1 + i, (outputs.CloseStages & (1 << i)) != 0);
        WriteIfOff(PinRole.FieldCoil, outputs.CloseField);

        WriteIfOn(PinRole.FieldCoil, outputs.CloseField);
        for (int i = 0; i < Settings.MostStages; i++) WriteIfOn(PinRole.StageCoil1 + i, (outputs.CloseStages & (1 << i)) != 0);
        WriteIfOn(PinRole.BrakeCoil, outputs.CloseBrake);
        WriteIfOn(PinRole.LineCoil, outputs.CloseLine);

        Drive(PinRole.ReadyLamp, outputs.ReadyLamp);
        Drive(PinRole.RunningLamp, outputs.RunningLamp);
        Drive(PinRole.TrippedLamp, outputs.TrippedLamp);
    }

    /// <summary>Looks at the pins themselves.</summary>
    /// <returns>The first role of a coil whose pin shows the energised level, or -1.</returns>
    public int FirstCoilOn()
    {
        if (IsOn(PinRole.LineCoil)) return (int)PinRole.LineCoil;
        if (IsOn(PinRole.BrakeCoil)) return (int)PinRole.BrakeCoil;
        if (IsOn(PinRole.FieldCoil)) return (int)PinRole.FieldCoil;
        for (int i = 0; i < Settings.MostStages; i++)
        {
            if (IsOn(PinRole.StageCoil1 + i)) return (int)PinRole.StageCoil1 + i;
        }

        return -1;
    }

    private void Open(IBoardPins pins, PinRole role)
    {
        if (_map.IsFitted(role)) _outputs[(int)role] = pins.Output(_map.Pin(role), _map.IsActiveLow(role));
    }

    private void WriteIfOff(PinRole role, bool isOn)
    {
        if (!isOn) Drive(role, false);
    }

    private void WriteIfOn(PinRole role, bool isOn)
    {
        if (isOn) Drive(role, true);
    }

    private void Drive(PinRole role, bool isOn)
    {
        IDigitalOutput? output = _outputs[(int)role];
        if (output != null) output.Write(isOn != _map.IsActiveLow(role));
    }

    private bool IsOn(PinRole role)
    {
        IDigitalOutput? output = _outputs[(int)role];
        return output != null && output.Read() != _map.IsActiveLow(role);
    }
}
