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

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size)
    {
        Machine machine = study.Setup.Machine;
        List<Sample> samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0)];
        double noLoadRpm = (study.Setup.Supply.OpenCircuitVolts - machine.BrushDropVolts) / machine.Constant * 30 / Math.PI;
        double right = Math.Max(noLoadRpm, samples.Max(Rpm)) * 1.03, left = Math.Min(0, samples.Min(Rpm));
        double top = 1.12 * Math.Max(machine.Constant * study.Design.PeakAmps, study.Result.PeakTorqueNewtonMetres);
        double bottom = Math.Min(0, 1.1 * samples.Min(sample => sample.TorqueNewtonMetres));
        PlotDrawing plot = new(size, top: 42);
        plot.Bottom("speed, r/min", left, right);
        plot.Left(Key, "torque, N\u00A0m", (bottom, top), lift: 18);

        AddCharacteristics(plot, study, noLoadRpm, top);
        AddLoads(plot, study.Setup, left, right);
        double unitsPerX = plot.Width / (right - left), unitsPerY = plot.Height / (top - bottom);
        DataPoint[] path = [.. samples.Select(sample => new DataPoint(Rpm(sample), sample.TorqueNewtonMetres))];
        plot.Model.Series.Add(PlotParts.Curve(Key, Curves.Thin(path, unitsPerX, unitsPerY), PlotParts.Ink, thickness: 2.4));
        plot.Model.Series.Add(PlotParts.Marks(Key, [path[^1]], MarkerType.Diamond, PlotParts.Red));
        plot.Say(Key, "end", path[^1], "end", -8, 5);
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

    private static void AddLoads(PlotDrawing plot, RunSetup setup, double left, double right)
    {
        AddLoad(plot, setup.Load, left, right, LineStyle.LongDash, "load");
        double? last = setup.Events.LastOrDefault(happening => happening.LoadTorqueNewtonMetres != null && happening.AtSeconds < setup.DurationSeconds)?.LoadTorqueNewtonMetres;
        if (last is double torque && torque != setup.Load.ConstantNewtonMetres)
        {
            AddLoad(plot, setup.Load with { ConstantNewtonMetres = torque }, left, right, LineStyle.Dot, "load at the end");
        }
    }

    private static void AddLoad(PlotDrawing plot, Load load, double left, double right, LineStyle style, string name)
    {
        DataPoint[] points = new DataPoint[41];
        for (int i = 0; i < points.Length; i++)
        {
            double rpm = left + (right - left) * i / (points.Length - 1);
            points[i] = new DataPoint(rpm, load.TorqueAt(rpm * Math.PI / 30));
        }

        plot.Model.Series.Add(PlotParts.Curve(Key, points, PlotParts.Red, style, 1.7));
        plot.Say(Key, name, points[3], "start", 0, -5);
    }

    private static double Rpm(Sample sample) => sample.SpeedRadPerSec * 30 / Math.PI;
}
