using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>The straight characteristic of every stage, the load and the path of the start in the plane of torque and speed.</summary>
internal static class PlanePlot
{
    private const string Key = "t";
    private const double LoadRatio = 2;

    // A little beyond the axes, so that a start that does not leave them is seen.
    private const double EdgeRatio = 0.02;

    private static readonly LineStyle[] LoadStyles = [LineStyle.LongDash, LineStyle.Dot, LineStyle.DashDot, LineStyle.Dash];

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size)
    {
        Machine machine = study.Setup.Machine;
        List<Sample> samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0)];
        double noLoadRpm = (study.Setup.Supply.OpenCircuitVolts - machine.BrushDropVolts) / machine.Constant * 30 / Math.PI;
        double right = Math.Max(noLoadRpm, samples.Max(Rpm)) * 1.03, left = Math.Min(-EdgeRatio * noLoadRpm, samples.Min(Rpm));
        double top = 1.12 * Math.Max(machine.Constant * study.Design.PeakAmps, study.Result.PeakTorqueNewtonMetres);
        double bottom = Math.Min(-EdgeRatio * top, 1.1 * samples.Min(sample => sample.TorqueNewtonMetres));
        IReadOnlyList<LoadSpan> loads = LoadSpan.Of(study.Setup);

        // A load that holds the machine lies above all it can do; one far above would press the rest flat and stays outside.
        double highest = LoadRatio * top;
        IEnumerable<double> tops = loads.Select(span => 1.12 * span.Load.TorqueAt(right * Math.PI / 30));
        top = tops.Where(torque => torque <= highest).Append(top).Max();
        PlotDrawing plot = new(size, PlotDrawing.RoomFor(size, loads.Select(span => "↑ " + span.Words)), 42);
        plot.Bottom("speed, r/min", left, right);
        plot.Left(Key, "torque, N\u00A0m", (bottom, top), lift: 18);

        AddCharacteristics(plot, study, noLoadRpm, top);
        AddLoads(plot, loads, (Math.Min(0, samples.Min(Rpm)), right), (bottom, top));
        double unitsPerX = plot.Width / (right - left), unitsPerY = plot.Height / (top - bottom);
        DataPoint[] path = [.. samples.Select(sample => new DataPoint(Rpm(sample), sample.TorqueNewtonMetres))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(path, unitsPerX, unitsPerY), PlotParts.Ink, thickness: 2.4));
        plot.Model.Series.Add(PlotParts.Marks(Key, [path[^1]], MarkerType.Diamond, PlotParts.Red));
        bool isAtLeft = (path[^1].X - left) * unitsPerX < 4 * size.FontSize;
        plot.Say(Key, "end", path[^1], isAtLeft ? "start" : "end", isAtLeft ? 8 : -8, isAtLeft ? -6 : 5);
        return plot;
    }

    private static void AddCharacteristics(PlotDrawing plot, StartStudy study, double noLoadRpm, double top)
    {
        Machine machine = study.Setup.Machine;
        double driving = study.Setup.Supply.OpenCircuitVolts - machine.BrushDropVolts;
        double room = plot.Size.FontSize * noLoadRpm / plot.Width, lastX = double.NegativeInfinity;
        for (int i = 0; i <= study.Design.StageCount; i++)
        {
            bool isBare = i == study.Design.StageCount;
            double ohms = study.Setup.Supply.SourceOhms + (isBare ? study.Design.ArmatureOhms : study.Design.Stages[i].TotalOhms);
            double standstill = machine.Constant * driving / ohms;
            // Where the line enters the picture: on its left edge, or on its top.
            bool isOnLeft = standstill <= top;
            DataPoint enters = isOnLeft ? new DataPoint(0, standstill) : new DataPoint(noLoadRpm * (1 - top / standstill), top);
            plot.Model.Series.Add(PlotParts.Curve(Key, [enters, new DataPoint(noLoadRpm, 0)], PlotParts.Blue, isBare ? LineStyle.LongDashDot : LineStyle.Dash, 1.1));
            if (enters.X - lastX < room && !isBare) continue;
            if (!isOnLeft) lastX = enters.X;
            plot.Say(Key, isBare ? "armature" : $"{i + 1}", enters, isBare ? "start" : "middle", isOnLeft ? 8 : isBare ? -6 : 0, isOnLeft ? -6 : -4);
        }
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
