using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>
/// A start with ideal switching on the back-EMF, by the classical fourth-order method in small equal steps. Nothing of it
/// comes from the solver under test: own equations, own grading, own switching.
/// </summary>
internal sealed class ReferenceStart
{
    private readonly Machine _machine;
    private readonly Load _load;
    private readonly Supply _supply;
    private double _ohms;
    private double _amps;
    private double _speed;

    private ReferenceStart(Machine machine, Load load, Supply supply)
    {
        _machine = machine;
        _load = load;
        _supply = supply;
    }

    /// <summary>When each stage is cut out, s.</summary>
    public List<double> CutoutSeconds { get; } = [];

    /// <summary>Largest current while each stage is in effect, A; one more than stages.</summary>
    public List<double> PeakAmps { get; } = [];

    /// <summary>Speed at the end, rad/s.</summary>
    public double FinalRadPerSec => _speed;

    /// <summary>Runs a start of equal stages between a peak current and the switching current that the count gives.</summary>
    public static ReferenceStart Run(Rig rig, double stepSeconds)
    {
        ReferenceStart start = new(rig.Machine, rig.Load, rig.Supply);
        int stages = rig.StageCount!.Value;
        double driving = rig.Supply.OpenCircuitVolts - rig.Machine.BrushDropVolts, peak = rig.PeakAmps!.Value;
        double ratio = Math.Pow(driving / peak / rig.Machine.ArmatureOhms, 1.0 / stages);
        double elapsed = 0;
        for (int stage = 0; stage <= stages; stage++)
        {
            double total = driving / peak / Math.Pow(ratio, stage);
            double voltsLeft = stage < stages ? peak / ratio * total : double.NegativeInfinity;
            elapsed = start.RunStage(total, voltsLeft, elapsed, rig.DurationSeconds, stepSeconds);
        }

        return start;
    }

    private double RunStage(double totalOhms, double voltsLeft, double from, double to, double step)
    {
        _ohms = totalOhms + _supply.SourceOhms;
        if (_machine.ArmatureHenries == 0) _amps = AmpsWithoutInductance(_speed);
        double peak = _amps, elapsed = from, margin = Margin(voltsLeft);
        while (elapsed < to)
        {
            double h = Math.Min(step, to - elapsed), ampsBefore = _amps, speedBefore = _speed;
            Step(h);
            double marginAfter = Margin(voltsLeft);
            if (marginAfter >= 0)
            {
                h *= margin >= 0 ? 0 : margin / (margin - marginAfter);
                _amps = ampsBefore;
                _speed = speedBefore;
                Step(h);
                PeakAmps.Add(Math.Max(peak, _amps));
                CutoutSeconds.Add(elapsed + h);
                return elapsed + h;
            }

            elapsed += h;
            margin = marginAfter;
            peak = Math.Max(peak, _amps);
        }

        PeakAmps.Add(peak);
        return elapsed;
    }

    private double Margin(double voltsLeft) =>
        _machine.Constant * _speed - (_supply.OpenCircuitVolts - _supply.SourceOhms * _amps - _machine.BrushDropVolts - voltsLeft);

    private void Step(double h)
    {
        (double a1, double b1) = Slopes(_amps, _speed);
        (double a2, double b2) = Slopes(_amps + h / 2 * a1, _speed + h / 2 * b1);
        (double a3, double b3) = Slopes(_amps + h / 2 * a2, _speed + h / 2 * b2);
        (double a4, double b4) = Slopes(_amps + h * a3, _speed + h * b3);
        _speed += h / 6 * (b1 + 2 * b2 + 2 * b3 + b4);
        _amps = _machine.ArmatureHenries == 0 ? AmpsWithoutInductance(_speed) : _amps + h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
    }

    private (double Amps, double Speed) Slopes(double amps, double speed)
    {
        double henries = _machine.ArmatureHenries;
        if (henries == 0) amps = AmpsWithoutInductance(speed);
        double volts = _supply.OpenCircuitVolts - _machine.BrushDropVolts - _ohms * amps - _machine.Constant * speed;
        double torque = _machine.Constant * amps - _load.ConstantNewtonMetres
            - speed * (_load.ViscousNewtonMetreSeconds + speed * _load.FanNewtonMetreSecondsSquared);
        bool held = speed <= 0 && torque <= 0;
        return (henries == 0 ? 0 : volts / henries, held ? 0 : torque / _machine.InertiaKgM2);
    }

    private double AmpsWithoutInductance(double speed) =>
        (_supply.OpenCircuitVolts - _machine.BrushDropVolts - _machine.Constant * speed) / _ohms;
}
