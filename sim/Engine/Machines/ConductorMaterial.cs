using System;

namespace StarterCtl.Engine.Machines;

/// <summary>A metal of which conductors are made.</summary>
public sealed class ConductorMaterial
{
    private readonly (double SquareMillimetres, double OhmsPerKilometre)[] _nominal;

    private ConductorMaterial(string name, double ohmMetres, double reciprocalCelsius, (double SquareMillimetres, double OhmsPerKilometre)[] nominal)
    {
        Name = name;
        OhmMetres = ohmMetres;
        ReciprocalCelsius = reciprocalCelsius;
        _nominal = nominal;
    }

    /// <summary>Annealed copper: 1/58 ohm mm2/m at 20 degC.</summary>
    /// <remarks>IEC 60028; IEC 60228, largest resistance of classes 1 and 2, plain wires. tests/published/SOURCES.md, CHK-40.</remarks>
    public static ConductorMaterial Copper { get; } = new("copper", 1e-6 / 58, 234.5,
    [
        (0.5, 36.0), (0.75, 24.5), (1, 18.1), (1.5, 12.1), (2.5, 7.41), (4, 4.61), (6, 3.08), (10, 1.83), (16, 1.15), (25, 0.727), (35, 0.524),
        (50, 0.387), (70, 0.268), (95, 0.193), (120, 0.153), (150, 0.124), (185, 0.0991), (240, 0.0754), (300, 0.0601), (400, 0.0470),
        (500, 0.0366), (630, 0.0283),
    ]);

    /// <summary>Hard-drawn aluminium: 0.028264 ohm mm2/m at 20 degC.</summary>
    /// <remarks>IEC 60287-1-1, from memory; IEC 60228 as for copper.</remarks>
    public static ConductorMaterial Aluminium { get; } = new("aluminium", 2.8264e-8, 228,
    [
        (10, 3.08), (16, 1.91), (25, 1.20), (35, 0.868), (50, 0.641), (70, 0.443), (95, 0.320), (120, 0.253), (150, 0.206), (185, 0.164),
        (240, 0.125), (300, 0.100), (400, 0.0778), (500, 0.0605), (630, 0.0469),
    ]);

    /// <summary>Its name as a case writes it.</summary>
    public string Name { get; }

    /// <summary>Resistivity at 20 degC, ohm m.</summary>
    public double OhmMetres { get; }

    /// <summary>Reciprocal of its temperature coefficient at 0 degC, degC: resistance goes with this plus the temperature.</summary>
    public double ReciprocalCelsius { get; }

    /// <summary>The material with a name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is none.</exception>
    public static ConductorMaterial Named(string name) => name switch
    {
        "copper" => Copper,
        "aluminium" => Aluminium,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "copper or aluminium"),
    };

    /// <summary>
    /// Resistance of a metre of one conductor at 20 degC, ohm: of a nominal cross-section the most that IEC 60228 allows it, for it is no
    /// true area; of any other one resistivity over area.
    /// </summary>
    /// <param name="squareMetres">Cross-section, m2, above 0.</param>
    public double OhmsPerMetre(double squareMetres)
    {
        double nominal = Math.Round(squareMetres * 1e6, 6);
        foreach ((double squareMillimetres, double ohmsPerKilometre) in _nominal)
        {
            if (squareMillimetres == nominal) return ohmsPerKilometre / 1000;
        }

        return OhmMetres / squareMetres;
    }
}
