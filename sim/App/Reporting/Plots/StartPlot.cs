using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using OxyPlot.Axes;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Current, speed, back-EMF and torque above one time axis.</summary>
internal sealed class StartPlot
{
    private const double PanelGap = 0.035;
    private const int Panels = 4;

    private readonly StartStudy _study;
    private readonly PlotSize _size;
    private readonly PlotModel _model;
    private readonly Sample[] _samples;
    private readonly double _end;

    private StartPlot(StartStudy study, PlotSize size, double endSeconds)
    {
        _study = study;
        _size = size;
        _end = endSeconds;
        _model = PlotParts.Model(size);
        _samples = [.. study.Record.Samples.Where(sample => sample.TimeSeconds >= 0 && sample.TimeSeconds <= endSeconds)];
        LinearAxis bottom = PlotParts.Bottom("time, s", 0, endSeconds);
        if (size.IsNarrow) bottom.IntervalLength = 50;
        _model.Axes.Add(bottom);
    }

    /// <summary>Builds the plot.</summary>
    public static PlotModel Build(StartStudy study, PlotSize size, double endSeconds)
    {
        StartPlot plot = new(study, size, endSeconds);
        plot.AddCurrent();
        plot.AddSpeed();
        plot.AddBackEmf();
        plot.AddTorque();
        plot.AddCutouts();
        return plot._model;
    }

    private void AddCurrent()
    {
        StarterDesign design = _study.Design;
        double peak = Math.Max(design.PeakAmps, _samples.Max(sample => (double)sample.ArmatureAmps));
        double least = Math.Min(0, _samples.Min(sample => (double)sample.ArmatureAmps));
        (double From, double To) range = AddPanel(0, "i", "current, A", (least, peak));
        _model.Annotations.Add(PlotParts.Level("i", design.PeakAmps, PlotParts.Red, LineStyle.Dash));
        _model.Annotations.Add(PlotParts.Level("i", design.SwitchingAmps, PlotParts.Grey, LineStyle.Dot));
        AddCurve("i", range, sample => sample.ArmatureAmps, PlotParts.Ink);
        RightLabel("i", $"I1 = {Quantity.Amps(design.PeakAmps)}", design.PeakAmps);
        RightLabel("i", $"I2 = {Quantity.Amps(design.SwitchingAmps)}", design.SwitchingAmps);
    }

    private void AddSpeed()
    {
        double top = Math.Max(1, _samples.Max(sample => sample.SpeedRadPerSec * 30 / Math.PI));
        double least = Math.Min(0, _samples.Min(sample => sample.SpeedRadPerSec * 30 / Math.PI));
        (double From, double To) range = AddPanel(1, "n", "speed, r/min", (least, top));
        AddCurve("n", range, sample => sample.SpeedRadPerSec * 30 / Math.PI, PlotParts.Ink);
    }

    private void AddBackEmf()
    {
        StarterDesign design = _study.Design;
        double top = Math.Max(design.SupplyVolts, _samples.Max(sample => Math.Max(sample.SupplyVolts, sample.BackEmfVolts)));
        double least = Math.Min(0, _samples.Min(sample => (double)sample.BackEmfVolts));
        (double From, double To) range = AddPanel(2, "e", "back-EMF, V", (least, top));
        double gap = _size.FontSize * 1.15 / UnitsPer(range);
        double[] places = LabelSpread.Apart([.. design.Stages.Select(stage => stage.CutoutVolts)], gap);
        for (int i = 0; i < places.Length; i++)
        {
            _model.Annotations.Add(PlotParts.Level("e", design.Stages[i].CutoutVolts, PlotParts.Red, LineStyle.Dash));
            _model.Annotations.Add(PlotParts.Label(
                "e", $"stage {i + 1}: {Quantity.Volts(design.Stages[i].CutoutVolts)}", new DataPoint(_end, places[i]), HorizontalAlignment.Right, VerticalAlignment.Middle));
        }

        AddCurve("e", range, sample => sample.SupplyVolts, PlotParts.Grey, LineStyle.DashDot);
        AddCurve("e", range, sample => sample.BackEmfVolts, PlotParts.Ink);
        _model.Annotations.Add(PlotParts.Label("e", "supply", new DataPoint(0.02 * _end, _samples[0].SupplyVolts), HorizontalAlignment.Left, VerticalAlignment.Bottom));
    }

