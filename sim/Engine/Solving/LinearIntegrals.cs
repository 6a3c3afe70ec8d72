namespace StarterCtl.Engine.Solving;

/// <summary>The exact integrals of a linear regime over any span: of current and speed, and of both squared.</summary>
/// <remarks>
/// Each integral is a fixed form of the state at the beginning. Seeded by Taylor series and doubled with the solution:
/// p(2h) = p(h) + p(h) Phi(h) for an integral, M(2h) = M(h) + Phi' M(h) Phi for an integral of a square. Derived here.
/// </remarks>
public static class LinearIntegrals
{
    // With A h up to an eighth, the first terms left out are below the last bit.
    private const int LinePowers = 9;
    private const int SquarePowers = 11;

    /// <summary>Adds the integrals over a span.</summary>
    /// <param name="regime">The regime.</param>
    /// <param name="seconds">Span, s, 0 or more.</param>
    /// <param name="amps">Current at the beginning, A.</param>
    /// <param name="speed">Speed at the beginning, rad/s.</param>
    /// <param name="withSquareSpeed">False leaves the integral of the speed squared out, where nothing asks for it.</param>
    /// <param name="sums">Receives the integrals on top of what it holds.</param>
    public static void Add(Regime regime, double seconds, double amps, double speed, bool withSquareSpeed, ref StepIntegrals sums)
    {
        int doublings = LinearSeries.Doublings(regime, seconds);
        double h = LinearSeries.Halved(seconds, doublings);
        LinearSeries.Change(regime, h, out LinearForm ampsChange, out LinearForm speedChange);
        LinearForm ampsIntegral = Line(regime, h, new LinearForm(1, 0, 0)), speedIntegral = Line(regime, h, new LinearForm(0, 1, 0));
        QuadraticForm squareAmps = Square(regime, h, new QuadraticForm(1, 0, 0, 0, 0, 0));
        QuadraticForm squareSpeed = withSquareSpeed ? Square(regime, h, new QuadraticForm(0, 0, 0, 1, 0, 0)) : default;
        for (int i = 0; i < doublings; i++)
        {
            LinearForm nextAmps = ampsChange with { Amps = 1 + ampsChange.Amps }, nextSpeed = speedChange with { Speed = 1 + speedChange.Speed };
            squareAmps = squareAmps.Plus(squareAmps.After(nextAmps, nextSpeed));
            if (withSquareSpeed) squareSpeed = squareSpeed.Plus(squareSpeed.After(nextAmps, nextSpeed));
            ampsIntegral = Doubled(ampsIntegral, nextAmps, nextSpeed);
            speedIntegral = Doubled(speedIntegral, nextAmps, nextSpeed);
            LinearSeries.Double(ref ampsChange, ref speedChange);
        }

        sums.AmpSeconds += ampsIntegral.At(amps, speed);
        sums.Radians += speedIntegral.At(amps, speed);
        sums.SquareAmpSeconds += squareAmps.At(amps, speed);
        if (withSquareSpeed) sums.SquareSpeedSeconds += squareSpeed.At(amps, speed);
    }

    // The sum of row A^k h^(k+1) / (k+1)!.
    private static LinearForm Line(Regime regime, double h, LinearForm row)
    {
        LinearForm term = row.Times(h), sum = term;
        for (int k = 1; k <= LinePowers; k++)
        {
            term = term.Of(regime.AmpsSlope, regime.Acceleration).Times(h / (k + 1));
            sum = sum.Plus(term);
        }

        return sum;
    }

    // The same with the derivative of a square in place of A.
    private static QuadraticForm Square(Regime regime, double h, QuadraticForm form)
    {
        QuadraticForm term = form.Times(h), sum = term;
        for (int k = 1; k <= SquarePowers; k++)
        {
            term = term.Derivative(regime.AmpsSlope, regime.Acceleration).Times(h / (k + 1));
            sum = sum.Plus(term);
        }

        return sum;
    }

    private static LinearForm Doubled(in LinearForm line, in LinearForm nextAmps, in LinearForm nextSpeed)
    {
        LinearForm moved = line.Of(nextAmps, nextSpeed);
        return line.Plus(moved with { One = moved.One + line.One });
    }
}
