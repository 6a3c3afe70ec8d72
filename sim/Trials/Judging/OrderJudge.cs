using System.Linq;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>Words or counts come for the first time in one order; others may come between, and the same again later.</summary>
internal sealed class OrderJudge(Expectation expectation) : Judge(expectation)
{
    private readonly double[] _firstSeconds = [.. expectation.Numbers.Select(_ => double.NaN)];
    private double _last = double.NaN;
    private int _next;
    private bool _isBroken;

    protected override void Look(in Sample sample)
    {
        double number = Expectation.Signal!.Number(sample);
        if (number == _last) return;
        _last = number;
        for (int i = _next; i < _firstSeconds.Length; i++)
        {
            if (Expectation.Numbers[i] != number || !double.IsNaN(_firstSeconds[i])) continue;
            _firstSeconds[i] = sample.TimeSeconds;
            if (i > _next) _isBroken = true;
            break;
        }

        while (_next < _firstSeconds.Length && !double.IsNaN(_firstSeconds[_next])) _next++;
    }

    protected override (bool Passed, string Seen) Judged()
    {
        var came = Expectation.Numbers.Select((_, i) => (Seconds: _firstSeconds[i], Index: i)).OrderBy(entry => entry.Seconds);
        string[] seen = [.. came.Where(entry => !double.IsNaN(entry.Seconds)).Select(entry => $"{Name(entry.Index)} {At(entry.Seconds)}")];
        string[] missing = [.. came.Where(entry => double.IsNaN(entry.Seconds)).Select(entry => $"{Name(entry.Index)} never")];
        return (!_isBroken && missing.Length == 0, string.Join(", ", seen.Concat(missing)));
    }

    private string Name(int index) =>
        Expectation.Words.Count > 0 ? Expectation.Words[index] : SignalText.Value(Expectation.Signal!, Expectation.Numbers[index]);
}
