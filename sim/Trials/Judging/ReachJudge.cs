using System;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>The signal gets to a value from the side on which it begins, or becomes a word or a count.</summary>
internal sealed class ReachJudge(Expectation expectation) : Judge(expectation)
{
    private readonly double _wanted = expectation.Numbers[0];
    private readonly bool _isQuantity = expectation.Signal!.Unit.Length > 0;
    private double? _reachedSeconds;
    private string _reached = "";
    private int _side;
    private double _nearest = double.NaN;
    private double _nearestSeconds;
    private string _last = "";

    protected override void Look(in Sample sample)
    {
        if (_reachedSeconds != null) return;
        double number = Expectation.Signal!.Number(sample);
        if (double.IsNaN(number)) return;
        if (_side == 0) _side = Math.Sign(_wanted - number);
        bool isThere = _isQuantity ? _side * (_wanted - number) <= 0 : number == _wanted;
        if (isThere) (_reachedSeconds, _reached) = (sample.TimeSeconds, SignalText.Of(Expectation.Signal, sample));
        else if (_isQuantity) LookHowNear(number, sample.TimeSeconds);
        else _last = SignalText.Of(Expectation.Signal, sample);
    }

    private void LookHowNear(double number, double seconds)
    {
        if (Math.Abs(_wanted - number) >= Math.Abs(_wanted - _nearest)) return;
        (_nearest, _nearestSeconds) = (number, seconds);
    }

    protected override (bool Passed, string Seen) Judged()
    {
        if (_reachedSeconds is double seconds) return (true, $"{_reached} {At(seconds)}");
        if (!_isQuantity) return (false, $"never; {_last} {At(Window.LastSeconds)}");
        return (false, double.IsNaN(_nearest) ? "no value at any time" : $"never; nearest {SignalText.Value(Expectation.Signal!, _nearest)} {At(_nearestSeconds)}");
    }
}
