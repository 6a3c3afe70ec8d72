using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Temperatures of a duty from cold on, cycle after cycle.</summary>
internal static class DutyPlot
{
    private const string Key = "c";
    private const int RestPoints = 12;
    private const int MostCycles = 40;

    /// <summary>Builds the plot: the hottest section's hottest spot, and every winding.</summary>
    public static PlotDrawing Build(DutyStudy study, GivenDuty duty, PlotSize size)
    {
        CycleHeat[] cycles = [.. duty.FromCold.Take(MostCycles)];
        int[] drawn = [.. Drawn(study, cycles)];
        double minutes = cycles.Length * duty.Times.Seconds / 60;
        double highest = drawn.SelectMany(i => cycles.Select(cycle => Spot(study, i, cycle.HighestCelsius[i])).Append(Limit(study, i) ?? 0)).Max();
        (double From, double To) range = PlotParts.Range(Math.Min(0, study.AmbientCelsius), highest);
        List<(string Text, double At)> words = [];
        string[] names = [.. drawn.Select(i => study.Bodies[i].Name), .. drawn.Where(i => Limit(study, i) != null).Select(_ => "its limit")];
        PlotDrawing plot = new(size, PlotDrawing.RoomFor(size, names));
        plot.Bottom("time, min", 0, minutes);
        plot.Left(Key, "temperature of the hottest spot, °C", range);
        foreach (int i in drawn)
        {
            bool isSection = study.Bodies[i].Name.StartsWith("section", StringComparison.Ordinal);
            OxyColor color = isSection ? PlotParts.Red : PlotParts.Blue;
            List<DataPoint> course = Course(study, duty, cycles, i);
            plot.Model.Series.Add(PlotParts.Curve(Key, course, color, isSection ? LineStyle.Solid : LineStyle.Dash));
            words.Add((study.Bodies[i].Name, course[^1].Y));
            if (Limit(study, i) is not double limit) continue;
            plot.Model.Annotations.Add(PlotParts.Level(Key, limit, color, LineStyle.Dot));
            words.Add(("its limit", limit));
        }

        plot.SayAtEnd(Key, minutes, range, plot.Height, words);
        return plot;
    }

    private static IEnumerable<int> Drawn(DutyStudy study, CycleHeat[] cycles)
    {
        int hottest = -1;
        for (int i = 0; i < study.Bodies.Count; i++)
        {
            if (!study.Bodies[i].Name.StartsWith("section", StringComparison.Ordinal)) yield return i;
            else if (hottest < 0 || Spot(study, i, cycles[^1].HighestCelsius[i]) > Spot(study, hottest, cycles[^1].HighestCelsius[hottest])) hottest = i;
        }

        if (hottest >= 0) yield return hottest;
    }

    // Between two known ends a body that cools goes by the same ratio in the same time.
    private static List<DataPoint> Course(DutyStudy study, GivenDuty duty, CycleHeat[] cycles, int body)
    {
        List<DataPoint> points = [];
        double ambient = study.AmbientCelsius, start = Math.Min(study.StartSeconds, duty.Times.RunSeconds);
        for (int n = 0; n < cycles.Length; n++)
        {
            CycleHeat cycle = cycles[n];
            double at = n * duty.Times.Seconds;
            Add(at, cycle.StartCelsius[body]);
            if (cycle.HighestCelsius[body] > cycle.StopCelsius[body]) Add(at + start, cycle.HighestCelsius[body]);
            double stop = cycle.StopCelsius[body] - ambient, end = cycle.EndCelsius[body] - ambient;
            for (int i = 0; i <= RestPoints; i++)
            {
                double part = i / (double)RestPoints;
                Add(at + duty.Times.RunSeconds + part * duty.Times.RestSeconds, ambient + (stop > 0 && end > 0 ? stop * Math.Pow(end / stop, part) : stop + (end - stop) * part));
            }
        }

        return points;

        void Add(double seconds, double celsius) => points.Add(new DataPoint(seconds / 60, Spot(study, body, celsius)));
    }

    private static double Spot(DutyStudy study, int body, double celsius) => study.Bodies[body].HotSpot(celsius, study.AmbientCelsius);

    private static double? Limit(DutyStudy study, int body) => study.Bodies[body].LimitCelsius is double mean ? Spot(study, body, mean) : null;
}
