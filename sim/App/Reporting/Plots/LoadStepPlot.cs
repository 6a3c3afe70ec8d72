using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>What happens after a step of the load.</summary>
internal static class LoadStepPlot
{
    // A stretch before the step shows what it was like.
    private const double LeadRatio = 0.12;

    /// <summary>Speed, back-EMF and current of the machine.</summary>
    public static PlotModel Build(LoadStepResponse response, PlotSize size)
    {
        double end = response.Curve[^1].Seconds, start = -LeadRatio * end;
        PlotModel model = PlotParts.Model(size);
        model.Axes.Add(PlotParts.Bottom("time after the step, s", start, end));
        AddPanel(model, size, response, start, "n", "speed, r/min", 0.69, 1, point => point.Rpm);
        AddPanel(model, size, response, start, "e", "back-EMF, V", 0.345, 0.655, point => point.BackEmfVolts);
        AddPanel(model, size, response, start, "i", "current, A", 0, 0.31, point => point.ArmatureAmps);
        return model;
    }

    /// <summary>Speed of both machines, each in per cent of its own speed before the step.</summary>
    public static PlotModel BuildComparison(LoadStepScene scene, PlotSize size)
    {
        double end = Math.Max(scene.Machine.Curve[^1].Seconds, scene.WeakerMachine.TimeConstantSeconds * 3), start = -0.05 * end;
        List<DataPoint> strong = Percent(scene.Machine, start, end), weak = Percent(scene.WeakerMachine, start, end);
        (double From, double To) range = PlotParts.Range(Math.Min(strong.Min(point => point.Y), weak.Min(point => point.Y)), 100, 0.15);
        PlotModel model = PlotParts.Model(size);
        model.Axes.Add(PlotParts.Bottom("time after the step, s", start, end));
        model.Axes.Add(PlotParts.Left("n", "speed, % of before", range));
        double unitsPerX = size.PlotWidth / (end - start), unitsPerY = size.Height / (range.To - range.From);
        model.Annotations.Add(PlotParts.Upright("n", 0, PlotParts.Grey, LineStyle.Dot));
        model.Series.Add(PlotParts.Curve("n", Curves.Thin(strong, unitsPerX, unitsPerY), PlotParts.Ink));
        model.Series.Add(PlotParts.Curve("n", Curves.Thin(weak, unitsPerX, unitsPerY), PlotParts.Red, LineStyle.Dash));
        model.Annotations.Add(PlotParts.Label("n", "this machine", new DataPoint(end, strong[^1].Y), HorizontalAlignment.Right, VerticalAlignment.Bottom, new ScreenVector(0, -3)));
        model.Annotations.Add(PlotParts.Label("n", $"{LoadStepScene.WeakerTimes:0} × armature resistance", new DataPoint(end, weak[^1].Y), HorizontalAlignment.Right, VerticalAlignment.Bottom, new ScreenVector(0, -3)));
        return model;
    }

    private static List<DataPoint> Percent(LoadStepResponse response, double start, double end)
    {
        double whole = response.Before.Rpm > 0 ? response.Before.Rpm : 1;
        List<DataPoint> points = [new(start, response.Before.Rpm / whole * 100)];
        points.AddRange(response.Curve.Where(point => point.Seconds <= end).Select(point => new DataPoint(point.Seconds, point.Rpm / whole * 100)));
        if (points[^1].X < end) points.Add(new DataPoint(end, points[^1].Y));
        return points;
    }

    private static void AddPanel(
        PlotModel model, PlotSize size, LoadStepResponse response, double start, string key, string title, double from, double to, Func<RunningPoint, double> number)
    {
        List<DataPoint> points = [new(start, number(response.Before))];
        points.AddRange(response.Curve.Select(point => new DataPoint(point.Seconds, number(point))));
        double lowest = points.Min(point => point.Y), highest = points.Max(point => point.Y);
        double air = Math.Max((highest - lowest) * 0.22, Math.Abs(highest) * 1e-4 + 1e-9);
        (double From, double To) range = (lowest - air, highest + air);
        model.Axes.Add(PlotParts.Left(key, title, range, from, to));
        model.Annotations.Add(PlotParts.Upright(key, 0, PlotParts.Grey, LineStyle.Dot));
        double end = points[^1].X;
        model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, size.PlotWidth / (end - start), size.Height * (to - from) / (range.To - range.From)), PlotParts.Ink));
        bool falls = points[^1].Y < points[0].Y;
        model.Annotations.Add(PlotParts.Label(key, Quantity.Plain(points[0].Y), points[0], HorizontalAlignment.Left, falls ? VerticalAlignment.Bottom : VerticalAlignment.Bottom, new ScreenVector(2, -2)));
        model.Annotations.Add(PlotParts.Label(key, Quantity.Plain(number(response.After)), points[^1], HorizontalAlignment.Right, falls ? VerticalAlignment.Top : VerticalAlignment.Bottom, new ScreenVector(-2, falls ? 2 : -2)));
        model.Series.Add(PlotParts.Marks(key, [new DataPoint(response.OnTheWay.Seconds, number(response.OnTheWay))], MarkerType.Circle, PlotParts.Red));
    }
}
