using System;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Machines;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Back-EMF at one speed against exciting current.</summary>
internal static class MagnetisationPlot
{
    private const string Key = "e";
    private const int CurvePoints = 241;

    /// <summary>Builds the plot.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="radPerSec">Speed at which the back-EMF is drawn, rad/s.</param>
    /// <param name="ratedAmps">Exciting current of the rated point, A.</param>
    /// <param name="used">Exciting currents of the run, A; null: none.</param>
    /// <param name="size">Size of the drawing.</param>
    public static PlotDrawing Build(Magnetisation curve, double radPerSec, double ratedAmps, (double From, double To)? used, PlotSize size)
    {
        double right = 1.06 * Math.Max(curve.LastAmps, used?.To ?? 0), left = Math.Min(0, 1.06 * (used?.From ?? 0));
        double lowest = Math.Min(0, radPerSec * curve.ConstantAt(left)), top = 1.12 * radPerSec * curve.Constants[^1];
        PlotDrawing plot = new(size, size.FontSize * 1.5, 30);
        plot.Bottom("exciting current, A", left, right);
        plot.Left(Key, "back-EMF, V", (lowest, top));
        plot.Model.Series.Add(PlotParts.Curve(Key, Points(left, right), PlotParts.Ink, thickness: 1.4));
        if (used is (double From, double To) range) plot.Model.Series.Add(PlotParts.Curve(Key, Points(range.From, range.To), PlotParts.Ink, thickness: 5));
        plot.Model.Series.Add(PlotParts.Marks(Key, curve.Amps.Select((amps, i) => new DataPoint(amps, radPerSec * curve.Constants[i])), MarkerType.Circle, PlotParts.Ink));
        DataPoint rated = new(ratedAmps, radPerSec * curve.ConstantAt(ratedAmps));
        plot.Model.Series.Add(PlotParts.Marks(Key, [rated], MarkerType.Diamond, PlotParts.Red));
        plot.Model.Annotations.Add(PlotParts.Upright(Key, ratedAmps, PlotParts.Grey, LineStyle.Dot));
        plot.Say(Key, "rated", new DataPoint(ratedAmps, 0), "end", -5, -6);
        if (used is (_, double end)) plot.Say(Key, "in this run", At(end), "start", 6, 1.6 * plot.Size.FontSize + 4);
        return plot;

        DataPoint At(double amps) => new(amps, radPerSec * curve.ConstantAt(amps));

        System.Collections.Generic.IReadOnlyList<DataPoint> Points(double from, double to) => Curves.Thin(
            [.. Enumerable.Range(0, CurvePoints).Select(i => At(from + (to - from) * i / (CurvePoints - 1)))],
            plot.Width / (right - left),
            plot.Height / (top - lowest));
    }
}
