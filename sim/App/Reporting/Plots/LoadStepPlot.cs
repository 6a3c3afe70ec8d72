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
    private const double LeadRatio = 0.15;

    /// <summary>Speed, back-EMF and current of the machine.</summary>
    public static PlotDrawing Build(LoadStepResponse response, PlotSize size)
    {
        double end = response.Curve[^1].Seconds;
        PlotDrawing plot = new(size, size.IsNarrow ? 48 : 56);
        plot.Bottom("time after the step, s", -LeadRatio * end, end);
        AddPanel(plot, response, "n", "speed, r/min", (0.7, 1), point => point.Rpm);
        AddPanel(plot, response, "e", "back-EMF, V", (0.35, 0.64), point => point.BackEmfVolts);
        AddPanel(plot, response, "i", "current, A", (0, 0.29), point => point.ArmatureAmps);
        return plot;
    }

    /// <summary>Speed of both machines, each in per cent of its own speed before the step.</summary>
    public static PlotDrawing BuildComparison(LoadStepScene scene, PlotSize size)
    {
        double end = Math.Max(scene.Machine.Curve[^1].Seconds, scene.WeakerMachine.TimeConstantSeconds * 3), start = -0.05 * end;
        List<DataPoint> strong = Percent(scene.Machine, start, end), weak = Percent(scene.WeakerMachine, start, end);
        (double From, double To) range = PlotParts.Range(Math.Min(strong.Min(point => point.Y), weak.Min(point => point.Y)), 100, 0.2);
        PlotDrawing plot = new(size);
        plot.Bottom("time after the step, s", start, end);
        plot.Left("n", "speed, % of that before the step", range);
        double unitsPerX = plot.Width / (end - start), unitsPerY = plot.Height / (range.To - range.From);
        plot.Model.Annotations.Add(PlotParts.Upright("n", 0, PlotParts.Grey, LineStyle.Dot));
        plot.Model.Series.Add(PlotParts.Curve("n", Curves.Thin(strong, unitsPerX, unitsPerY), PlotParts.Ink));
        plot.Model.Series.Add(PlotParts.Curve("n", Curves.Thin(weak, unitsPerX, unitsPerY), PlotParts.Red, LineStyle.Dash));
        plot.Say("n", "this machine: −" + Quantity.Percent(scene.Machine.DropPercent), new DataPoint(end, strong[^1].Y), "end", -2, -6);
        plot.Say("n", "10 times the resistance: −" + Quantity.Percent(scene.WeakerMachine.DropPercent), new DataPoint(end, weak[^1].Y), "end", -2, size.FontSize + 5);
        return plot;
    }

    private static List<DataPoint> Percent(LoadStepResponse response, double start, double end)
    {
        double whole = response.Before.Rpm > 0 ? response.Before.Rpm : 1;
        List<DataPoint> points = [new(start, response.Before.Rpm / whole * 100)];
        points.AddRange(response.Curve.Where(point => point.Seconds <= end).Select(point => new DataPoint(point.Seconds, point.Rpm / whole * 100)));
        if (response.Curve[^1].Seconds < end) points.Add(new DataPoint(end, response.After.Rpm / whole * 100));
        return points;
    }

    private static void AddPanel(PlotDrawing plot, LoadStepResponse response, string key, string title, (double From, double To) place, Func<RunningPoint, double> number)
    {
        double end = response.Curve[^1].Seconds, start = -LeadRatio * end, before = number(response.Before), after = number(response.After);
        List<DataPoint> points = [new(start, before), .. response.Curve.Select(point => new DataPoint(point.Seconds, number(point)))];
        double lowest = points.Min(point => point.Y), highest = points.Max(point => point.Y);
        double air = Math.Max((highest - lowest) * 0.15, Math.Abs(highest) * 1e-4 + 1e-9);
        (double From, double To) range = (lowest - air, highest + air);
        plot.Left(key, title, range, place.From, place.To);
        plot.Model.Annotations.Add(PlotParts.Upright(key, 0, PlotParts.Grey, LineStyle.Dot));
        plot.Model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, plot.Width / (end - start), plot.Height * (place.To - place.From) / (range.To - range.From)), PlotParts.Ink));
        plot.Model.Series.Add(PlotParts.Marks(key, [new DataPoint(response.OnTheWay.Seconds, number(response.OnTheWay))], MarkerType.Circle, PlotParts.Red));
        bool falls = after < before;
        plot.Say(key, Quantity.Plain(before), new DataPoint(start, before), "start", 4, falls ? plot.Size.FontSize + 4 : -5);
        plot.Say(key, Quantity.Plain(after), new DataPoint(end, points[^1].Y), "start", 5, plot.Size.FontSize * 0.35);
    }
}
