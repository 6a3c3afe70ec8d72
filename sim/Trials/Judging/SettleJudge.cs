using System;
using StarterCtl.Engine;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>The signal lies in its band without a break over the last time of the window, or is a word or a count for that long.</summary>
internal sealed class SettleJudge(Expectation expectation) : Judge(expectation)
{
    // As in the window: times are sums of periods in binary.
    private const double Rounding = 1e-9;

    private double _insideSeconds = double.NaN;
    private string _last = "";

    protected override void Look(in Sample sample)
    {
        double number = Expectation.Signal!.Number(sample);
        bool isInside = Math.Abs(number - Expectation.Numbers[0]) <= Expectation.Tolerance;
        if (!isInside) _insideSeconds = double.NaN;
        else if (double.IsNaN(_insideSeconds)) _insideSeconds = sample.TimeSeconds;
        _last = SignalText.Of(Expectation.Signal, sample);
    }

    protected override (bool Passed, string Seen) Judged()
    {
        string since = double.IsNaN(_insideSeconds) ? "not there" : $"there from {Text.Number(_insideSeconds)} s on";
        return (Window.LastSeconds - _insideSeconds >= Expectation.HoldSeconds - Rounding, $"{_last} {At(Window.LastSeconds)}, {since}");
    }
}
