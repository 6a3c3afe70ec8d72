namespace StarterCtl.Engine.Machines;

/// <summary>The cable from the bus to the starter: two conductors, there and back.</summary>
/// <param name="Material">Metal of its conductors.</param>
/// <param name="LengthMetres">Length, one way, m, above 0.</param>
/// <param name="SquareMetres">Cross-section of one conductor, m2, above 0.</param>
/// <param name="Celsius">Temperature of its conductors, degC.</param>
public sealed record Cable(ConductorMaterial Material, double LengthMetres, double SquareMetres, double Celsius)
{
    private const double TableCelsius = 20;

    /// <summary>Resistance of both conductors together, ohm: R = 2 l r20 (b + t) / (b + 20).</summary>
    public double Ohms =>
        2 * LengthMetres * Material.OhmsPerMetre(SquareMetres) * (Material.ReciprocalCelsius + Celsius) / (Material.ReciprocalCelsius + TableCelsius);
}
