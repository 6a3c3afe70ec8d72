using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Speed against torque on the full supply.</summary>
internal static class RegulationPlot
{
    private const string Key = "n";
    private const int CurvePoints = 241;
    private const double TorqueRatio = 1.3;

    /// <summary>Builds the plot.</summary>
    /// <param name="machine">The machine on the full supply.</param>
    /// <param name="marked">Points with their words: the highest speed of the picture is that of the fastest of them.</param>
    /// <param name="load">Load of the case.</param>
    /// <param name="size">Size of the drawing.</param>
    public static PlotDrawing Build(Characteristic machine, IReadOnlyList<(string Words, OperatingPoint Point)> marked, Load load, PlotSize size)
    {
        double right = TorqueRatio * marked.Max(mark => mark.Point.TorqueNewtonMetres), top = 1.16 * marked.Max(mark => mark.Point.Rpm);
        PlotDrawing plot = new(size, size.FontSize * 1.5, 30);
        plot.Bottom("torque, N\u00A0m", 0, right);
        plot.Left(Key, "speed, r/min", (0, top));
        double unitsPerX = plot.Width / right, unitsPerY = plot.Height / top;
        double least = machine.AtAmps(0).Rpm <= top ? 0 : machine.AtSpeed(top * Math.PI / 30)?.ArmatureAmps ?? 0;
        double most = machine.AtTorque(right)?.ArmatureAmps ?? machine.StandstillAmps;
        DataPoint[] curve = [.. machine.Curve(least, most, CurvePoints).Where(point => point.Rpm <= top && point.Rpm >= 0).Select(At)];
        DataPoint[] needed = [.. Enumerable.Range(0, CurvePoints).Select(i => top * i / (CurvePoints - 1)).Select(rpm => new DataPoint(load.TorqueAt(rpm * Math.PI / 30), rpm)).Where(point => point.X <= right)];
        if (needed.Length > 1)
        {
            plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(needed, unitsPerX, unitsPerY), PlotParts.Red, LineStyle.LongDash, 1.5));
            plot.Say(Key, "load", needed[0], needed[0].X < 0.8 * right ? "start" : "end", needed[0].X < 0.8 * right ? 5 : -5, -6);
        }

        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(curve, unitsPerX, unitsPerY), PlotParts.Ink, thickness: 2));
        plot.Model.Series.Add(PlotParts.Marks(Key, marked.Select(mark => At(mark.Point)), MarkerType.Circle, PlotParts.Ink));
        foreach ((string words, OperatingPoint point) in marked) plot.Say(Key, words, At(point), "start", 6, -8);
        return plot;

        static DataPoint At(OperatingPoint point) => new(point.TorqueNewtonMetres, point.Rpm);
    }
}
