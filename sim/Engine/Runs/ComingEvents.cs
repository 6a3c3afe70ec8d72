using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Runs;

/// <summary>The events of a run that are still to come: those of a time in their order, and those that wait for a condition.</summary>
public sealed class ComingEvents
{
    private readonly RunEvent[] _timed;
    private readonly List<(RunEvent Happening, bool HasBeenFalse)> _waiting;
    private readonly List<RunEvent> _due = [];
    private int _next;

    /// <summary>Takes over the events of a run.</summary>
    public ComingEvents(IReadOnlyList<RunEvent> events)
    {
        _timed = [.. events.Where(happening => happening.When == null)];
        _waiting = [.. events.Where(happening => happening.When != null).Select(happening => (happening, false))];
        FindNext();
    }

    /// <summary>When the next event comes, s; infinity when none will.</summary>
    public double NextSeconds { get; private set; }

    /// <summary>True while a condition has not come true.</summary>
    public bool IsWaiting => _waiting.Count > 0;

    /// <summary>Events whose condition never came true, or whose delay was not over.</summary>
    public IReadOnlyList<RunEvent> Left => [.. _waiting.Select(entry => entry.Happening), .. _due];

    /// <summary>Looks at every condition on a tick.</summary>
    /// <param name="now">Time of the tick, s.</param>
    /// <param name="speedRadPerSec">Speed of the shaft, rad/s.</param>
    /// <param name="stage">Stage in effect; 0 when nothing is started.</param>
    public void Look(double now, double speedRadPerSec, int stage)
    {
        for (int i = 0; i < _waiting.Count; i++)
        {
            (RunEvent happening, bool hasBeenFalse) = _waiting[i];
            EventCondition condition = happening.When!;
            bool holds = condition.Holds(speedRadPerSec, stage);
            if (!holds) _waiting[i] = (happening, true);
            if (!holds || !hasBeenFalse) continue;
            _waiting.RemoveAt(i--);
            double at = now + condition.AfterSeconds;
            int place = _due.FindIndex(later => later.AtSeconds > at);
            _due.Insert(place < 0 ? _due.Count : place, happening with { AtSeconds = at });
        }

        FindNext();
    }

    /// <summary>Takes the next event out. Of two at one time the one that was given it comes first.</summary>
    public RunEvent Take()
    {
        RunEvent next;
        if (_next < _timed.Length && _timed[_next].AtSeconds <= NextSeconds)
        {
            next = _timed[_next++];
        }
        else
        {
            next = _due[0];
            _due.RemoveAt(0);
        }

        FindNext();
        return next;
    }

    private void FindNext() => NextSeconds = Math.Min(
        _next < _timed.Length ? _timed[_next].AtSeconds : double.PositiveInfinity,
        _due.Count > 0 ? _due[0].AtSeconds : double.PositiveInfinity);
}
