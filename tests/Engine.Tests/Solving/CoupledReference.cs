using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>
/// Armature, shaft and separately excited field together by the classical fourth-order method in small equal steps:
/// <c>La dIa/dt = V - Vb - R Ia - k(If) w</c>, <c>J dw/dt = k(If) Ia - Tc - c w^2</c>, <c>Lf dIf/dt = Vf - Rf If</c>. Nothing of
/// it comes from the solver under test. Motoring forwards only.
/// </summary>
internal sealed class CoupledReference(Machine machine, Load load, double volts, double ohms, Func<double, double> constant)
{
    public required double FieldFinalAmps { get; set; }

    public required double FieldSeconds { get; set; }

    public double Amps { get; set; }

    public double Speed { get; set; }

    public double FieldAmps { get; set; }

    public void Advance(double seconds, int steps)
    {
        double h = seconds / steps;
        for (int i = 0; i < steps; i++) Step(h);
    }

    private void Step(double h)
    {
        (double a1, double b1, double c1) = Slopes(Amps, Speed, FieldAmps);
        (double a2, double b2, double c2) = Slopes(Amps + h / 2 * a1, Speed + h / 2 * b1, FieldAmps + h / 2 * c1);
        (double a3, double b3, double c3) = Slopes(Amps + h / 2 * a2, Speed + h / 2 * b2, FieldAmps + h / 2 * c2);
        (double a4, double b4, double c4) = Slopes(Amps + h * a3, Speed + h * b3, FieldAmps + h * c3);
        Amps += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
        Speed += h / 6 * (b1 + 2 * b2 + 2 * b3 + b4);
        FieldAmps += h / 6 * (c1 + 2 * c2 + 2 * c3 + c4);
        if (machine.ArmatureHenries == 0) Amps = AmpsAtOnce(Speed, FieldAmps);
    }

    private (double Amps, double Speed, double Field) Slopes(double amps, double speed, double fieldAmps)
    {
        double k = constant(fieldAmps), henries = machine.ArmatureHenries;
        if (henries == 0) amps = AmpsAtOnce(speed, fieldAmps);
        double torque = k * amps - load.ConstantNewtonMetres - load.FanNewtonMetreSecondsSquared * speed * speed;
        return (
            henries == 0 ? 0 : (volts - machine.BrushDropVolts - ohms * amps - k * speed) / henries,
            torque / machine.InertiaKgM2,
            (FieldFinalAmps - fieldAmps) / FieldSeconds);
    }

    private double AmpsAtOnce(double speed, double fieldAmps) => (volts - machine.BrushDropVolts - constant(fieldAmps) * speed) / ohms;
}
