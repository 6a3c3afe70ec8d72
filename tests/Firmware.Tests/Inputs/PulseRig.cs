using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>
/// A shaft whose edges are given beforehand, stamped by a counter of some start value and resolution, read every millisecond.
/// </summary>
internal sealed class PulseRig : IPulseInput
{
    internal const int PeriodMicroseconds = 1000;

    private readonly int _counterStart;
    private readonly int _countStart;
    private readonly int _resolutionMicroseconds;
    private readonly List<(double Microseconds, int Step)> _edges = [];
    private readonly EdgeMark _mark = new();
    private long _now;
    private int _played;

    internal PulseRig(PulseSetup? setup = null, int counterStart = 0, int countStart = 0, int resolutionMicroseconds = 1, bool isEncoder = false, StandstillSetup? standstill = null)
    {
        _counterStart = counterStart;
        _countStart = countStart;
        _resolutionMicroseconds = resolutionMicroseconds;
        _mark.Edges = countStart;
        Setup = setup ?? OneATurn();
        Doubt = isEncoder ? null : new EdgeDoubt(Setup);
        Sensor = new EdgeSpeed(this, Setup, standstill ?? new StandstillSetup { ZeroAmps = 1f }, Doubt);
    }

    internal PulseSetup Setup { get; }

    internal ISpeedSource Sensor { get; }

    /// <summary>Of a pick-up only.</summary>
    internal EdgeDoubt? Doubt { get; }

    internal (int Missing, int Extra) PutRight => (Doubt!.MissingEdges, Doubt.ExtraEdges);

    internal float ArmatureAmps { get; set; } = 50f;

    internal double Seconds => _now * 1e-6;

    /// <summary>One pulse a turn, at most 50 rad/s2.</summary>
    internal static PulseSetup OneATurn() => new() { EdgesPerTurn = 1, HighestRadPerSecSquared = 50f, MostEdgesPerSecond = 10_000 };

    /// <summary>Sixty pulses a turn, at most 50 rad/s2.</summary>
    internal static PulseSetup Sixty() => new() { EdgesPerTurn = 60, HighestRadPerSecSquared = 50f, MostEdgesPerSecond = 10_000 };

    public void Read(EdgeMark mark)
    {
        for (; _played < _edges.Count && _edges[_played].Microseconds <= _now; _played++)
        {
            long ticks = (long)Math.Floor(_edges[_played].Microseconds / _resolutionMicroseconds) * _resolutionMicroseconds;
            _mark.LastEdgeMicroseconds = unchecked((int)(ticks + _counterStart));
            _mark.Edges = unchecked(_mark.Edges + _edges[_played].Step);
        }

        mark.Edges = _mark.Edges;
        mark.LastEdgeMicroseconds = _mark.LastEdgeMicroseconds;
    }

    internal PulseRig Edge(double microseconds, int step = 1)
    {
        _edges.Add((microseconds, step));
        _edges.Sort((a, b) => a.Microseconds.CompareTo(b.Microseconds));
        return this;
    }

    /// <summary>Edges of a steady speed.</summary>
    internal PulseRig Steady(double fromMicroseconds, double untilMicroseconds, double radPerSec)
    {
        double period = Math.Abs(Setup.RadPerEdge / radPerSec) * 1e6;
        for (double at = fromMicroseconds; at < untilMicroseconds; at += period) _edges.Add((at, Math.Sign(radPerSec)));
        return this;
    }

    internal PulseRig Without(int edge)
    {
        _edges.RemoveAt(edge);
        return this;
    }

    internal double EdgeAt(int edge) => _edges[edge].Microseconds;

    /// <summary>Reads until a time; gives what was shown behind each reading.</summary>
    internal List<(double Seconds, float RadPerSec, bool IsValid)> Run(double untilSeconds)
    {
        List<(double, float, bool)> shown = [];
        while ((_now + PeriodMicroseconds) * 1e-6 <= untilSeconds + 1e-9)
        {
            _now += PeriodMicroseconds;
            Sensor.Update(unchecked((int)(_now + _counterStart)), PeriodMicroseconds, ArmatureAmps);
            shown.Add((Seconds, Sensor.RadPerSec, Sensor.IsValid));
        }

        return shown;
    }

    /// <summary>The largest relative error of what was shown as valid.</summary>
    internal static double WorstError(IEnumerable<(double Seconds, float RadPerSec, bool IsValid)> shown, double radPerSec) =>
        shown.Where(row => row.IsValid).Max(row => Math.Abs(row.RadPerSec / radPerSec - 1));
}
