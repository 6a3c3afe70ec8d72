using System;
using System.Collections.Generic;
using System.Linq;
using OxyPlot;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Current, speed, back-EMF and torque above one time axis, and the field current where there is a field winding.</summary>
internal sealed class StartPlot
{
    // Width of a digit and room between two numbers, as parts of the size of the type.
    private const double DigitRatio = 0.62, GapRatio = 0.3;
    private const double Top = 40;
    private const double BackEmfRatio = 1.6;

    private static readonly string[] Keys = ["i", "n", "e", "t"];
    private static readonly string[] KeysWithField = [.. Keys, "f"];

    private readonly string[] _keys;
    private readonly StartStudy _study;
    private readonly PlotDrawing _plot;
    private readonly Sample[] _samples;
    private readonly double _end;

    private StartPlot(StartStudy study, PlotSize size, double endSeconds)
    {
        _study = study;
        _keys = KeysOf(study);
        _end = endSeconds;
        _plot = new PlotDrawing(size, PlotDrawing.RoomFor(size, [.. Currents(study.Design), .. study.Design.Stages.Select(Threshold)]), Top);
        _plot.Bottom("time, s", 0, endSeconds);
        _samples = [.. study.Trace.Samples.Where(sample => sample.TimeSeconds >= 0 && sample.TimeSeconds <= endSeconds)];
    }

    /// <summary>Heights of the wide and the narrow drawing; every threshold has room for its words.</summary>
    public static (double Wide, double Narrow) Heights(StartStudy study) => (Height(new PlotSize(0, 0, false), study), Height(new PlotSize(0, 0, true), study));

    /// <summary>Builds the plot.</summary>
    public static PlotDrawing Build(StartStudy study, PlotSize size, double endSeconds)
    {
        StartPlot plot = new(study, size, endSeconds);
        plot.AddCurrent();
        plot.AddSpeed();
        plot.AddBackEmf();
        plot.AddTorque();
        plot.AddField();
        plot.AddCutouts();
        plot.AddTrips();
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
        SayAtEnd("i", range, [(Currents(design)[0], design.PeakAmps), (Currents(design)[1], design.SwitchingAmps)]);
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
        SayAtEnd("e", range, [("supply", _samples[^1].SupplyVolts), .. design.Stages.Select(stage => (Threshold(stage), stage.CutoutVolts))]);
    }

    private void AddTorque()
    {
        (double lowest, double highest) = Extremes(sample => sample.TorqueNewtonMetres);
        (_, double heaviest) = Extremes(sample => sample.LoadTorqueNewtonMetres);
        (double From, double To) range = AddPanel(3, "torque, N\u00A0m", (lowest, highest > 0 || heaviest > 0 ? Math.Max(highest, heaviest) : StudyMachine.ConstantAt(_study, _study.Design.PeakAmps) * _study.Design.PeakAmps));
        AddCurve("t", range, sample => sample.LoadTorqueNewtonMetres, PlotParts.Blue, LineStyle.Dash);
        AddCurve("t", range, sample => sample.TorqueNewtonMetres, PlotParts.Ink);
        SayAtEnd("t", range, [("motor", _samples[^1].TorqueNewtonMetres), ("load", _samples[^1].LoadTorqueNewtonMetres)]);
    }

    private void AddField()
    {
        if (_keys.Length == Keys.Length) return;
        float least = _study.Settings.MinimumFieldAmps;
        double highest = Math.Max(StudyMachine.StandingFieldAmps(_study), Extremes(sample => sample.FieldAmps).Highest);
        (double From, double To) range = AddPanel(4, "field current, A", (0, Math.Max(highest, least)));
        AddCurve("f", range, sample => sample.FieldAmps, PlotParts.Ink);
        List<(string Text, double At)> words = [("field", _samples[^1].FieldAmps)];
        if (least > 0)
        {
            _plot.Model.Annotations.Add(PlotParts.Level("f", least, PlotParts.Red, LineStyle.Dash));
            words.Add(("least " + Quantity.Amps(least), least));
        }

        SayAtEnd("f", range, words);
    }