    private void AddTorque()
    {
        double top = Math.Max(1e-6, _samples.Max(sample => Math.Max(sample.TorqueNewtonMetres, sample.LoadTorqueNewtonMetres)));
        double least = Math.Min(0, _samples.Min(sample => sample.TorqueNewtonMetres));
        (double From, double To) range = AddPanel(3, "t", "torque, N m", (least, top));
        AddCurve("t", range, sample => sample.LoadTorqueNewtonMetres, PlotParts.Blue, LineStyle.Dash);
        AddCurve("t", range, sample => sample.TorqueNewtonMetres, PlotParts.Ink);
        Sample middle = _samples[_samples.Length / 5];
        _model.Annotations.Add(PlotParts.Label("t", "load", new DataPoint(middle.TimeSeconds, middle.LoadTorqueNewtonMetres), HorizontalAlignment.Left, VerticalAlignment.Top, new ScreenVector(0, 3)));
        _model.Annotations.Add(PlotParts.Label("t", "motor", new DataPoint(middle.TimeSeconds, middle.TorqueNewtonMetres), HorizontalAlignment.Left, VerticalAlignment.Bottom, new ScreenVector(0, -3)));
    }

    private void AddCutouts()
    {
        List<Cutout> cutouts = [.. _study.Result.Cutouts.Where(cutout => cutout.Seconds <= _end)];
        double last = double.NegativeInfinity, room = _size.FontSize * 0.8 * _end / _size.PlotWidth;
        foreach (Cutout cutout in cutouts)
        {
            foreach (string key in new[] { "i", "n", "e", "t" }) _model.Annotations.Add(PlotParts.Upright(key, cutout.Seconds, PlotParts.Grey, LineStyle.Dot));
            if (cutout.Seconds - last < room) continue;
            last = cutout.Seconds;
            double top = _model.GetAxis("i").Maximum;
            _model.Annotations.Add(PlotParts.Label("i", $"{cutout.Stage}", new DataPoint(cutout.Seconds, top), HorizontalAlignment.Center, VerticalAlignment.Bottom));
        }

        _model.Series.Add(PlotParts.Marks("i", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.AmpsBefore)), MarkerType.Circle, PlotParts.Red));
        _model.Series.Add(PlotParts.Marks("e", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.BackEmfVolts)), MarkerType.Circle, PlotParts.Red));
    }

    private (double From, double To) AddPanel(int fromTop, string key, string title, (double Lowest, double Highest) data)
    {
        (double From, double To) range = PlotParts.Range(data.Lowest, data.Highest, 0.08);
        double height = 1.0 / Panels, end = 1 - fromTop * height;
        _model.Axes.Add(PlotParts.Left(key, title, range, end - height + PanelGap, end));
        return range;
    }

    private void AddCurve(string key, (double From, double To) range, Func<Sample, double> number, OxyColor color, LineStyle style = LineStyle.Solid)
    {
        DataPoint[] points = [.. _samples.Select(sample => new DataPoint(sample.TimeSeconds, number(sample)))];
        _model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, _size.PlotWidth / _end, UnitsPer(range)), color, style));
    }

    private double UnitsPer((double From, double To) range) => _size.Height * (1.0 / Panels - PanelGap) / (range.To - range.From);

    private void RightLabel(string key, string text, double at) => _model.Annotations.Add(
        PlotParts.Label(key, text, new DataPoint(_end, at), HorizontalAlignment.Right, VerticalAlignment.Bottom));
}
