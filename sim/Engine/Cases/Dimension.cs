namespace StarterCtl.Engine.Cases;

/// <summary>What a quantity of a case file measures. Each has one SI unit, in which the program calculates.</summary>
public enum Dimension
{
    /// <summary>Volts.</summary>
    Voltage,

    /// <summary>Amperes.</summary>
    Current,

    /// <summary>Ohms.</summary>
    Resistance,

    /// <summary>Henries.</summary>
    Inductance,

    /// <summary>Watts.</summary>
    Power,

    /// <summary>Newton metres.</summary>
    Torque,

    /// <summary>Radians per second.</summary>
    Speed,

    /// <summary>Seconds.</summary>
    Time,

    /// <summary>Kilogram square metres.</summary>
    Inertia,

    /// <summary>Volt seconds per radian, the same number as newton metres per ampere.</summary>
    MachineConstant,

    /// <summary>Newton metre seconds per radian: torque in proportion to speed.</summary>
    ViscousTorque,

    /// <summary>Newton metre seconds squared per radian squared: torque in proportion to the square of speed.</summary>
    FanTorque,

    /// <summary>Webers.</summary>
    Flux,

    /// <summary>Joules.</summary>
    Energy,

    /// <summary>Degrees Celsius, in which the controller reads temperatures.</summary>
    Temperature,

    /// <summary>Joules per kelvin.</summary>
    ThermalCapacity,

    /// <summary>Kelvin per watt.</summary>
    ThermalResistance,

    /// <summary>Metres.</summary>
    Length,

    /// <summary>Square metres.</summary>
    Area,
}
