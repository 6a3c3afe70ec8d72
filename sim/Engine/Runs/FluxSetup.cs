using System.Collections.Generic;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller knows of a flux that moves: a curve of straight pieces over one current.</summary>
/// <param name="Source">The current that the curve goes by.</param>
/// <param name="Amps">That current at each point, A; 2 to <see cref="Settings.MostCurvePoints"/>, the first 0, rising.</param>
/// <param name="Constants">Machine constant times flux at each point, V s/rad, not falling.</param>
public sealed record FluxSetup(FluxSource Source, IReadOnlyList<double> Amps, IReadOnlyList<double> Constants)
{
    /// <summary>Field current that an ampere of the armature takes away; negative for a series winding that adds.</summary>
    public double ReactionRatio { get; init; }

    /// <summary>Machine constant times flux without armature current, V s/rad: how fast an unloaded machine can turn.</summary>
    public required double UnloadedConstant { get; init; }
}
