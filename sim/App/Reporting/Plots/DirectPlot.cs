using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Current against time, with and without the starter.</summary>
internal static class DirectPlot
{
    private const string Key = "i";

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, DirectStart direct, PlotSize size)
    {
        double end = Math.Max(StartCourse.SecondsToSpeed(study.Result) ?? StartCourse.ShownSeconds(study), direct.Seconds ?? 0) * 1.1;
        end = Math.Min(end, study.Setup.DurationSeconds);
        (double From, double To) range = PlotParts.Range(0, direct.PeakAmps, 0.08);
        PlotDrawing plot = new(size);
        plot.Bottom("time after start, s", 0, end);
        plot.Left(Key, "current, A", range);
        double unitsPerX = plot.Width / end, unitsPerY = plot.Height / (range.To - range.From);
        List<DataPoint> with = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0 && sample.TimeSeconds <= end).Select(sample => new DataPoint(sample.TimeSeconds, sample.ArmatureAmps))];
        List<DataPoint> without = [.. direct.Curve.Where(point => point.Seconds <= end).Select(point => new DataPoint(point.Seconds, point.ArmatureAmps))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(without, unitsPerX, unitsPerY), PlotParts.Red, LineStyle.Dash));
        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(with, unitsPerX, unitsPerY), PlotParts.Ink));
        plot.Say(Key, $"without starter: {Quantity.Amps(direct.PeakAmps)}", without.MaxBy(point => point.Y), "start", 10, 4);
        plot.Say(Key, $"with starter: {Quantity.Amps(study.Result.PeakAmps)}", new DataPoint(end, with.Max(point => point.Y)), "end", -4, -8);
        return plot;
    }
}
