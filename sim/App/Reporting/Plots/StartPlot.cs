using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Current, speed, back-EMF and torque above one time axis.</summary>
internal sealed class StartPlot
{
    private const double PanelGap = 0.055;
    private const int Panels = 4;

    private static readonly string[] Keys = ["i", "n", "e", "t"];

    private readonly StartStudy _study;
    private readonly PlotDrawing _plot;
    private readonly Sample[] _samples;
    private readonly double _end;

    private StartPlot(StartStudy study, PlotSize size, double endSeconds)
    {
        _study = study;
        _end = endSeconds;
        _plot = new PlotDrawing(size, size.IsNarrow ? 68 : 84, 40);
        _plot.Bottom("time, s", 0, endSeconds);
        _samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0 && sample.TimeSeconds <= endSeconds)];
    }

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size, double endSeconds)
    {
        StartPlot plot = new(study, size, endSeconds);
        plot.AddCurrent();
        plot.AddSpeed();
        plot.AddBackEmf();
        plot.AddTorque();
        plot.AddCutouts();
        return plot._plot;
    }

    private void AddCurrent()
    {
        StarterDesign design = _study.Design;
        (double Lowest, double Highest) = Extremes(sample => sample.ArmatureAmps);
        (double From, double To) range = AddPanel(0, "current, A", (Lowest, Math.Max(Highest, design.PeakAmps)));
        _plot.Model.Annotations.Add(PlotParts.Level("i", design.PeakAmps, PlotParts.Red, LineStyle.Dash));
        _plot.Model.Annotations.Add(PlotParts.Level("i", design.SwitchingAmps, PlotParts.Grey, LineStyle.Dash));
        AddCurve("i", range, sample => sample.ArmatureAmps, PlotParts.Ink);
        SayAtEnd("i", range, [("I₁ " + Quantity.Amps(design.PeakAmps), design.PeakAmps), ("I₂ " + Quantity.Amps(design.SwitchingAmps), design.SwitchingAmps)]);
    }

    private void AddSpeed()
    {
        (double Lowest, double Highest) = Extremes(Rpm);
        (double From, double To) range = AddPanel(1, "speed, r/min", (Lowest, Math.Max(1, Highest)));
        AddCurve("n", range, Rpm, PlotParts.Ink);
    }

    private void AddBackEmf()
    {
        StarterDesign design = _study.Design;
        (double Lowest, double Highest) = Extremes(sample => sample.BackEmfVolts);
        double supply = _samples.Max(sample => sample.SupplyVolts);
        (double From, double To) range = AddPanel(2, "back-EMF and supply, V", (Lowest, Math.Max(supply, Math.Max(Highest, design.SupplyVolts))));
        foreach (DesignedStage stage in design.Stages) _plot.Model.Annotations.Add(PlotParts.Level("e", stage.CutoutVolts, PlotParts.Red, LineStyle.Dash));
        AddCurve("e", range, sample => sample.SupplyVolts, PlotParts.Grey, LineStyle.DashDot);
        AddCurve("e", range, sample => sample.BackEmfVolts, PlotParts.Ink);
        SayAtEnd("e", range, [("supply", _samples[^1].SupplyVolts), .. design.Stages.Select(stage => ($"{stage.Stage}: {Quantity.Volts(stage.CutoutVolts)}", stage.CutoutVolts))]);
    }

    private void AddTorque()
    {
        (double lowest, double highest) = Extremes(sample => sample.TorqueNewtonMetres);
        (_, double heaviest) = Extremes(sample => sample.LoadTorqueNewtonMetres);
        (double From, double To) range = AddPanel(3, "torque, N\u00A0m", (lowest, highest > 0 || heaviest > 0 ? Math.Max(highest, heaviest) : _study.Setup.Machine.Constant * _study.Design.PeakAmps));
        AddCurve("t", range, sample => sample.LoadTorqueNewtonMetres, PlotParts.Blue, LineStyle.Dash);
        AddCurve("t", range, sample => sample.TorqueNewtonMetres, PlotParts.Ink);
        SayAtEnd("t", range, [("motor", _samples[^1].TorqueNewtonMetres), ("load", _samples[^1].LoadTorqueNewtonMetres)]);
    }

    private void AddCutouts()
    {
        List<Cutout> cutouts = [.. _study.Result.Cutouts.Where(cutout => cutout.Seconds <= _end)];
        double last = double.NegativeInfinity, room = _plot.Size.FontSize * 0.9 * _end / _plot.Width;
        double top = _plot.Model.GetAxis("i").Maximum;
        foreach (Cutout cutout in cutouts)
        {
            foreach (string key in Keys) _plot.Model.Annotations.Add(PlotParts.Upright(key, cutout.Seconds, PlotParts.Grey, LineStyle.Dot));
            if (cutout.Seconds - last < room) continue;
            last = cutout.Seconds;
            _plot.Say("i", $"{cutout.Stage}", new DataPoint(cutout.Seconds, top), "middle", 0, -4);
        }

        _plot.Model.Series.Add(PlotParts.Marks("i", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.AmpsBefore)), MarkerType.Circle, PlotParts.Red));
        _plot.Model.Series.Add(PlotParts.Marks("e", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.BackEmfVolts)), MarkerType.Circle, PlotParts.Red));
    }

    private (double From, double To) AddPanel(int fromTop, string title, (double Lowest, double Highest) data)
    {
        (double From, double To) range = PlotParts.Range(Math.Min(0, data.Lowest), data.Highest, 0.06);
        double height = 1.0 / Panels, end = 1 - fromTop * height;
        _plot.Left(Keys[fromTop], title, range, end - height, fromTop == 0 ? 1 : end - PanelGap, fromTop == 0 ? 16 : 0);
        return range;
    }

    private void AddCurve(string key, (double From, double To) range, Func<Sample, double> number, OxyColor color, LineStyle style = LineStyle.Solid)
    {
        DataPoint[] points = [.. _samples.Select(sample => new DataPoint(sample.TimeSeconds, number(sample)))];
        _plot.Model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, _plot.Width / _end, UnitsPer(range)), color, style));
    }

    private void SayAtEnd(string key, (double From, double To) range, IReadOnlyList<(string Text, double At)> words)
    {
        double[] places = LabelSpread.Apart([.. words.Select(word => word.At)], _plot.Size.FontSize * 1.1 / UnitsPer(range), range.From + _plot.Size.FontSize * 0.6 / UnitsPer(range));
        for (int i = 0; i < places.Length; i++) _plot.Say(key, words[i].Text, new DataPoint(_end, places[i]), "start", 5, _plot.Size.FontSize * 0.35);
    }

    private (double Lowest, double Highest) Extremes(Func<Sample, double> number) => (_samples.Min(number), _samples.Max(number));

    private double UnitsPer((double From, double To) range) => _plot.Height * (1.0 / Panels - PanelGap) / (range.To - range.From);

    private static double Rpm(Sample sample) => sample.SpeedRadPerSec * 30 / Math.PI;
}
