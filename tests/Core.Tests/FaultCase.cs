using System;

namespace StarterCtl.Core.Tests;

/// <summary>One way to provoke a fault, and what must come of it.</summary>
internal sealed record FaultCase(FaultId Id, string Name)
{
    /// <summary>What the controller reads from now on.</summary>
    internal Action<Readings> Spoil { get; init; } = _ => { };

    /// <summary>What else happens to the bench, once.</summary>
    internal Action<Bench> Provoke { get; init; } = _ => { };

    /// <summary>Settings other than those of <see cref="Fitted"/>.</summary>
    internal Action<Settings>? Change { get; init; }

    /// <summary>The tick that trips, counted from 1.</summary>
    internal int Ticks { get; init; } = 1;

    /// <summary>Time of each tick, microseconds.</summary>
    internal int TickMicroseconds { get; init; } = Bench.Millisecond;

    internal float Value { get; init; }

    internal float Limit { get; init; }

    internal Channel Channel { get; init; }

    /// <summary>Where it trips.</summary>
    internal Scene[] Trips { get; init; } = [];

    /// <summary>Where the same provocation does nothing for as long.</summary>
    internal Scene[] IsHarmless { get; init; } = [];

    /// <summary>True if the controller sees the cause with everything open too, so that a reset is refused while it is there.</summary>
    internal bool Holds { get; init; }

    /// <summary>What refuses a start after a reset, while the cause is there.</summary>
    internal Refusal Refusal { get; init; }

    public override string ToString() => $"{Id}: {Name}";
}
