using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Series and doubling of x' = A x for x = (Ia, w, 1).</summary>
internal static class LinearSeries
{
    // 1 / (k + 1)! for the powers of the series but the last.
    private static readonly double[] OneOverFactorial =
        [1, 1.0 / 2, 1.0 / 6, 1.0 / 24, 1.0 / 120, 1.0 / 720, 1.0 / 5040, 1.0 / 40320, 1.0 / 362880];

    // At this size of A h the first power left out is below the last bit.
    private const double SeriesSpan = 0.125;

    /// <summary>How often a span must be halved before the series serves it.</summary>
    public static int Doublings(Regime regime, double seconds)
    {
        // In units of current and speed in which both couple alike: the size of A is not the size of its units.
        double coupling = Math.Sqrt(Math.Abs(regime.AmpsSlope.Speed * regime.Acceleration.Amps));
        double norm = Math.Max(Math.Abs(regime.AmpsSlope.Amps), Math.Abs(regime.Acceleration.Speed)) + coupling;
        if (!double.IsFinite(norm * seconds)) throw new ArgumentOutOfRangeException(nameof(seconds), "The machine's time constants are out of any sensible range.");
        int doublings = 0;
        for (double span = norm * seconds; span > SeriesSpan; span /= 2) doublings++;
        return doublings;
    }

    /// <summary>A span halved so often.</summary>
    public static double Halved(double seconds, int times) => seconds * BitConverter.Int64BitsToDouble((1023L - times) << 52);

    /// <summary>The change over a span, exp(A h) - 1 = f(B h) A h with f(X) = 1 + X/2! + X^2/3! + ..., B the upper left of A.</summary>
    public static void Change(Regime regime, double h, out LinearForm ampsChange, out LinearForm speedChange)
    {
        LinearForm amps = regime.AmpsSlope.Times(h), speed = regime.Acceleration.Times(h);
        double x00 = amps.Amps, x01 = amps.Speed, x10 = speed.Amps, x11 = speed.Speed;
        double f00 = OneOverFactorial[^1], f01 = 0, f10 = 0, f11 = f00;
        for (int k = OneOverFactorial.Length - 2; k >= 0; k--)
        {
            double g00 = x00 * f00 + x01 * f10, g01 = x00 * f01 + x01 * f11;
            double g10 = x10 * f00 + x11 * f10, g11 = x10 * f01 + x11 * f11;
            f00 = g00 + OneOverFactorial[k];
            f01 = g01;
            f10 = g10;
            f11 = g11 + OneOverFactorial[k];
        }

        ampsChange = new LinearForm(f00, f01, 0).Of(amps, speed);
        speedChange = new LinearForm(f10, f11, 0).Of(amps, speed);
    }

    /// <summary>From the change over a span to that over twice the span: D(2h) = 2 D(h) + D(h)^2.</summary>
    /// <remarks>Squaring exp(A h) itself would double the rounding of a slow change with every doubling.</remarks>
    public static void Double(ref LinearForm ampsChange, ref LinearForm speedChange)
    {
        LinearForm amps = ampsChange, speed = speedChange;
        ampsChange = amps.Times(2).Plus(amps.Of(amps, speed));
        speedChange = speed.Times(2).Plus(speed.Of(amps, speed));
    }
}
