using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Speed and current over the whole run, with its events.</summary>
internal static class OverviewPlot
{
    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size)
    {
        List<Sample> samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0)];
        double end = samples[^1].TimeSeconds;
        PlotDrawing plot = new(size, top: 40);
        plot.Bottom("time, s", 0, end);
        AddPanel(plot, samples, end, ("n", "speed, r/min", 16), (0.55, 1), sample => sample.SpeedRadPerSec * 30 / Math.PI);
        AddPanel(plot, samples, end, ("i", "current, A", 0), (0, 0.45), sample => sample.ArmatureAmps);
        double top = plot.Model.GetAxis("n").Maximum, last = double.NegativeInfinity;
        int number = 0;
        foreach (RunEvent happening in study.Setup.Events)
        {
            number++;
            foreach (string key in new[] { "n", "i" }) plot.Model.Annotations.Add(PlotParts.Upright(key, happening.AtSeconds, PlotParts.Red, LineStyle.Dash));
            if (happening.AtSeconds - last < size.FontSize * end / plot.Width) continue;
            last = happening.AtSeconds;
            plot.Say("n", $"{number}", new DataPoint(happening.AtSeconds, top), "middle", 0, -4);
        }

        foreach (FaultEntry fault in study.Result.Faults)
        {
            foreach (string key in new[] { "n", "i" }) plot.Model.Annotations.Add(PlotParts.Upright(key, fault.Seconds, PlotParts.Red, LineStyle.Solid));
        }

        return plot;
    }

    private static void AddPanel(
        PlotDrawing plot, List<Sample> samples, double end, (string Key, string Title, double Lift) axis, (double From, double To) place, Func<Sample, double> number)
    {
        DataPoint[] points = [.. samples.Select(sample => new DataPoint(sample.TimeSeconds, number(sample)))];
        (double From, double To) range = PlotParts.Range(Math.Min(0, points.Min(point => point.Y)), points.Max(point => point.Y) is > 0 and double highest ? highest : 1, 0.08);
        plot.Left(axis.Key, axis.Title, range, place.From, place.To, axis.Lift);
        double unitsPerY = plot.Height * (place.To - place.From) / (range.To - range.From);
        plot.Model.Series.Add(PlotParts.Curve(axis.Key, Curves.Thin(points, plot.Width / end, unitsPerY), PlotParts.Ink));
    }
}
