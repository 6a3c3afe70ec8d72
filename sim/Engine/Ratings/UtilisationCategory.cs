using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Ratings;

/// <summary>A utilisation category of DC contactors: what a contactor makes and breaks in its test, as multiples of its ratings.</summary>
/// <param name="Name">"DC-1", "DC-3" or "DC-5".</param>
/// <param name="Multiple">Current made and broken over the rated operational current.</param>
/// <param name="TimeConstantSeconds">L/R of the test circuit, s.</param>
/// <param name="For">What it is for.</param>
/// <remarks>IEC 60947-4-1, utilisation categories, making and breaking capacity; tests/published/SOURCES.md, CHK-18.</remarks>
public sealed record UtilisationCategory(string Name, double Multiple, double TimeConstantSeconds, string For)
{
    /// <summary>Voltage of the test over the rated operational voltage.</summary>
    public const double VoltageRatio = 1.05;

    /// <summary>Resistive loads.</summary>
    public static UtilisationCategory Dc1 { get; } = new("DC-1", 1.5, 1e-3, "resistive loads");

    /// <summary>Shunt motors: starting, inching, plugging, dynamic braking.</summary>
    public static UtilisationCategory Dc3 { get; } = new("DC-3", 4, 2.5e-3, "shunt motors");

    /// <summary>Series motors, the same.</summary>
    public static UtilisationCategory Dc5 { get; } = new("DC-5", 4, 15e-3, "series motors");

    /// <summary>The category for a kind of motor. Compound motors go with the harder one, magnets with shunt motors: common practice, no source.</summary>
    public static UtilisationCategory Of(MachineKind kind) =>
        kind is MachineKind.Series or MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound ? Dc5 : Dc3;

    /// <summary>Rated operational current that makes or breaks a current, A.</summary>
    public double RatedAmpsFor(double amps) => amps / Multiple;

    /// <summary>
    /// Rated operational current whose test circuit stores as much magnetic energy as a circuit that is broken, A. The test breaks m Ie at
    /// 1.05 Ue in L = T 1.05 Ue/(m Ie), which stores T 1.05 Ue m Ie/2. Our own rule for time constants beyond the category's, not the standard's.
    /// </summary>
    /// <param name="henries">Inductance of the circuit, H.</param>
    /// <param name="amps">Current that is broken, A.</param>
    /// <param name="ratedVolts">Rated operational voltage, V.</param>
    public double RatedAmpsForEnergy(double henries, double amps, double ratedVolts) =>
        henries * amps * amps / (TimeConstantSeconds * VoltageRatio * ratedVolts * Multiple);
}
