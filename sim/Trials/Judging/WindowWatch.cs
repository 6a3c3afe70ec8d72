using System;
using StarterCtl.Engine;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>Tells which samples lie in a window while they come by.</summary>
internal sealed class WindowWatch(Window window)
{
    // Times are sums of periods in binary: a sample that was meant to lie on the edge does.
    private const double Rounding = 1e-9;

    private readonly EventWatch? _event = window.After == null ? null : new EventWatch(window.After);

    /// <summary>Whether a sample has been inside.</summary>
    public bool HasSeen { get; private set; }

    /// <summary>Time of the last sample inside, s; that of the last one at all while none has been.</summary>
    public double LastSeconds { get; private set; }

    /// <summary>Beginning of the window, s; null while the event has not happened.</summary>
    public double? BeginsSeconds => _event == null ? window.FromSeconds : _event.Seconds + window.FromSeconds;

    /// <summary>Looks at the next sample.</summary>
    /// <returns>True when it lies in the window.</returns>
    public bool Look(in Sample sample)
    {
        _event?.Look(sample);
        double at = sample.TimeSeconds;
        double origin = _event == null ? 0 : _event.Seconds ?? double.PositiveInfinity;
        bool isInside = at >= origin + window.FromSeconds - Rounding && at <= origin + window.ToSeconds + Rounding;
        if (isInside || !HasSeen) LastSeconds = at;
        HasSeen |= isInside;
        return isInside;
    }

    /// <summary>Why nothing was seen.</summary>
    public string Nothing => _event is { Seconds: null }
        ? $"event {window.After!.Number} never happened"
        : $"nothing: the trial ended at {Text.Number(Math.Max(LastSeconds, 0))} s";
}
