namespace StarterCtl.Engine.Machines;

/// <summary>
/// A field winding: <c>Lf dIf/dt = Vf - Rf If</c> while its circuit is closed, with Vf its own supply's voltage or, for a shunt
/// winding, the machine's. While it is open the current dies through the discharge resistor with that resistor's time
/// constant.
/// </summary>
public sealed record FieldCircuit
{
    /// <summary>Voltage of the field's own supply, V, 0 or more; 0 is a shorted supply, through which the current freewheels.</summary>
    public required double SupplyVolts { get; init; }

    /// <summary>Resistance of the field circuit, ohm, above 0.</summary>
    public required double Ohms { get; init; }

    /// <summary>Inductance of the field winding, H; with 0 the current follows at once, its breaking too.</summary>
    public double Henries { get; init; }

    /// <summary>
    /// True for a shunt winding: it lies across the supply's terminals, before the line contact, and its current loads the
    /// supply. <see cref="SupplyVolts"/> says nothing then.
    /// </summary>
    public bool IsShunt { get; init; }

    /// <summary>
    /// Resistance between the terminals and a shunt winding that carries both currents, ohm, 0 or more: the series winding of
    /// a short-shunt compound machine.
    /// </summary>
    public double SharedOhms { get; init; }

    /// <summary>
    /// Time constant with which the current dies in an open circuit, s, 0 or more; never longer than the winding's own
    /// Lf / Rf, because the discharge resistor only adds to it. The default is common practice, no source.
    /// </summary>
    public double DischargeSeconds { get; init; } = 0.05;

    /// <summary>True when the controller's field contactor switches the field; else it stands from the beginning.</summary>
    public bool HasContactor { get; init; }
}
