using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>The wires of the analogue sensors: each sound, at its last reading, or open.</summary>
internal sealed class SensorWires(SensorModel? model)
{
    private readonly float?[] _held = new float?[4];

    /// <summary>True while any reading is not its sensor's.</summary>
    public bool AreBroken { get; private set; }

    /// <summary>Breaks a wire, or mends it.</summary>
    /// <param name="fault">Which, and how.</param>
    /// <param name="readings">The last readings.</param>
    public void Obey(SensorFault fault, Readings readings)
    {
        _held[(int)fault.Sensor] = fault.Kind switch
        {
            SensorFaultKind.Stuck => LastOf(fault.Sensor, readings),
            SensorFaultKind.OpenWire => LowestOf(fault.Sensor),
            _ => null,
        };
        AreBroken = System.Array.Exists(_held, held => held != null);
    }

    /// <summary>Puts what the broken wires give in the place of what the sensors do.</summary>
    public void Show(Readings readings)
    {
        readings.SupplyVolts = _held[(int)SensorName.SupplyVolts] ?? readings.SupplyVolts;
        readings.ArmatureAmps = _held[(int)SensorName.ArmatureAmps] ?? readings.ArmatureAmps;
        readings.FieldAmps = _held[(int)SensorName.FieldAmps] ?? readings.FieldAmps;
        readings.ResistorCelsius = _held[(int)SensorName.ResistorCelsius] ?? readings.ResistorCelsius;
    }

    private static float LastOf(SensorName sensor, Readings readings) => sensor switch
    {
        SensorName.SupplyVolts => readings.SupplyVolts,
        SensorName.ArmatureAmps => readings.ArmatureAmps,
        SensorName.FieldAmps => readings.FieldAmps,
        _ => readings.ResistorCelsius,
    };

    // Only volts and amperes of the armature have a range in a case.
    private float LowestOf(SensorName sensor)
    {
        double range = sensor switch
        {
            SensorName.SupplyVolts => model?.Voltage.Range ?? double.PositiveInfinity,
            SensorName.ArmatureAmps => model?.Current.Range ?? double.PositiveInfinity,
            _ => double.PositiveInfinity,
        };
        return double.IsFinite(range) ? (float)-range : 0f;
    }
}
