using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>The same machine on the same supply without a starter: what the starter is there to prevent.</summary>
public sealed record DirectStart
{
    private const int StepsPerTimeConstant = 400;
    private const int MostTimeConstants = 200;
    private const int MostStepsEver = 500_000;

    /// <summary>Largest current, A, with inductance and the supply's resistance.</summary>
    public required double PeakAmps { get; init; }

    /// <summary>Largest torque, N m.</summary>
    public required double PeakTorqueNewtonMetres { get; init; }

    /// <summary>Lowest voltage at the input terminals, V.</summary>
    public required double LowestTerminalVolts { get; init; }

    /// <summary>Speed up to which time and heat are counted, r/min.</summary>
    public required double UpToRpm { get; init; }

    /// <summary>Time to that speed, s; null when the machine does not reach it.</summary>
    public required double? Seconds { get; init; }

    /// <summary>Heat in the armature circuit up to then, brushes included, J.</summary>
    public required double ArmatureJoules { get; init; }

    /// <summary>The machine from the closing of the line on.</summary>
    public required IReadOnlyList<RunningPoint> Curve { get; init; }

    /// <summary>What a shunt winding takes from the supply beside the armature, A; 0 where there is none.</summary>
    public static double ShuntAmps(RunSetup setup) =>
        setup.Field is { IsShunt: true } field ? field.SupplyVolts / (field.Ohms + field.SharedOhms) : 0;

    /// <summary>Puts a study's machine straight on its supply.</summary>
    /// <param name="study">The study.</param>
    /// <param name="upToRpm">Speed up to which time and heat are counted, r/min.</param>
    public static DirectStart Of(StartStudy study, double upToRpm)
    {
        Machine machine = study.Setup.Machine;
        Supply supply = study.Setup.Supply;
        double ohms = supply.SourceOhms + machine.ArmatureOhms;
        double timeConstant = machine.InertiaKgM2 * ohms / (machine.Constant * machine.Constant);
        double step = (timeConstant + machine.ArmatureHenries / ohms) / StepsPerTimeConstant;
        PlantSolver plant = new(study.Setup.OnFullSupply(study.Setup.Load), 0);
        List<RunningPoint> curve = [RunningPoint.Of(plant, 0)];
        // The mechanical time constant of a series machine grows with its speed, as far as the run has time for it.
        double mostSteps = MostTimeConstants * StepsPerTimeConstant;
        if (machine.Flux is { FollowsArmature: true }) mostSteps = Math.Max(mostSteps, Math.Min(MostStepsEver, study.Setup.DurationSeconds / step));
        double target = upToRpm * Math.PI / 30;
        double? reached = null;
        double joules = 0;
        for (int i = 1; i <= mostSteps && !(i * step > 3 * reached); i++)
        {
            plant.Advance(step);
            curve.Add(RunningPoint.Of(plant, i * step));
            if (reached != null) continue;
            double joulesBefore = joules;
            plant.CloseBooks();
            joules = plant.Energy.ArmatureJoules;
            if (plant.SpeedRadPerSec < target) continue;
            RunningPoint from = curve[^2];
            double part = (target - from.SpeedRadPerSec) / (plant.SpeedRadPerSec - from.SpeedRadPerSec);
            reached = from.Seconds + step * part;
            joules = joulesBefore + (joules - joulesBefore) * part;
        }

        return new DirectStart
        {
            PeakAmps = plant.PeakAmps,
            PeakTorqueNewtonMetres = plant.PeakTorqueNewtonMetres,
            LowestTerminalVolts = supply.OpenCircuitVolts - supply.SourceOhms * (plant.PeakAmps + ShuntAmps(study.Setup)),
            UpToRpm = upToRpm,
            Seconds = reached,
            ArmatureJoules = joules,
            Curve = curve,
        };
    }
}
