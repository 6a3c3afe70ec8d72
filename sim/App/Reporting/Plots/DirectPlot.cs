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
    public static PlotModel Build(StartStudy study, DirectStart direct, PlotSize size)
    {
        double end = Math.Max(study.Result.SecondsToSpeed ?? study.Setup.DurationSeconds, direct.Seconds ?? 0) * 1.1;
        end = Math.Min(end, study.Setup.DurationSeconds);
        (double From, double To) range = PlotParts.Range(0, direct.PeakAmps, 0.08);
        PlotModel model = PlotParts.Model(size);
        model.Axes.Add(PlotParts.Bottom("time after start, s", 0, end));
        model.Axes.Add(PlotParts.Left(Key, "current, A", range));
        double unitsPerX = size.PlotWidth / end, unitsPerY = size.Height / (range.To - range.From);
        List<DataPoint> with = [.. study.Record.Samples.Where(sample => sample.TimeSeconds >= 0 && sample.TimeSeconds <= end).Select(sample => new DataPoint(sample.TimeSeconds, sample.ArmatureAmps))];
        List<DataPoint> without = [.. direct.Curve.Where(point => point.Seconds <= end).Select(point => new DataPoint(point.Seconds, point.ArmatureAmps))];
        model.Series.Add(PlotParts.Curve(Key, Curves.Thin(without, unitsPerX, unitsPerY), PlotParts.Red, LineStyle.Dash));
        model.Series.Add(PlotParts.Curve(Key, Curves.Thin(with, unitsPerX, unitsPerY), PlotParts.Ink));
        DataPoint peak = without.MaxBy(point => point.Y);
        DataPoint usual = with.MaxBy(point => point.Y);
        model.Annotations.Add(PlotParts.Label(Key, $"without starter: {Quantity.Amps(direct.PeakAmps)}", peak, HorizontalAlignment.Left, VerticalAlignment.Middle, new ScreenVector(8, 0)));
        model.Annotations.Add(PlotParts.Label(Key, $"with starter: {Quantity.Amps(study.Result.PeakAmps)}", new DataPoint(0.45 * end, usual.Y), HorizontalAlignment.Left, VerticalAlignment.Bottom, new ScreenVector(0, -4)));
        return model;
    }
}
