using System;

namespace StarterCtl.Engine.Solving;

/// <summary>The exact integrals of a linear regime over any span: of current and speed, and of both squared.</summary>
/// <remarks>
/// Each integral is a fixed form of the state at the beginning. Seeded by series and doubled with the solution:
/// p(2h) = p(h) + p(h) Phi(h) for an integral, M(2h) = M(h) + Phi' M(h) Phi for an integral of a square. Derived here.
/// </remarks>
public static class LinearIntegrals
{
    /// <summary>Adds the integrals over a span.</summary>
    /// <param name="regime">The regime.</param>
    /// <param name="seconds">Span, s, 0 or more.</param>
    /// <param name="amps">Current at the beginning, A.</param>
    /// <param name="speed">Speed at the beginning, rad/s.</param>
    /// <param name="withSquareSpeed">False leaves the integral of the speed squared out, where nothing asks for it.</param>
    /// <param name="sums">Receives the integrals on top of what it holds.</param>
    public static void Add(Regime regime, double seconds, double amps, double speed, bool withSquareSpeed, ref StepIntegrals sums)
    {
        Span<double> a = stackalloc double[6], change = stackalloc double[6], next = stackalloc double[6];
        Span<double> ampsIntegral = stackalloc double[3], speedIntegral = stackalloc double[3];
        Span<double> squareAmps = stackalloc double[6];
        Span<double> squareSpeed = withSquareSpeed ? stackalloc double[6] : [];
        regime.LinearRows(a);
        int doublings = LinearSeries.Doublings(a, seconds);
        double h = seconds / Math.Pow(2, doublings);
        LinearSeries.Change(a, h, change);
        Seed(a, h, 0, ampsIntegral, squareAmps);
        Seed(a, h, 1, speedIntegral, squareSpeed);
        for (int i = 0; i < doublings; i++)
        {
            change.CopyTo(next);
            next[0]++;
            next[4]++;
            DoubleSquare(squareAmps, next);
            if (withSquareSpeed) DoubleSquare(squareSpeed, next);
            DoubleLine(ampsIntegral, next);
            DoubleLine(speedIntegral, next);
            LinearSeries.Double(change);
        }

        sums.AmpSeconds += ampsIntegral[0] * amps + ampsIntegral[1] * speed + ampsIntegral[2];
        sums.Radians += speedIntegral[0] * amps + speedIntegral[1] * speed + speedIntegral[2];
        sums.SquareAmpSeconds += Value(squareAmps, amps, speed);
        if (withSquareSpeed) sums.SquareSpeedSeconds += Value(squareSpeed, amps, speed);
    }

    // An empty square asks for the integral alone.
    private static void Seed(ReadOnlySpan<double> a, double h, int row, Span<double> integral, Span<double> square)
    {
        Span<double> terms = stackalloc double[3 * (LinearSeries.Order + 1)];
        LinearSeries.Terms(a, h, row, terms);
        for (int k = 0; k <= LinearSeries.Order; k++)
        {
            ReadOnlySpan<double> term = terms.Slice(3 * k, 3);
            for (int c = 0; c < 3; c++) integral[c] += h / (k + 1) * term[c];
            if (square.IsEmpty) continue;
            AddProduct(term, term, h / (2 * k + 1), square);
            for (int l = k + 1; l <= LinearSeries.Order; l++) AddProduct(term, terms.Slice(3 * l, 3), 2 * h / (k + l + 1), square);
        }
    }

    // The quadratic form of (u x)(v x) in the order ii, iw, i, ww, w, 1.
    private static void AddProduct(ReadOnlySpan<double> u, ReadOnlySpan<double> v, double weight, Span<double> form)
    {
        form[0] += weight * u[0] * v[0];
        form[1] += weight * (u[0] * v[1] + u[1] * v[0]);
        form[2] += weight * (u[0] * v[2] + u[2] * v[0]);
        form[3] += weight * u[1] * v[1];
        form[4] += weight * (u[1] * v[2] + u[2] * v[1]);
        form[5] += weight * u[2] * v[2];
    }

    private static double Value(ReadOnlySpan<double> form, double i, double w) =>
        form[0] * i * i + form[1] * i * w + form[2] * i + form[3] * w * w + form[4] * w + form[5];

    private static void DoubleLine(Span<double> line, ReadOnlySpan<double> next)
    {
        double i = line[0], w = line[1], one = line[2];
        line[0] += i * next[0] + w * next[3];
        line[1] += i * next[1] + w * next[4];
        line[2] += i * next[2] + w * next[5] + one;
    }

    private static void DoubleSquare(Span<double> form, ReadOnlySpan<double> next)
    {
        Span<double> moved = stackalloc double[6];
        ReadOnlySpan<double> one = [0, 0, 1];
        ReadOnlySpan<double> amps = next[..3], speed = next[3..];
        AddProduct(amps, amps, form[0], moved);
        AddProduct(amps, speed, form[1], moved);
        AddProduct(amps, one, form[2], moved);
        AddProduct(speed, speed, form[3], moved);
        AddProduct(speed, one, form[4], moved);
        AddProduct(one, one, form[5], moved);
        for (int c = 0; c < 6; c++) form[c] += moved[c];
    }
}
