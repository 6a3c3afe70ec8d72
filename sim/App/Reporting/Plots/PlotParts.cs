using System;
using System.Collections.Generic;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Axes, curves and labels in the one style of the report: told apart without colour.</summary>
internal static class PlotParts
{
    /// <summary>Key of the axis along the bottom.</summary>
    public const string BottomKey = "x";

    // Letters are measured as these; the page shows its own sans-serif face, which is about as wide.
    private const string MeasuredFont = "Arial";

    public static readonly OxyColor Ink = OxyColors.Black;
    public static readonly OxyColor Blue = OxyColor.FromRgb(6, 63, 125);
    public static readonly OxyColor Red = OxyColor.FromRgb(160, 40, 10);
    public static readonly OxyColor Grey = OxyColor.FromRgb(85, 85, 85);
    private static readonly OxyColor Grid = OxyColor.FromRgb(222, 222, 222);

    /// <summary>An empty plot with room for its labels.</summary>
    public static PlotModel Model(PlotSize size) => new()
    {
        DefaultFont = MeasuredFont,
        DefaultFontSize = size.FontSize,
        PlotAreaBorderThickness = new OxyThickness(0),
        PlotMargins = new OxyThickness(size.Left, size.IsNarrow ? 16 : 20, size.Right, size.IsNarrow ? 40 : 46),
        Padding = new OxyThickness(0),
        Background = OxyColors.Undefined,
        TextColor = Ink,
    };

    /// <summary>The axis along the bottom.</summary>
    public static LinearAxis Bottom(string title, double from, double to) => Styled(new LinearAxis
    {
        Key = BottomKey,
        Position = AxisPosition.Bottom,
        Title = title,
        Minimum = from,
        Maximum = to,
        AxisTitleDistance = 4,
    });

    /// <summary>An axis on the left; several stand above each other.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="title">Quantity and unit.</param>
    /// <param name="range">Lowest and highest number.</param>
    /// <param name="start">Lower end as a part of the plot's height.</param>
    /// <param name="end">Upper end.</param>
    public static LinearAxis Left(string key, string title, (double From, double To) range, double start = 0, double end = 1) => Styled(new LinearAxis
    {
        Key = key,
        Position = AxisPosition.Left,
        Title = title,
        Minimum = range.From,
        Maximum = range.To,
        StartPosition = start,
        EndPosition = end,
        IntervalLength = 34,
    });

    /// <summary>A curve.</summary>
    public static LineSeries Curve(string key, IReadOnlyList<DataPoint> points, OxyColor color, LineStyle style = LineStyle.Solid, double thickness = 1.8)
    {
        LineSeries series = new() { XAxisKey = BottomKey, YAxisKey = key, Color = color, LineStyle = style, StrokeThickness = thickness, LineJoin = LineJoin.Round };
        series.Points.AddRange(points);
        return series;
    }

    /// <summary>Markers without a line.</summary>
    public static LineSeries Marks(string key, IEnumerable<DataPoint> points, MarkerType marker, OxyColor color)
    {
        LineSeries series = new()
        {
            XAxisKey = BottomKey,
            YAxisKey = key,
            LineStyle = LineStyle.None,
            MarkerType = marker,
            MarkerSize = 4,
            MarkerFill = OxyColors.White,
            MarkerStroke = color,
            MarkerStrokeThickness = 1.6,
        };
        series.Points.AddRange(points);
        return series;
    }

    /// <summary>A level line over the whole width.</summary>
    public static LineAnnotation Level(string key, double at, OxyColor color, LineStyle style) => new()
    {
        XAxisKey = BottomKey,
        YAxisKey = key,
        Type = LineAnnotationType.Horizontal,
        Y = at,
        Color = color,
        LineStyle = style,
        StrokeThickness = 1.1,
        Layer = AnnotationLayer.BelowSeries,
    };

    /// <summary>An upright line.</summary>
    public static LineAnnotation Upright(string key, double at, OxyColor color, LineStyle style) => new()
    {
        XAxisKey = BottomKey,
        YAxisKey = key,
        Type = LineAnnotationType.Vertical,
        X = at,
        Color = color,
        LineStyle = style,
        StrokeThickness = 1,
        Layer = AnnotationLayer.BelowSeries,
    };

    /// <summary>A label on a white ground, so that lines behind it do not strike it through.</summary>
    public static TextAnnotation Label(string key, string text, DataPoint at, HorizontalAlignment horizontal, VerticalAlignment vertical, ScreenVector offset = default) => new()
    {
        XAxisKey = BottomKey,
        YAxisKey = key,
        Text = text,
        TextPosition = at,
        TextHorizontalAlignment = horizontal,
        TextVerticalAlignment = vertical,
        Offset = offset,
        Stroke = OxyColors.Undefined,
        StrokeThickness = 0,
        Background = OxyColor.FromAColor(215, OxyColors.White),
        Padding = new OxyThickness(1, 0, 1, 0),
        ClipByXAxis = false,
        ClipByYAxis = false,
        Layer = AnnotationLayer.AboveSeries,
    };

    /// <summary>A range that leaves some air around what is drawn and begins at 0 where that is near.</summary>
    public static (double From, double To) Range(double lowest, double highest, double air = 0.12)
    {
        double span = Math.Max(highest - lowest, Math.Max(Math.Abs(highest), Math.Abs(lowest)) * 1e-3);
        if (span == 0) span = 1;
        double from = lowest >= 0 && lowest < 0.5 * highest ? 0 : lowest - air * span;
        return (from, highest + air * span);
    }

    private static LinearAxis Styled(LinearAxis axis)
    {
        axis.AxislineStyle = LineStyle.Solid;
        axis.AxislineColor = Ink;
        axis.AxislineThickness = 1;
        axis.TicklineColor = Ink;
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = Grid;
        axis.MajorGridlineThickness = 1;
        axis.MinorTickSize = 0;
        axis.MajorTickSize = 4;
        axis.StringFormat = "0.######";
        axis.AxisTitleDistance = 6;
        return axis;
    }
}
