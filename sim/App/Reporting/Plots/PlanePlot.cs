using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>The characteristic of every stage, the load and the path of the start in the plane of torque and speed.</summary>
internal static class PlanePlot
{
    private const string Key = "t";
    private const double LoadRatio = 2;

    // A no-load speed further away than this would press the start into a corner.
    private const double FarRatio = 1.6;
    private const int CurvePoints = 201;

    // A little beyond the axes, so that a start that does not leave them is seen.
    private const double EdgeRatio = 0.02;

    private static readonly LineStyle[] LoadStyles = [LineStyle.LongDash, LineStyle.Dot, LineStyle.DashDot, LineStyle.Dash];

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size)
    {
        List<Sample> samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0)];
        Characteristic full = StudyMachine.OnFullSupply(study);
        double right = HighestRpm(study, full, samples), left = Math.Min(-EdgeRatio * right, samples.Min(Rpm));
        double top = 1.12 * Math.Max(full.AtAmps(study.Design.PeakAmps).TorqueNewtonMetres, study.Result.PeakTorqueNewtonMetres);
        double bottom = Math.Min(-EdgeRatio * top, 1.1 * samples.Min(sample => sample.TorqueNewtonMetres));
        IReadOnlyList<LoadSpan> loads = LoadSpan.Of(study.Setup);

        // A load that holds the machine lies above all it can do; one far above would press the rest flat and stays outside.
        double highest = LoadRatio * top;
        IEnumerable<double> tops = loads.Select(span => 1.12 * span.Load.TorqueAt(right * Math.PI / 30));
        top = tops.Where(torque => torque <= highest).Append(top).Max();
        PlotDrawing plot = new(size, PlotDrawing.RoomFor(size, loads.Select(span => "↑ " + span.Words)), 42);
        plot.Bottom("speed, r/min", left, right);
        plot.Left(Key, "torque, N\u00A0m", (bottom, top), lift: 18);

        AddCharacteristics(plot, study, right, top);
        foreach ((double from, double to) in LoadSpan.Ramps(study.Setup)) AddRamp(plot, samples.Where(sample => sample.TimeSeconds >= from && sample.TimeSeconds <= to));
        AddLoads(plot, loads, (Math.Min(0, samples.Min(Rpm)), right), (bottom, top));
        double unitsPerX = plot.Width / (right - left), unitsPerY = plot.Height / (top - bottom);
        DataPoint[] path = [.. samples.Select(sample => new DataPoint(Rpm(sample), sample.TorqueNewtonMetres))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(path, unitsPerX, unitsPerY), PlotParts.Ink, thickness: 2.4));
        plot.Model.Series.Add(PlotParts.Marks(Key, [path[^1]], MarkerType.Diamond, PlotParts.Red));
        bool isAtLeft = (path[^1].X - left) * unitsPerX < 4 * size.FontSize;
        plot.Say(Key, "end", path[^1], isAtLeft ? "start" : "end", isAtLeft ? 8 : -8, isAtLeft ? -6 : 5);
        return plot;
    }

    // Of the no-load speed, or of what matters where that is far away: a series machine without load has no speed to draw.
    private static double HighestRpm(StartStudy study, Characteristic full, List<Sample> samples)
    {
        double seen = Math.Max(samples.Max(Rpm), Math.Max(study.Design.Stages[^1].CutoutRpm ?? 0, study.Plate.RatedRadPerSec * 30 / Math.PI ?? 0));
        double noLoadRpm = full.AtAmps(0).Rpm;
        return noLoadRpm <= FarRatio * seen ? Math.Max(noLoadRpm, seen) * 1.03 : 1.25 * seen;
    }

    private static void AddCharacteristics(PlotDrawing plot, StartStudy study, double right, double top)
    {
        double room = plot.Size.FontSize * right / plot.Width, lastX = double.NegativeInfinity;
        for (int i = 0; i <= study.Design.StageCount; i++)
        {
            bool isBare = i == study.Design.StageCount;
            Characteristic stage = StudyMachine.OnStage(study, i);
            double highest = stage.AtTorque(top)?.ArmatureAmps ?? stage.StandstillAmps;
            // Where the line enters the picture: on its left edge, or on its top.
            bool isOnLeft = highest == stage.StandstillAmps;
            double lowest = stage.AtAmps(0).Rpm <= right ? 0 : stage.AtSpeed(right * Math.PI / 30)?.ArmatureAmps ?? 0;
            DataPoint[] points = [.. stage.Curve(highest, lowest, CurvePoints).Select(point => new DataPoint(point.Rpm, point.TorqueNewtonMetres))];
            DataPoint enters = points[0];
            plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(points, plot.Width / right, plot.Height / top), PlotParts.Blue, isBare ? LineStyle.LongDashDot : LineStyle.Dash, 1.1));
            if (enters.X - lastX < room && !isBare) continue;
            if (!isOnLeft) lastX = enters.X;
            plot.Say(Key, isBare ? "armature" : $"{i + 1}", enters, isBare ? "start" : "middle", isOnLeft ? 8 : isBare ? -6 : 0, isOnLeft ? -6 : -4);
        }
    }

    // The load on its way, over the speeds that the machine had meanwhile.
    private static void AddRamp(PlotDrawing plot, IEnumerable<Sample> samples)
    {
        DataPoint[] points = [.. samples.Select(sample => new DataPoint(Rpm(sample), sample.LoadTorqueNewtonMetres))];
        if (points.Length > 1) plot.Model.Series.Add(PlotParts.Curve(Key, points, PlotParts.Red, thickness: 1));
    }

    private static void AddLoads(PlotDrawing plot, IReadOnlyList<LoadSpan> loads, (double From, double To) speeds, (double From, double To) torques)
    {
        List<(string Text, double At)> words = [];
        for (int n = 0; n < loads.Count; n++)
        {
            DataPoint[] points = new DataPoint[41];
            for (int i = 0; i < points.Length; i++)
            {
                double rpm = speeds.From + (speeds.To - speeds.From) * i / (points.Length - 1);
                points[i] = new DataPoint(rpm, loads[n].Load.TorqueAt(rpm * Math.PI / 30));
            }

            plot.Model.Series.Add(PlotParts.Curve(Key, points, PlotParts.Red, LoadStyles[n % LoadStyles.Length], 1.7));
            bool isAbove = points[^1].Y > torques.To;
            words.Add(((isAbove ? "↑ " : "") + loads[n].Words, Math.Min(points[^1].Y, torques.To)));
        }

        plot.SayAtEnd(Key, speeds.To, torques, plot.Height, words);
    }

    private static double Rpm(Sample sample) => sample.SpeedRadPerSec * 30 / Math.PI;
}
