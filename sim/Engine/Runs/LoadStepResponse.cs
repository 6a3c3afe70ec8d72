using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>One machine on the full supply before, during and after a step of its load.</summary>
public sealed record LoadStepResponse
{
    private const int StepsPerTimeConstant = 100;
    private const int MostTimeConstants = 400;
    private const double MostSlowerTimes = 100;
    private const double SlopeRatio = 0.999;
    private const double SettlingBand = 0.02;
    private const double StillBand = 1e-10;

    /// <summary>Armature-circuit resistance, ohm.</summary>
    public required double ArmatureOhms { get; init; }

    /// <summary>Steady state before the step.</summary>
    public required RunningPoint Before { get; init; }

    /// <summary>The instant after the step: the load has changed, the machine has not moved yet.</summary>
    public required RunningPoint RightAfter { get; init; }

    /// <summary>A third of the time constant after the step.</summary>
    public required RunningPoint OnTheWay { get; init; }

    /// <summary>Steady state after the step.</summary>
    public required RunningPoint After { get; init; }

    /// <summary>Time until 63.2 % of the change of speed is done, s.</summary>
    public required double TimeConstantSeconds { get; init; }

    /// <summary>Time after which the speed stays within 2 % of its change around the new speed, s.</summary>
    public required double SettlingSeconds { get; init; }

    /// <summary>The machine from the step on, evenly spaced, to well after it has settled.</summary>
    public required IReadOnlyList<RunningPoint> Curve { get; init; }

    /// <summary>False when the machine cannot carry the load and comes to rest.</summary>
    public bool Runs => After.SpeedRadPerSec > 0;

    /// <summary>Loss of speed, r/min.</summary>
    public double DropRpm => Before.Rpm - After.Rpm;

    /// <summary>Loss of speed in % of the speed before; 0 when the machine stood still already.</summary>
    public double DropPercent => Before.Rpm > 0 ? DropRpm / Before.Rpm * 100 : 0;

    /// <summary>Brings the machine to its steady state, steps the load and waits until it is steady again.</summary>
    /// <param name="before">Machine, supply and load before the step.</param>
    /// <param name="after">Load after it.</param>
    internal static LoadStepResponse Of(PlantConditions before, Load after)
    {
        Machine machine = before.Machine;
        Supply supply = before.Supply;
        double drivingVolts = Math.Max(0, supply.OpenCircuitVolts - machine.BrushDropVolts);
        double ohms = supply.SourceOhms + machine.ArmatureOhms;
        double timeConstant = machine.InertiaKgM2 * ohms / (machine.Constant * machine.Constant) + machine.ArmatureHenries / ohms;
        double beginRadPerSec = drivingVolts / machine.Constant, slowerTimes = 1;
        if (machine.Flux is { FollowsArmature: true })
        {
            // A series machine finds its speed the more slowly the less it carries.
            Characteristic characteristic = Characteristic.Of(before);
            double atFirst = Math.Max(timeConstant, TimeConstant(characteristic, before.Load, machine)), atLast = Math.Max(timeConstant, TimeConstant(characteristic, after, machine));
            timeConstant = Math.Min(atFirst, atLast);
            slowerTimes = Math.Min(MostSlowerTimes, Math.Max(atFirst, atLast) / timeConstant);
            beginRadPerSec = characteristic.Carrying(before.Load)?.SpeedRadPerSec ?? beginRadPerSec;
        }

        PlantSolver Steady()
        {
            PlantSolver steady = new(before, beginRadPerSec);
            Settle(steady, timeConstant, slowerTimes, null);
            return steady;
        }

        PlantSolver plant = Steady();
        // Ends the step that is under way, so that both sides of the change are one state to the last bit.
        plant.CloseBooks();
        RunningPoint steadyBefore = RunningPoint.Of(plant, 0);

        plant.Change(plant.Conditions with { Load = after });
        List<RunningPoint> curve = [RunningPoint.Of(plant, 0)];
        Settle(plant, timeConstant, slowerTimes, curve);
        RunningPoint steadyAfter = curve[^1];
        double change = steadyAfter.SpeedRadPerSec - steadyBefore.SpeedRadPerSec;
        double reached = FirstBeyond(curve, steadyBefore.SpeedRadPerSec, change, 1 - Math.Exp(-1));
        double settled = LastOutside(curve, steadyAfter.SpeedRadPerSec, Math.Abs(change) * SettlingBand);
        double shown = Math.Max(1.3 * settled, 3 * reached);
        return new LoadStepResponse
        {
            ArmatureOhms = machine.ArmatureOhms,
            Before = steadyBefore,
            RightAfter = curve[0],
            OnTheWay = PointAfter(Steady(), after, reached / 3),
            After = steadyAfter,
            TimeConstantSeconds = reached,
            SettlingSeconds = settled,
            Curve = [.. curve.TakeWhile(point => point.Seconds <= shown)],
        };
    }

