using System.Collections.Generic;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>What the search works on.</summary>
/// <param name="Input">What the starter is designed from.</param>
/// <param name="Limits">The two currents.</param>
/// <param name="Stages">Number of stages.</param>
/// <param name="Networks">Everything that a section may be, with rising resistance.</param>
/// <param name="Objective">What there is to be least of.</param>
internal sealed record PartsProblem(DesignInput Input, PartsLimits Limits, int Stages, IReadOnlyList<PartNetwork> Networks, PartsObjective Objective)
{
    /// <summary>Steps after which the search stops with what it has.</summary>
    public long MostSteps { get; init; } = 4_000_000;

    /// <summary>Heat integral of each section in the design with sections of any value, A2 s; null where no heat is known. Only says where to begin.</summary>
    public IReadOnlyList<double>? WantedSquares { get; init; }

    /// <summary>Part of its rating that a part may be loaded with: 1, or more to look for what is near.</summary>
    public double MostShare { get; init; } = 1;

    /// <summary>False to take as many of a part as there is need for.</summary>
    public bool KeepsToQuantities { get; init; } = true;

    /// <summary>The input with real sections and the limits.</summary>
    public DesignInput InputOf(IReadOnlyList<double> sectionOhms) => Input with
    {
        PeakAmps = Limits.PeakAmps,
        SwitchingAmps = Limits.SwitchingAmps,
        SectionOhms = sectionOhms,
        StageCount = null,
        Slack = null,
    };
}
