using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>Phases in the words of case files and messages.</summary>
public static class PhaseText
{
    /// <summary>The words of every phase that a run can end in.</summary>
    public static IReadOnlyList<string> All { get; } =
        [.. Enum.GetValues<Phase>().Where(phase => phase != Phase.NotSetUp).Select(Name)];

    /// <summary>The words of a phase: "field building".</summary>
    public static string Name(Phase phase) => phase switch
    {
        Phase.NotSetUp => "not set up",
        Phase.FieldBuilding => "field building",
        _ => phase.ToString().ToLowerInvariant(),
    };

    /// <summary>The phase of some words out of <see cref="All"/>.</summary>
    public static Phase Parse(string words) => Enum.GetValues<Phase>().First(phase => Name(phase) == words);
}