    // The curve's own grid does not hold this moment: the step is played once more, as far as there.
    private static RunningPoint PointAfter(PlantSolver plant, Load after, double seconds)
    {
        plant.Change(plant.Conditions with { Load = after });
        if (seconds > 0) plant.Advance(seconds);
        return RunningPoint.Of(plant, seconds);
    }

    // J over the slopes of torque and load where the machine carries it; 0 where it does not.
    private static double TimeConstant(Characteristic characteristic, Load load, Machine machine)
    {
        if (characteristic.Carrying(load) is not OperatingPoint point || characteristic.AtSpeed(SlopeRatio * point.SpeedRadPerSec) is not OperatingPoint slower) return 0;
        double torque = slower.TorqueNewtonMetres - point.TorqueNewtonMetres + load.TorqueAt(point.SpeedRadPerSec) - load.TorqueAt(slower.SpeedRadPerSec);
        return torque > 0 ? machine.InertiaKgM2 * (point.SpeedRadPerSec - slower.SpeedRadPerSec) / torque : 0;
    }

    // Time is told in time constants of the machine itself, so that it is as good for a toy as for a mill.
    private static void Settle(PlantSolver plant, double timeConstant, double slowerTimes, List<RunningPoint>? curve)
    {
        double step = timeConstant / StepsPerTimeConstant;
        for (int i = 1; i <= MostTimeConstants * StepsPerTimeConstant * slowerTimes; i++)
        {
            plant.Advance(step);
            curve?.Add(RunningPoint.Of(plant, i * step));
            if (i % StepsPerTimeConstant == 0 && IsStill(plant, timeConstant)) return;
        }
    }

    private static bool IsStill(PlantSolver plant, double timeConstant) =>
        Math.Abs(plant.Acceleration) * timeConstant <= StillBand * Math.Abs(plant.SpeedRadPerSec)
        && Math.Abs(plant.AmpsSlope) * timeConstant <= StillBand * Math.Abs(plant.ArmatureAmps);

    private static double FirstBeyond(List<RunningPoint> curve, double from, double change, double part)
    {
        for (int i = 1; i < curve.Count && change != 0; i++)
        {
            double done = (curve[i].SpeedRadPerSec - from) / change, doneBefore = (curve[i - 1].SpeedRadPerSec - from) / change;
            if (done >= part) return curve[i - 1].Seconds + (curve[i].Seconds - curve[i - 1].Seconds) * (part - doneBefore) / (done - doneBefore);
        }

        return 0;
    }

    private static double LastOutside(List<RunningPoint> curve, double final, double band)
    {
        for (int i = curve.Count - 2; i >= 0; i--)
        {
            double here = Math.Abs(curve[i].SpeedRadPerSec - final), next = Math.Abs(curve[i + 1].SpeedRadPerSec - final);
            if (here <= band) continue;
            return curve[i].Seconds + (curve[i + 1].Seconds - curve[i].Seconds) * (here - band) / (here - next);
        }

        return 0;
    }
}
