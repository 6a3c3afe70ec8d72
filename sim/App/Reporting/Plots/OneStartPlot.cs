using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Records;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Mean temperatures over one start from cold.</summary>
internal static class OneStartPlot
{
    private const string Key = "c";

    /// <summary>Builds the plot: the hottest section at each moment, and the armature winding.</summary>
    public static PlotDrawing Build(DutyStudy study, Record record, PlotSize size)
    {
        List<(string Text, OxyColor Color, LineStyle Style, DataPoint[] Points)> curves = [];
        Sample[] samples = [.. record.Samples];
        if (study.Bodies.Any(body => body.Name == "armature winding"))
            curves.Add(("armature", PlotParts.Blue, LineStyle.Dash, [.. samples.Select(sample => new DataPoint(sample.TimeSeconds, sample.ArmatureCelsius))]));
        if (study.Bodies.Any(body => body.Name == "section 1"))
            curves.Add(("hottest section", PlotParts.Red, LineStyle.Solid, [.. samples.Select(sample => new DataPoint(sample.TimeSeconds, sample.HottestSectionCelsius))]));
        double end = samples[^1].TimeSeconds;
        (double From, double To) range = PlotParts.Range(study.AmbientCelsius, curves.SelectMany(curve => curve.Points).Where(point => !double.IsNaN(point.Y)).Select(point => point.Y).DefaultIfEmpty(study.AmbientCelsius + 1).Max());
        PlotDrawing plot = new(size, PlotDrawing.RoomFor(size, curves.Select(curve => curve.Text).DefaultIfEmpty("")));
        plot.Bottom("time after start, s", 0, end);
        plot.Left(Key, "mean temperature, °C", range);
        foreach ((_, OxyColor color, LineStyle style, DataPoint[] points) in curves)
            plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(points, plot.Width / end, plot.Height / (range.To - range.From)), color, style));
        if (curves.Count > 0) plot.SayAtEnd(Key, end, range, plot.Height, [.. curves.Select(curve => (curve.Text, curve.Points[^1].Y))]);
        return plot;
    }
}
