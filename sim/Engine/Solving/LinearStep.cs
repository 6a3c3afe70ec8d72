namespace StarterCtl.Engine.Solving;

/// <summary>The exact next current and speed of a linear regime over one span of time, as fixed forms of (Ia, w, 1).</summary>
/// <remarks>
/// Built by Taylor series on a span short enough for it and then by doubling, which stays exact where the circuit is stiff; a
/// difference of exponentials does not. What is kept is the change over the span. Textbook linear algebra; derived here.
/// </remarks>
public readonly struct LinearStep
{
    private readonly LinearForm _ampsChange;
    private readonly LinearForm _speedChange;

    private LinearStep(double seconds) => Seconds = seconds;

    /// <summary>A step over no span that could be asked for.</summary>
    public static LinearStep None { get; } = new(double.NaN);

    /// <summary>Solves a linear regime over a span.</summary>
    /// <param name="regime">The regime.</param>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public LinearStep(Regime regime, double seconds)
    {
        Seconds = seconds;
        int doublings = LinearSeries.Doublings(regime, seconds);
        LinearSeries.Change(regime, LinearSeries.Halved(seconds, doublings), out _ampsChange, out _speedChange);
        for (int i = 0; i < doublings; i++) LinearSeries.Double(ref _ampsChange, ref _speedChange);
    }

    /// <summary>Span of this step, s.</summary>
    public double Seconds { get; }

    /// <summary>Moves a state over the span.</summary>
    public void Apply(ref double amps, ref double speed)
    {
        double i = amps, w = speed;
        amps = i + _ampsChange.At(i, w);
        speed = w + _speedChange.At(i, w);
    }
}
