using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>A fault is the first one, and raised inside the window; or none is raised there.</summary>
internal sealed class FaultJudge(Expectation expectation) : Judge(expectation)
{
    private FaultId _latched;
    private FaultId _first;
    private double _firstSeconds;
    private bool _isInside;

    public override void Add(in Sample sample)
    {
        bool isNew = sample.Fault != FaultId.None && sample.Fault != _latched;
        _latched = sample.Fault;
        bool isInside = Window.Look(sample);
        // The first fault of the trial is judged, whenever it came; where none is expected, the first in the window.
        if (!isNew || _first != FaultId.None || Expectation.Fault == FaultId.None && !isInside) return;
        (_first, _firstSeconds, _isInside) = (sample.Fault, sample.TimeSeconds, isInside);
    }

    protected override void Look(in Sample sample)
    {
    }

    protected override (bool Passed, string Seen) Judged()
    {
        string seen = _first == FaultId.None ? "no fault" : $"{FaultTable.RowOf(_first).Name} {At(_firstSeconds)}";
        return (_first == Expectation.Fault && (_first == FaultId.None || _isInside), seen);
    }
}
