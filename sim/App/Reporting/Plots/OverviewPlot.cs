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
    public static PlotModel Build(StartStudy study, PlotSize size)
    {
        List<Sample> samples = [.. study.Record.Samples.Where(sample => sample.TimeSeconds >= 0)];
        double end = samples[^1].TimeSeconds;
        PlotModel model = PlotParts.Model(size);
        model.Axes.Add(PlotParts.Bottom("time, s", 0, end));
        AddPanel(model, size, samples, end, "n", "speed, r/min", 0.53, 1, sample => sample.SpeedRadPerSec * 30 / Math.PI);
        AddPanel(model, size, samples, end, "i", "current, A", 0, 0.47, sample => sample.ArmatureAmps);
        int number = 0;
        foreach (RunEvent happening in study.Setup.Events)
        {
            number++;
            foreach (string key in new[] { "n", "i" }) model.Annotations.Add(PlotParts.Upright(key, happening.AtSeconds, PlotParts.Red, LineStyle.Dash));
            double top = model.GetAxis("n").Maximum;
            model.Annotations.Add(PlotParts.Label("n", $"event {number}", new DataPoint(happening.AtSeconds, top), HorizontalAlignment.Center, VerticalAlignment.Bottom));
        }

        return model;
    }

    private static void AddPanel(
        PlotModel model, PlotSize size, List<Sample> samples, double end, string key, string title, double from, double to, Func<Sample, double> number)
    {
        DataPoint[] points = [.. samples.Select(sample => new DataPoint(sample.TimeSeconds, number(sample)))];
        (double From, double To) range = PlotParts.Range(Math.Min(0, points.Min(point => point.Y)), Math.Max(1e-6, points.Max(point => point.Y)), 0.08);
        model.Axes.Add(PlotParts.Left(key, title, range, from, to));
        double unitsPerY = size.Height * (to - from) / (range.To - range.From);
        model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, size.PlotWidth / end, unitsPerY), PlotParts.Ink));
    }
}
