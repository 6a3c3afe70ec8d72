using System;
using System.Collections.Generic;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Verbs;

/// <summary>The targets by the names of the command line.</summary>
internal static class TrialTargets
{
    /// <summary>The simulator, which is the default.</summary>
    public const string Simulator = "simulator";

    /// <summary>The board on the desk, each exchange one control period, as fast as it goes.</summary>
    public const string Desk = "desk";

    /// <summary>The board on the desk by the computer's clock.</summary>
    public const string DeskRealTime = "desk-real-time";

    /// <summary>Every name.</summary>
    public static IReadOnlyList<string> Names { get; } = [Simulator, Desk, DeskRealTime];

    /// <summary>The target of a name.</summary>
    public static ITrialTarget Of(string name) => name switch
    {
        Simulator => new SimulatorTarget(),
        Desk => new DeskTarget(ExchangePace.Lockstep, new TargetTiming()),
        DeskRealTime => new DeskTarget(ExchangePace.RealTime, new TargetTiming()),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };
}
