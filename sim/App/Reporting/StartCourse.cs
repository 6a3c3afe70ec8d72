using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting;

/// <summary>What became of the start, as far as figures and pictures depend on it.</summary>
internal static class StartCourse
{
    private const double Behind = 1.3;
    private const double MostOfRun = 0.7;

    /// <summary>True when the run ended with the machine on the line; a machine that was stopped or tripped coasts.</summary>
    public static bool IsPowered(RunResult result) => result.Phases.Count > 0 && result.Phases[^1].Phase is Phase.Accelerating or Phase.Running;

    /// <summary>Time to 95 % of the final speed, s; null also where the final speed is one of coasting.</summary>
    public static double? SecondsToSpeed(RunResult result) => IsPowered(result) ? result.SecondsToSpeed : null;

    /// <summary>When the machine first ran on the full supply, s; null when the run never got there.</summary>
    public static double? FullSupplySeconds(RunResult result) => result.Phases.FirstOrDefault(entry => entry.Phase == Phase.Running)?.Seconds;

    /// <summary>Length of the part of a run that shows its start, s. A long steady run would squeeze it into a corner.</summary>
    public static double ShownSeconds(StartStudy study)
    {
        double duration = study.Setup.DurationSeconds;
        double end = Behind * Math.Max(SecondsToSpeed(study.Result) ?? 0, LastEndSeconds(study.Result) ?? duration);
        return end > MostOfRun * duration ? duration : end;
    }

    // Full supply, a stop or a trip ends a start.
    private static double? LastEndSeconds(RunResult result)
    {
        IReadOnlyList<PhaseEntry> phases = result.Phases;
        for (int i = phases.Count - 1; i > 0; i--)
        {
            if (phases[i - 1].Phase == Phase.Accelerating) return phases[i].Seconds;
        }

        return null;
    }
}
