namespace StarterCtl.Engine.Machines;

/// <summary>What warmth does to copper windings.</summary>
public static class CopperTemperature
{
    // Reciprocal of copper's temperature coefficient at 0 degC, degC; IEC 60034-1, temperature rise by resistance.
    private const double ReciprocalCelsius = 235;

    /// <summary>Resistance at one temperature over that at another: R2 / R1 = (235 + t2) / (235 + t1).</summary>
    /// <param name="fromCelsius">Temperature t1, degC, above -235.</param>
    /// <param name="toCelsius">Temperature t2, degC, above -235.</param>
    /// <remarks>IEC 60034-1; tests/published/SOURCES.md, CHK-24.</remarks>
    public static double ResistanceRatio(double fromCelsius, double toCelsius) =>
        (ReciprocalCelsius + toCelsius) / (ReciprocalCelsius + fromCelsius);
}
