using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>The signal is never a word or a count.</summary>
internal sealed class NeverJudge(Expectation expectation) : Judge(expectation)
{
    private double? _seenSeconds;
    private string _seen = "";

    protected override void Look(in Sample sample)
    {
        if (_seenSeconds != null || Expectation.Signal!.Number(sample) != Expectation.Numbers[0]) return;
        (_seenSeconds, _seen) = (sample.TimeSeconds, SignalText.Of(Expectation.Signal, sample));
    }

    protected override (bool Passed, string Seen) Judged() =>
        _seenSeconds is double seconds ? (false, $"{_seen} {At(seconds)}") : (true, $"never, up to {Engine.Text.Number(Window.LastSeconds)} s");
}
