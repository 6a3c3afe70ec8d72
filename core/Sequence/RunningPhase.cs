namespace StarterCtl.Core;

/// <summary>All resistance is out. Watches the contacts, and puts resistance back in a supply dip.</summary>
public sealed class RunningPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly ContactWait _waits;
    private readonly SupplyDip _dip;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public RunningPhase(Settings settings, Sequence sequence, ContactWait waits, SupplyDip dip, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _waits = waits;
        _dip = dip;
        _why = why;
    }

    /// <summary>One look.</summary>
    public void Step(Readings readings, Estimate estimate)
    {
        bool isInPlace = _waits.IsOver;
        if (!isInPlace && _waits.TripOnStrayContact()) return;
        // With the line lost it is its return that counts.
        bool isPutBack = _dip.IsOn && _waits.IsLineIn && _dip.PutBack(readings);
        if (isPutBack)
        {
            _sequence.GoTo(Phase.Accelerating);
            _sequence.InPhaseMicroseconds = 0;
        }

        if (!isPutBack && !isInPlace) _waits.Wait();
        else if (_dip.IsOn) _dip.Explain(readings);
        else Explain(readings, estimate);
    }

    /// <summary>Says that all resistance is out, with the back-EMF that holds the current.</summary>
    public void Explain(Readings readings, Estimate estimate)
    {
        float drivingVolts = readings.SupplyVolts - _settings.BrushDropVolts;
        if (!estimate.SpeedKnown) _why.Set(Reason.RunningWithoutSpeed, estimate.ResistiveBackEmfVolts, drivingVolts, 0);
        else _why.Set(Reason.AllStagesCutOut, estimate.BackEmfVolts, drivingVolts, 0);
    }
}
