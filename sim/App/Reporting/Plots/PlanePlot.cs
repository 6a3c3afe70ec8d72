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

    private static readonly LineStyle[] Styles = [LineStyle.Dash, LineStyle.Dot, LineStyle.DashDot, LineStyle.LongDash];

    /// <summary>Builds the plot.</summary>
    public static PlotModel Build(StartStudy study, PlotSize size)
    {
        Machine machine = study.Setup.Machine;
        Supply supply = study.Setup.Supply;
        List<Sample> samples = [.. study.Record.Samples.Where(sample => sample.TimeSeconds >= 0)];
        double driving = supply.OpenCircuitVolts - machine.BrushDropVolts;
        double noLoadRpm = driving / machine.Constant * 30 / Math.PI;
        double right = Math.Max(noLoadRpm, samples.Max(sample => Rpm(sample))) * 1.03;
        double left = Math.Min(0, samples.Min(sample => Rpm(sample)));
        double top = 1.12 * Math.Max(machine.Constant * study.Design.PeakAmps, study.Result.PeakTorqueNewtonMetres);
        double bottom = Math.Min(0, 1.1 * samples.Min(sample => sample.TorqueNewtonMetres));
        PlotModel model = PlotParts.Model(size);
        model.Axes.Add(PlotParts.Bottom("speed, r/min", left, right));
        model.Axes.Add(PlotParts.Left(Key, "torque, N m", (bottom, top)));

        AddCharacteristics(model, study, noLoadRpm, top);
        AddLoad(model, study.Setup.Load, left, right, "load");
        double unitsPerX = size.PlotWidth / (right - left), unitsPerY = size.Height / (top - bottom);
        DataPoint[] path = [.. samples.Select(sample => new DataPoint(Rpm(sample), sample.TorqueNewtonMetres))];
        model.Series.Add(PlotParts.Curve(Key, Curves.Thin(path, unitsPerX, unitsPerY), PlotParts.Ink, thickness: 2.4));
        DataPoint end = path[^1];
        model.Series.Add(PlotParts.Marks(Key, [end], MarkerType.Diamond, PlotParts.Red));
        model.Annotations.Add(PlotParts.Label(Key, "end of run", end, HorizontalAlignment.Right, VerticalAlignment.Top, new ScreenVector(-6, 6)));
        return model;
    }

    private static void AddCharacteristics(PlotModel model, StartStudy study, double noLoadRpm, double top)
    {
        Machine machine = study.Setup.Machine;
        double driving = study.Setup.Supply.OpenCircuitVolts - machine.BrushDropVolts;
        for (int i = 0; i <= study.Design.StageCount; i++)
        {
            double ohms = study.Setup.Supply.SourceOhms + (i < study.Design.StageCount ? study.Design.Stages[i].TotalOhms : study.Design.ArmatureOhms);
            double standstill = machine.Constant * driving / ohms;
            // Where the line enters the picture: on its left edge, or on its top.
            DataPoint enters = standstill <= top ? new DataPoint(0, standstill) : new DataPoint(noLoadRpm * (1 - top / standstill), top);
            model.Series.Add(PlotParts.Curve(Key, [enters, new DataPoint(noLoadRpm, 0)], PlotParts.Blue, Styles[i % Styles.Length], 1.1));
            string name = i < study.Design.StageCount ? $"{i + 1}" : "a";
            DataPoint at = enters.X > 0 ? enters : new DataPoint(noLoadRpm * 0.015, standstill * 0.985);
            model.Annotations.Add(PlotParts.Label(Key, name, at, HorizontalAlignment.Center, enters.X > 0 ? VerticalAlignment.Bottom : VerticalAlignment.Middle, new ScreenVector(enters.X > 0 ? 0 : 4, 0)));
        }
    }

    private static void AddLoad(PlotModel model, Load load, double left, double right, string name)
    {
        DataPoint[] points = new DataPoint[41];
        for (int i = 0; i < points.Length; i++)
        {
            double rpm = left + (right - left) * i / (points.Length - 1);
            points[i] = new DataPoint(rpm, load.TorqueAt(rpm * Math.PI / 30));
        }

        model.Series.Add(PlotParts.Curve(Key, points, PlotParts.Red, LineStyle.LongDash, 1.4));
        DataPoint at = points[points.Length / 4];
        model.Annotations.Add(PlotParts.Label(Key, name, at, HorizontalAlignment.Center, VerticalAlignment.Top, new ScreenVector(0, 3)));
    }

    private static double Rpm(Sample sample) => sample.SpeedRadPerSec * 30 / Math.PI;
}
