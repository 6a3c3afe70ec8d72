using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>What the winding bears, when the overload trips and what the start takes, on one sheet of current and time in decades.</summary>
internal static class TimeCurrentPlot
{
    private const string Key = "t";
    private const double LeastSeconds = 0.02;
    private const double MostSeconds = 20_000;
    private const int CurvePoints = 400;

    // A moment of the start at which its line is alone.
    private const double WordsSeconds = 0.25;

    /// <summary>Builds the plot.</summary>
    /// <param name="choice">Choice of the class.</param>
    /// <param name="shown">The class whose curves are drawn.</param>
    /// <param name="size">Size of the drawing.</param>
    public static PlotDrawing Build(OverloadChoice choice, TripClass shown, PlotSize size)
    {
        double from = 0.5 * choice.SettingAmps, to = Math.Max(1.3 * choice.DirectAmps, 8 * choice.SettingAmps);
        PlotDrawing plot = new(size);
        plot.Decades(("current, A", from, to), Key, ("time, s", LeastSeconds, MostSeconds));
        if (choice.Winding is CopperBody winding)
        {
            AddCurve("winding, from cold", PlotParts.Red, LineStyle.Solid, 2.4, (0.42, "start", -5), amps => winding.SecondsTo(choice.LimitCelsius!.Value, winding.AmbientCelsius, amps));
            if (choice.HotCelsius is double hot) AddCurve("winding, from hot", PlotParts.Red, LineStyle.Dash, 2.4, (0.66, "start", -5), amps => winding.SecondsTo(choice.LimitCelsius!.Value, hot, amps));
        }

        AddCurve($"class {shown.Name}, from cold", PlotParts.Blue, LineStyle.Solid, 1.6, (0.5, "start", -5), amps => shown.TripSeconds(amps / choice.SettingAmps, 0));
        AddCurve($"class {shown.Name}, from hot", PlotParts.Blue, LineStyle.Dash, 1.6, (0.62, "end", 16), amps => shown.TripSeconds(amps / choice.SettingAmps, 1));
        DataPoint[] start = [.. choice.Start.Where(point => point.Seconds >= LeastSeconds && point.Amps >= from).Select(point => new DataPoint(point.Amps, point.Seconds))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Thinned(start), PlotParts.Ink));
        if (start.Length > 0) plot.Say(Key, "the start", start.FirstOrDefault(point => point.Y > WordsSeconds, start[^1]), "end", -8, 4);
        plot.Model.Annotations.Add(PlotParts.Upright(Key, choice.InstantTripAmps, PlotParts.Blue, LineStyle.Dot));
        plot.Say(Key, size.IsNarrow ? "instant" : "instantaneous trip", new DataPoint(choice.InstantTripAmps, LeastSeconds), "start", 5, -8);
        plot.Model.Annotations.Add(PlotParts.Upright(Key, choice.DirectAmps, PlotParts.Grey, LineStyle.Dot));
        plot.Say(Key, size.IsNarrow ? "direct" : "straight on", new DataPoint(choice.DirectAmps, LeastSeconds), "end", -5, -8);
        return plot;

        void AddCurve(string words, OxyColor color, LineStyle style, double thickness, (double Part, string Anchor, double Down) place, Func<double, double> seconds)
        {
            List<DataPoint> points = [];
            for (int i = 0; i <= CurvePoints; i++)
            {
                double amps = from * Math.Pow(to / from, i / (double)CurvePoints), time = seconds(amps);
                if (time is >= LeastSeconds and <= MostSeconds) points.Add(new DataPoint(amps, time));
            }

            if (points.Count == 0) return;
            plot.Model.Series.Add(PlotParts.Curve(Key, points, color, style, thickness));
            plot.Say(Key, words, points[(int)(place.Part * (points.Count - 1))], place.Anchor, place.Anchor == "start" ? 4 : -2, place.Down);
        }
    }

    // In decades a point counts by its ratio to the last one.
    private static List<DataPoint> Thinned(DataPoint[] points)
    {
        const double Step = 0.002;
        List<DataPoint> kept = [];
        foreach (DataPoint point in points)
        {
            bool isNear = kept.Count > 0 && Math.Abs(Math.Log(point.X / kept[^1].X)) + Math.Abs(Math.Log(point.Y / kept[^1].Y)) < Step * 5;
            if (!isNear) kept.Add(point);
        }

        return kept;
    }
}
