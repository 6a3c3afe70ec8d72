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

    public static readonly OxyColor Ink = OxyColors.Black;
    public static readonly OxyColor Blue = OxyColor.FromRgb(6, 63, 125);
    public static readonly OxyColor Red = OxyColor.FromRgb(160, 40, 10);
    public static readonly OxyColor Grey = OxyColor.FromRgb(85, 85, 85);
    private static readonly OxyColor Grid = OxyColor.FromRgb(222, 222, 222);

    /// <summary>The axis along the bottom.</summary>
    public static LinearAxis Bottom(double from, double to) => Styled(new LinearAxis
    {
        Key = BottomKey,
        Position = AxisPosition.Bottom,
        Minimum = from,
        Maximum = to,
    });

    /// <summary>An axis on the left.</summary>
    public static LinearAxis Left(string key, (double From, double To) range, double start, double end) => Styled(new LinearAxis
    {
        Key = key,
        Position = AxisPosition.Left,
        Minimum = range.From,
        Maximum = range.To,
        StartPosition = start,
        EndPosition = end,
        IntervalLength = 34,
    });

    /// <summary>The axis along the bottom, in decades.</summary>
    public static LogarithmicAxis BottomDecades(double from, double to) => Decades(BottomKey, AxisPosition.Bottom, from, to);

    /// <summary>The axis on the left, in decades.</summary>
    public static LogarithmicAxis LeftDecades(string key, double from, double to) => Decades(key, AxisPosition.Left, from, to);

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

    /// <summary>A range that leaves some air around what is drawn and begins at 0 where that is near.</summary>
    public static (double From, double To) Range(double lowest, double highest, double air = 0.12)
    {
        double span = Math.Max(highest - lowest, Math.Max(Math.Abs(highest), Math.Abs(lowest)) * 1e-3);
        if (span == 0) span = 1;
        double from = lowest >= 0 && lowest < 0.5 * highest ? 0 : lowest - air * span;
        return (from, highest + air * span);
    }

    private static LogarithmicAxis Decades(string key, AxisPosition position, double from, double to)
    {
        LogarithmicAxis axis = Styled(new LogarithmicAxis { Key = key, Position = position, Minimum = from, Maximum = to });
        // The lines between two decades are what such a sheet is read by.
        axis.MinorGridlineStyle = LineStyle.Solid;
        axis.MinorGridlineColor = Grid;
        axis.MinorGridlineThickness = 0.5;
        return axis;
    }

    private static T Styled<T>(T axis)
        where T : Axis
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
        return axis;
    }
}
