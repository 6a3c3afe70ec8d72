using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>One start as a netlist can describe it: ideal switching, from the press of start to the end of what can be written.</summary>
public sealed record SpiceScene
{
    /// <summary>The case's title.</summary>
    public required string Title { get; init; }

    /// <summary>Name of the case file, without folders.</summary>
    public required string CaseName { get; init; }

    /// <summary>SHA-256 of the case file's bytes, hexadecimal.</summary>
    public required string CaseSha256 { get; init; }

    /// <summary>Machine, load and supply; its duration ends where the netlist does, its events are those that the netlist has.</summary>
    public required RunSetup Setup { get; init; }

    /// <summary>What decides a cutout.</summary>
    public required Settings Settings { get; init; }

    /// <summary>When start is pressed, s.</summary>
    public required double StartSeconds { get; init; }

    /// <summary>What our own solver makes of the same ideal switching.</summary>
    public required RunResult Own { get; init; }

    /// <summary>What of the case the netlist leaves out, a sentence each.</summary>
    public required IReadOnlyList<string> LeftOut { get; init; }
}
