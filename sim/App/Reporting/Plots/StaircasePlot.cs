using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>The designed start as a staircase on the speed-current characteristics of its stages.</summary>
internal static class StaircasePlot
{
    private const string Key = "n";
    private const int CurvePoints = 121;

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, StarterStaircase staircase, PlotSize size)
    {
        OperatingPoint[] corners = [.. staircase.Treads.SelectMany(tread => new[] { tread.From, tread.To })];
        double right = 1.06 * corners.Max(point => point.ArmatureAmps), top = 1.14 * corners.Max(point => point.Rpm), bottom = -0.05 * top;
        string[] names = [.. Enumerable.Range(1, study.Design.StageCount).Select(stage => $"{stage}"), "armature"];
        PlotDrawing plot = new(size, PlotDrawing.RoomFor(size, names), 42);
        plot.Bottom("armature current, A", 0, right);
        plot.Left(Key, "speed, r/min", (bottom, top), lift: 18);
        List<(string Text, double At)> words = [];
        for (int i = 0; i < staircase.Curves.Count; i++)
        {
            DataPoint[] curve = Within(staircase.Curves[i], right, (bottom, top));
            bool isBare = i == staircase.Curves.Count - 1;
            plot.Model.Series.Add(PlotParts.Curve(Key, Thin(plot, curve, right, top - bottom), PlotParts.Blue, isBare ? LineStyle.LongDashDot : LineStyle.Dash, 1.1));
            words.Add((names[i], Math.Clamp(staircase.Curves[i].AtAmps(right).Rpm, bottom, top)));
        }

        plot.SayAtEnd(Key, right, (bottom, top), plot.Height, words);
        AddCurrents(plot, study, right, top);
        AddLoad(plot, study, staircase, (right, top));
        DataPoint[] path = [.. staircase.Path().Select(point => new DataPoint(point.ArmatureAmps, point.Rpm))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Thin(plot, path, right, top - bottom), PlotParts.Ink, thickness: 2.4));
        plot.Model.Series.Add(PlotParts.Marks(Key, corners[..^1].Select(point => new DataPoint(point.ArmatureAmps, point.Rpm)), MarkerType.Circle, PlotParts.Ink));
        plot.Model.Series.Add(PlotParts.Marks(Key, [path[^1]], MarkerType.Diamond, PlotParts.Red));
        if (staircase.Running != null) plot.Say(Key, "runs here", path[^1], path[^1].X > 0.3 * right ? "end" : "start", path[^1].X > 0.3 * right ? -9 : 9, -8);
        return plot;
    }

    private static void AddCurrents(PlotDrawing plot, StartStudy study, double right, double top)
    {
        double peak = study.Design.PeakAmps, switching = study.Design.SwitchingAmps;
        foreach (double amps in new[] { peak, switching }) plot.Model.Annotations.Add(PlotParts.Upright(Key, amps, PlotParts.Grey, LineStyle.Dot));
        bool areApart = (peak - switching) / right * plot.Width > 2.5 * plot.Size.FontSize;
        plot.Say(Key, "I₂", new DataPoint(switching, top), areApart ? "middle" : "end", 0, -4);
        plot.Say(Key, "I₁", new DataPoint(peak, top), areApart ? "middle" : "start", 0, -4);
    }

    // The current with which the machine just carries its load at a speed; left of it the machine would slow down.
    private static void AddLoad(PlotDrawing plot, StartStudy study, StarterStaircase staircase, (double Amps, double Rpm) end)
    {
        Load load = study.DesignInput.Load;
        List<DataPoint> points = [];
        for (int i = 0; i < CurvePoints; i++)
        {
            double rpm = end.Rpm * i / (CurvePoints - 1);
            if (staircase.Curves[^1].AtTorque(load.TorqueAt(rpm * Math.PI / 30)) is OperatingPoint point && point.ArmatureAmps <= end.Amps) points.Add(new DataPoint(point.ArmatureAmps, rpm));
        }

        if (points.Count < 2) return;
        plot.Model.Series.Add(PlotParts.Curve(Key, Thin(plot, points, end.Amps, end.Rpm), PlotParts.Red, LineStyle.LongDash, 1.5));
        plot.Say(Key, "load", new DataPoint(points[0].X, 0), "start", 5, -6);
    }

    private static DataPoint[] Within(Characteristic curve, double right, (double From, double To) rpm) =>
    [
        .. curve.Curve(0, right, CurvePoints * 4).Where(point => point.Rpm >= rpm.From && point.Rpm <= rpm.To)
            .Select(point => new DataPoint(point.ArmatureAmps, point.Rpm)),
    ];

    private static IReadOnlyList<DataPoint> Thin(PlotDrawing plot, IReadOnlyList<DataPoint> points, double amps, double rpm) =>
        Curves.Thin(points, plot.Width / amps, plot.Height / rpm);
}
