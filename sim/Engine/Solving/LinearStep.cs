using System;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The exact solution of a linear regime over one span of time: the next current and speed, and the integrals of both and
/// of both squared, as fixed forms of the state (Ia, w, 1).
/// </summary>
/// <remarks>
/// Built by Taylor series on a span short enough for it and then by doubling: Phi(2h) = Phi(h)^2, and likewise
/// p(2h) = p(h) + p(h) Phi(h) for an integral and M(2h) = M(h) + Phi' M(h) Phi for an integral of a square. Doubling stays
/// exact where the circuit is stiff, which a difference of exponentials does not. Textbook linear algebra; derived here.
/// </remarks>
public sealed class LinearStep
{
    private const int Order = 9;
    private const double SeriesSpan = 0.125;

    // Row-major 3 x 3 with the last row (0, 0, 1) left out.
    private readonly double[] _next = new double[6];
    private readonly double[] _ampsIntegral = new double[3];
    private readonly double[] _speedIntegral = new double[3];
    private readonly double[] _squareAmps = new double[6];
    private readonly double[] _squareSpeed = new double[6];

    /// <summary>Solves a linear regime over a span.</summary>
    /// <param name="regime">A regime that <see cref="Regime.IsLinear"/>.</param>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public LinearStep(Regime regime, double seconds)
    {
        Seconds = seconds;
        Span<double> rows = stackalloc double[6];
        regime.LinearRows(rows);
        double norm = Math.Max(Math.Abs(rows[0]) + Math.Abs(rows[1]), Math.Abs(rows[3]) + Math.Abs(rows[4]));
        int doublings = 0;
        for (double span = norm * seconds; span > SeriesSpan; span /= 2) doublings++;

        Seed(rows, seconds / Math.Pow(2, doublings));
        for (int i = 0; i < doublings; i++) Double();
    }

    /// <summary>Span of this step, s.</summary>
    public double Seconds { get; }

    /// <summary>Moves a state over the span and adds the span's integrals.</summary>
    public void Apply(ref double amps, ref double speed, ref StepIntegrals integrals)
    {
        double i = amps, w = speed;
        double[] n = _next, p = _ampsIntegral, q = _speedIntegral, m = _squareAmps, s = _squareSpeed;
        amps = n[0] * i + n[1] * w + n[2];
        speed = n[3] * i + n[4] * w + n[5];
        double ii = i * i, iw = i * w, ww = w * w;
        integrals.AmpSeconds += p[0] * i + p[1] * w + p[2];
        integrals.Radians += q[0] * i + q[1] * w + q[2];
        integrals.SquareAmpSeconds += m[0] * ii + m[1] * iw + m[2] * i + m[3] * ww + m[4] * w + m[5];
        integrals.SquareSpeedSeconds += s[0] * ii + s[1] * iw + s[2] * i + s[3] * ww + s[4] * w + s[5];
    }

    // Series in powers of the span: row k of each state is row 0 of A^k / k!.
    private void Seed(ReadOnlySpan<double> a, double h)
    {
        Span<double> ampsRows = stackalloc double[3 * (Order + 1)];
        Span<double> speedRows = stackalloc double[3 * (Order + 1)];
        SeriesRows(a, h, 0, ampsRows);
        SeriesRows(a, h, 1, speedRows);
        for (int k = 0; k <= Order; k++)
        {
            for (int c = 0; c < 3; c++)
            {
                _next[c] += ampsRows[3 * k + c];
                _next[3 + c] += speedRows[3 * k + c];
                _ampsIntegral[c] += h / (k + 1) * ampsRows[3 * k + c];
                _speedIntegral[c] += h / (k + 1) * speedRows[3 * k + c];
            }

            for (int l = 0; l <= Order; l++)
            {
                double weight = h / (k + l + 1);
                AddProduct(ampsRows.Slice(3 * k, 3), ampsRows.Slice(3 * l, 3), weight, _squareAmps);
                AddProduct(speedRows.Slice(3 * k, 3), speedRows.Slice(3 * l, 3), weight, _squareSpeed);
            }
        }
    }

    private static void SeriesRows(ReadOnlySpan<double> a, double h, int row, Span<double> rows)
    {
        rows[row] = 1;
        for (int k = 1; k <= Order; k++)
        {
            double i = rows[3 * k - 3], w = rows[3 * k - 2];
            for (int c = 0; c < 3; c++) rows[3 * k + c] = (i * a[c] + w * a[3 + c]) * h / k;
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

    private void Double()
    {
        Span<double> n = stackalloc double[6];
        _next.CopyTo(n);
        AddPropagated(_squareAmps, n);
        AddPropagated(_squareSpeed, n);
        AddRow(_ampsIntegral, n);
        AddRow(_speedIntegral, n);
        for (int r = 0; r < 2; r++)
        {
            double i = n[3 * r], w = n[3 * r + 1], one = n[3 * r + 2];
            _next[3 * r] = i * n[0] + w * n[3];
            _next[3 * r + 1] = i * n[1] + w * n[4];
            _next[3 * r + 2] = i * n[2] + w * n[5] + one;
        }
    }

    private static void AddRow(Span<double> row, ReadOnlySpan<double> n)
    {
        double i = row[0], w = row[1], one = row[2];
        row[0] += i * n[0] + w * n[3];
        row[1] += i * n[1] + w * n[4];
        row[2] += i * n[2] + w * n[5] + one;
    }

    private static void AddPropagated(Span<double> form, ReadOnlySpan<double> n)
    {
        Span<double> sum = stackalloc double[6];
        ReadOnlySpan<double> one = [0, 0, 1];
        ReadOnlySpan<double> amps = n[..3], speed = n[3..];
        AddProduct(amps, amps, form[0], sum);
        AddProduct(amps, speed, form[1], sum);
        AddProduct(amps, one, form[2], sum);
        AddProduct(speed, speed, form[3], sum);
        AddProduct(speed, one, form[4], sum);
        AddProduct(one, one, form[5], sum);
        for (int c = 0; c < 6; c++) form[c] += sum[c];
    }
}
