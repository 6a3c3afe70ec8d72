using System;
using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Runs;

/// <summary>A case read as far as a run needs it, before anything moves.</summary>
/// <param name="Designed">Plate, machine and starter.</param>
/// <param name="Setup">What is simulated: the plant as the case means it.</param>
/// <param name="Settings">The controller's settings, checked.</param>
public sealed record PreparedRun(CaseDesign Designed, RunSetup Setup, Settings Settings)
{
    /// <summary>What may differ in the real plant, in the order of the case's tolerances; empty without any.</summary>
    public IReadOnlyList<PlantVariable> Variables { get; init; } = [];

    /// <summary>
    /// The same case on a plant that differs from the nominal one. What the controller is told, <see cref="Settings"/>, stays what it is.
    /// Reads no file and may be called from several threads at once.
    /// </summary>
    /// <param name="values">The value of each of <see cref="Variables"/>, SI, between its limits.</param>
    /// <param name="seed">Number from which noise and jitter follow, 0 to 1 000 000 000; null: the case's own.</param>
    public RunSetup RealSetup(ReadOnlySpan<double> values, int? seed = null) =>
        CasePlant.Real(Designed, Variables, values, seed) with { Events = Setup.Events };

    /// <summary>Holds a run against the limits of the case, which are those of the nominal one whatever plant it was.</summary>
    /// <param name="result">A run with these settings.</param>
    public Verdict Judge(RunResult result) => RunJudge.Judge(Designed.File, Designed, result);
}