    private void AddCutouts()
    {
        List<Cutout> cutouts = [.. _study.Result.Cutouts.Where(cutout => cutout.Seconds <= _end)];
        double secondsPerUnit = _end / _plot.Width, taken = double.NegativeInfinity;
        double top = _plot.Model.GetAxis("i").Maximum;
        foreach (Cutout cutout in cutouts)
        {
            foreach (string key in _keys) _plot.Model.Annotations.Add(PlotParts.Upright(key, cutout.Seconds, PlotParts.Grey, LineStyle.Dot));
            string number = $"{cutout.Stage}";
            double half = (DigitRatio * number.Length + GapRatio) / 2 * _plot.Size.FontSize * secondsPerUnit;
            if (cutout.Seconds - half < taken) continue;
            taken = cutout.Seconds + half;
            _plot.Say("i", number, new DataPoint(cutout.Seconds, top), "middle", 0, -4);
        }

        _plot.Model.Series.Add(PlotParts.Marks("i", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.AmpsBefore)), MarkerType.Circle, PlotParts.Red));
        _plot.Model.Series.Add(PlotParts.Marks("e", cutouts.Select(cutout => new DataPoint(cutout.Seconds, cutout.BackEmfVolts)), MarkerType.Circle, PlotParts.Red));
    }

    private void AddTrips()
    {
        foreach (FaultEntry fault in _study.Result.Faults.Where(fault => fault.Seconds <= _end))
        {
            foreach (string key in _keys) _plot.Model.Annotations.Add(PlotParts.Upright(key, fault.Seconds, PlotParts.Red, LineStyle.Solid));
        }
    }

    private (double From, double To) AddPanel(int fromTop, string title, (double Lowest, double Highest) data)
    {
        (double From, double To) range = PlotParts.Range(Math.Min(0, data.Lowest), data.Highest, 0.06);
        double end = 0;
        for (int i = _keys.Length - 1; i > fromTop; i--) end += PanelHeight(i) + Gap(_plot.Size);
        _plot.Left(_keys[fromTop], title, range, end / _plot.Height, Math.Min(1, (end + PanelHeight(fromTop)) / _plot.Height), fromTop == 0 ? 16 : 4);
        return range;
    }

    private void AddCurve(string key, (double From, double To) range, Func<Sample, double> number, OxyColor color, LineStyle style = LineStyle.Solid)
    {
        DataPoint[] points = [.. _samples.Select(sample => new DataPoint(sample.TimeSeconds, number(sample)))];
        _plot.Model.Series.Add(PlotParts.Curve(key, Curves.Thin(points, _plot.Width / _end, PanelHeight(Array.IndexOf(_keys, key)) / (range.To - range.From)), color, style));
    }

    private void SayAtEnd(string key, (double From, double To) range, IReadOnlyList<(string Text, double At)> words) =>
        _plot.SayAtEnd(key, _end, range, PanelHeight(Array.IndexOf(_keys, key)), words);

    // The back-EMF takes what the others leave.
    private double PanelHeight(int fromTop) =>
        _keys[fromTop] == "e" ? _plot.Height - (_keys.Length - 1) * (Plain(_plot.Size) + Gap(_plot.Size)) : Plain(_plot.Size);

    private static double Height(PlotSize size, StartStudy study)
    {
        double words = (study.Design.StageCount + 2) * size.FontSize * PlotDrawing.LineRatio;
        return Top + size.Bottom + (KeysOf(study).Length - 1) * (Plain(size) + Gap(size)) + Math.Max(words, BackEmfRatio * Plain(size));
    }

    private static string[] KeysOf(StartStudy study) => study.Setup.Field == null ? Keys : KeysWithField;

    private static double Plain(PlotSize size) => size.IsNarrow ? 125 : 100;

    private static double Gap(PlotSize size) => size.IsNarrow ? 32 : 30;

    private (double Lowest, double Highest) Extremes(Func<Sample, double> number) => (_samples.Min(number), _samples.Max(number));

    private static string[] Currents(StarterDesign design) => ["I₁ " + Quantity.Amps(design.PeakAmps), "I₂ " + Quantity.Amps(design.SwitchingAmps)];

    private static string Threshold(DesignedStage stage) => $"{stage.Stage}: {Quantity.Volts(stage.CutoutVolts)}";

    private static double Rpm(Sample sample) => sample.SpeedRadPerSec * 30 / Math.PI;
}
