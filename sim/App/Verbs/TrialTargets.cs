using System;
using System.Collections.Generic;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Verbs;

/// <summary>The targets by the names of the command line.</summary>
internal static class TrialTargets
{
    /// <summary>The simulator, which is the default.</summary>
    public const string Simulator = "simulator";

    /// <summary>Every name.</summary>
    public static IReadOnlyList<string> Names { get; } = [Simulator];

    /// <summary>The target of a name.</summary>
    public static ITrialTarget Of(string name) => name switch
    {
        Simulator => new SimulatorTarget(),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };
}
