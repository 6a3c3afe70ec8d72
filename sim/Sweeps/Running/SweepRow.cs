using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.Running;

/// <summary>One start of a sweep: what differed and what came of it. SI units except where a name says otherwise; NaN: did not happen, or is not known.</summary>
public sealed record SweepRow
{
    /// <summary>Number of the row, from 0.</summary>
    public required long Row { get; init; }

    /// <summary>Seed of its noise and jitter.</summary>
    public required int Seed { get; init; }

    /// <summary>The values of the plan's variables.</summary>
    public required IReadOnlyList<double> Inputs { get; init; }

    /// <summary>True when no limit of the case was passed.</summary>
    public required bool IsPassed { get; init; }

    /// <summary>Largest magnitude of the armature current, A.</summary>
    public required double PeakAmps { get; init; }

    /// <summary>Largest magnitude of the torque, N m.</summary>
    public required double PeakTorqueNewtonMetres { get; init; }

    /// <summary>Time to the full supply, s, of the slowest start; NaN where one never got there.</summary>
    public required double SecondsToFullSupply { get; init; }

    /// <summary>Time to 95 % of the final speed, s.</summary>
    public required double SecondsToSpeed { get; init; }

    /// <summary>Speed at the end, r/min.</summary>
    public required double FinalRpm { get; init; }

    /// <summary>Stages cut out over the run.</summary>
    public required int StagesCutOut { get; init; }

    /// <summary>Name of the first fault; empty: none.</summary>
    public required string FirstFault { get; init; }

    /// <summary>Phase at the end, in words.</summary>
    public required string Phase { get; init; }

    /// <summary>Heat of each section, J.</summary>
    public required IReadOnlyList<double> SectionJoules { get; init; }

    /// <summary>Heat of the armature circuit, J.</summary>
    public required double ArmatureJoules { get; init; }

    /// <summary>Heat of the brake resistor, J.</summary>
    public required double BrakeJoules { get; init; }

    /// <summary>Delivered by the supply, J.</summary>
    public required double SupplyJoules { get; init; }

    /// <summary>Highest temperature of any section, degC; NaN where sections do not warm up in the case.</summary>
    public required double HottestSectionCelsius { get; init; }

    /// <summary>Sums a run up.</summary>
    /// <param name="row">Number of the row.</param>
    /// <param name="seed">Seed of its noise and jitter.</param>
    /// <param name="inputs">The values that it was run with.</param>
    /// <param name="verdict">What its case's limits say.</param>
    /// <param name="result">The run.</param>
    public static SweepRow Of(long row, int seed, IReadOnlyList<double> inputs, Verdict verdict, RunResult result)
    {
        List<StartPart> starts = [.. StartPart.Of(result).Where(start => !start.IsStopped)];
        return new SweepRow
        {
            Row = row,
            Seed = seed,
            Inputs = inputs,
            IsPassed = verdict.Passed,
            PeakAmps = result.PeakAmps,
            PeakTorqueNewtonMetres = result.PeakTorqueNewtonMetres,
            SecondsToFullSupply = starts.Count == 0 || starts.Exists(start => start.TakenSeconds == null) ? double.NaN : starts.Max(start => start.TakenSeconds!.Value),
            SecondsToSpeed = result.SecondsToSpeed ?? double.NaN,
            FinalRpm = result.FinalRpm,
            StagesCutOut = result.Cutouts.Count,
            FirstFault = result.Faults.Count > 0 ? result.Faults[0].Name : "",
            Phase = PhaseText.Name(result.Phases[^1].Phase),
            SectionJoules = result.SectionJoules,
            ArmatureJoules = result.ArmatureJoules,
            BrakeJoules = result.BrakeJoules,
            SupplyJoules = result.SupplyJoules,
            HottestSectionCelsius = result.Temperatures.Where(body => body.Body.StartsWith("section ", System.StringComparison.Ordinal)).Select(body => body.HighestCelsius).DefaultIfEmpty(double.NaN).Max(),
        };
    }
}
