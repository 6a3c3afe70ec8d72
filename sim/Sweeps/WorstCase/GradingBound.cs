using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>Holds a grading against plants: the highest peak, the highest torque, and how near a stage comes to sticking.</summary>
/// <param name="grading">The grading.</param>
/// <param name="span">How far real sections may lie off.</param>
internal sealed class GradingBound(Grading grading, SectionSpan span)
{
    /// <summary>The highest peak on any of some plants.</summary>
    public PeakFound Peak(IReadOnlyList<PlantPoint> points) => Highest(points, PeakOn, peak => peak.Amps);

    /// <summary>The highest torque on any of some plants, N m, and that plant.</summary>
    public (double NewtonMetres, PlantPoint Point) PeakTorque(IReadOnlyList<PlantPoint> points) => Highest(points, point => (TorqueOn(point), point), torque => torque.Item1);

    /// <summary>The least torque over that of the load at any cutout on any of some plants, and there: 1 or less sticks.</summary>
    public (double Ratio, int Stage, PlantPoint Point) LeastRatio(IReadOnlyList<PlantPoint> points) => Highest(points, RatioOn, ratio => -ratio.Ratio);

    /// <summary>How far the worst of some plants is from ending a stage with something to spare, and that plant.</summary>
    /// <param name="points">The plants.</param>
    /// <param name="spare">Part of the load's torque that must be left over.</param>
    /// <returns>A part of the speed that is missing; 0 or less: none.</returns>
    public (double Part, PlantPoint Point) Shortfall(IReadOnlyList<PlantPoint> points, double spare) => Highest(points, point => (ShortfallOn(point, spare), point), missing => missing.Item1);

    /// <summary>How far one plant is from it.</summary>
    public double ShortfallOn(PlantPoint point, double spare)
    {
        StaticPlant plant = point.Plant;
        double peak = plant.StandstillAmps(span.Low * grading.InCircuit(0)), most = double.NegativeInfinity;
        for (int i = 0; i < grading.StageCount; i++)
        {
            foreach (double part in (double[])[span.Low, span.High])
            {
                double real = part * grading.InCircuit(i), speed = plant.LatestCutout(real, grading.VoltsLeft[i], grading.Lockout, peak);
                most = Math.Max(most, speed > 0 ? 1 - (plant.AcceleratedTo(real, spare, peak) ?? 0) / speed : 0);
            }
        }

        return most;
    }

    /// <summary>The highest peak on one plant.</summary>
    public PeakFound PeakOn(PlantPoint point) => Peaks(point).MaxBy(peak => peak.Amps)!;

    /// <summary>The highest torque on one plant, N m.</summary>
    public double TorqueOn(PlantPoint point) => Peaks(point).Max(peak => peak.TorqueNewtonMetres);

    private IEnumerable<PeakFound> Peaks(PlantPoint point)
    {
        StaticPlant plant = point.Plant;
        double highest = plant.StandstillAmps(span.Low * grading.InCircuit(0));
        yield return new PeakFound(highest, plant.TorqueAt(highest), 0, point);
        for (int i = 0; i < grading.StageCount; i++)
        {
            double here = 0;
            foreach ((double own, double behind) in span.Combinations())
            {
                double left = behind * grading.InCircuit(i + 1), real = own * grading.SectionOhms[i] + left;
                double speed = plant.EarliestCutout(real, grading.VoltsLeft[i], grading.Lockout, highest);
                here = Math.Max(here, plant.AmpsAt(left, speed, plant.AmpsAt(real, speed, highest)));
            }

            highest = Math.Max(highest, here);
            yield return new PeakFound(here, plant.TorqueAt(here), i + 1, point);
        }
    }

    /// <summary>The least torque over that of the load on one plant.</summary>
    public (double Ratio, int Stage, PlantPoint Point) RatioOn(PlantPoint point)
    {
        StaticPlant plant = point.Plant;
        double peak = plant.StandstillAmps(span.Low * grading.InCircuit(0));
        (double Ratio, int Stage, PlantPoint Point) least = (double.PositiveInfinity, 0, point);
        for (int i = 0; i < grading.StageCount; i++)
        {
            foreach (double part in (double[])[span.Low, span.High])
            {
                double real = part * grading.InCircuit(i);
                double speed = plant.LatestCutout(real, grading.VoltsLeft[i], grading.Lockout, peak);
                double load = plant.LoadTorqueAt(speed);
                double ratio = load > 0 ? plant.TorqueAt(plant.AmpsAt(real, speed, peak)) / load : double.PositiveInfinity;
                if (ratio < least.Ratio) least = (ratio, i + 1, point);
            }
        }

        return least;
    }

    private static T Highest<T>(IReadOnlyList<PlantPoint> points, Func<PlantPoint, T> of, Func<T, double> height)
    {
        T[] all = new T[points.Count];
        Parallel.For(0, all.Length, i => all[i] = of(points[i]));
        return all.MaxBy(height)!;
    }
}
