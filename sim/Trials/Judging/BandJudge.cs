using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>No sample below, above or outside. Samples without a value do not count.</summary>
internal sealed class BandJudge : Judge
{
    private readonly double _least;
    private readonly double _most;
    private double _lowest = double.PositiveInfinity;
    private double _highest = double.NegativeInfinity;
    private double _lowestSeconds;
    private double _highestSeconds;

    public BandJudge(Expectation expectation)
        : base(expectation)
    {
        _least = expectation.Kind == ExpectationKind.AtMost ? double.NegativeInfinity : expectation.Numbers[0];
        _most = expectation.Kind == ExpectationKind.AtLeast ? double.PositiveInfinity : expectation.Numbers[^1];
    }

    protected override void Look(in Sample sample)
    {
        double number = Expectation.Signal!.Number(sample);
        if (number < _lowest) (_lowest, _lowestSeconds) = (number, sample.TimeSeconds);
        if (number > _highest) (_highest, _highestSeconds) = (number, sample.TimeSeconds);
    }

    protected override (bool Passed, string Seen) Judged()
    {
        if (_highest < _lowest) return (false, "no value at any time");
        string lowest = $"least {SignalText.Value(Expectation.Signal!, _lowest)} {At(_lowestSeconds)}";
        string highest = $"most {SignalText.Value(Expectation.Signal!, _highest)} {At(_highestSeconds)}";
        string seen = Expectation.Kind switch
        {
            ExpectationKind.AtLeast => lowest,
            ExpectationKind.AtMost => highest,
            _ => $"{lowest}, {highest}",
        };
        return (_lowest >= _least && _highest <= _most, seen);
    }
}
