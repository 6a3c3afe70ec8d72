namespace StarterCtl.Engine.Runs;

/// <summary>The analogue sensors whose wires can go wrong; the speed's has <see cref="SpeedSignalState"/>.</summary>
public enum SensorName
{
    /// <summary>Voltage at the starter's input terminals.</summary>
    SupplyVolts,

    /// <summary>Armature current.</summary>
    ArmatureAmps,

    /// <summary>Field current.</summary>
    FieldAmps,

    /// <summary>Temperature of the starting resistor.</summary>
    ResistorCelsius,
}
