using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>
/// Armature, shaft and field winding together by the classical fourth-order method in small equal steps, motoring forwards only:
/// <c>La dIa/dt = V - Vb - R Ia - Rx If - k w</c>, <c>J dw/dt = k Ia - Tc - B w - c w^2</c>, <c>Lf dIf/dt = Vf - Rf If - Rx Ia</c>, with
/// k from both currents. Nothing of it comes from the solver under test.
/// </summary>
internal sealed class CoupledReference(Machine machine, Load load, double volts, double ohms)
{
    public double FieldVolts { get; set; }

    public double FieldOhms { get; set; } = 1;

    /// <summary>0: no field winding.</summary>
    public double FieldHenries { get; set; }

    /// <summary>Resistance that both currents share, ohm.</summary>
    public double SharedOhms { get; set; }

    public double Amps { get; set; }

    public double Speed { get; set; }

    public double FieldAmps { get; set; }

    public double PeakAmps { get; private set; }

    public double PeakTorque { get; private set; }

    public void Advance(double seconds, int steps)
    {
        double h = seconds / steps;
        KeepPeaks();
        for (int i = 0; i < steps; i++) Step(h);
    }

    private double Constant(double amps, double fieldAmps) => machine.Flux?.ConstantAt(fieldAmps, amps) ?? machine.Constant;

    private void Step(double h)
    {
        (double a1, double b1, double c1) = Slopes(Amps, Speed, FieldAmps);
        (double a2, double b2, double c2) = Slopes(Amps + h / 2 * a1, Speed + h / 2 * b1, FieldAmps + h / 2 * c1);
        (double a3, double b3, double c3) = Slopes(Amps + h / 2 * a2, Speed + h / 2 * b2, FieldAmps + h / 2 * c2);
        (double a4, double b4, double c4) = Slopes(Amps + h * a3, Speed + h * b3, FieldAmps + h * c3);
        Amps += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
        Speed += h / 6 * (b1 + 2 * b2 + 2 * b3 + b4);
        FieldAmps += h / 6 * (c1 + 2 * c2 + 2 * c3 + c4);
        if (machine.ArmatureHenries == 0) Amps = AmpsAtOnce(Speed, FieldAmps, Amps);
        KeepPeaks();
    }

    private void KeepPeaks()
    {
        PeakAmps = Math.Max(PeakAmps, Amps);
        PeakTorque = Math.Max(PeakTorque, Constant(Amps, FieldAmps) * Amps);
    }

    private (double Amps, double Speed, double Field) Slopes(double amps, double speed, double fieldAmps)
    {
        double henries = machine.ArmatureHenries;
        if (henries == 0) amps = AmpsAtOnce(speed, fieldAmps, amps);
        double k = Constant(amps, fieldAmps);
        double torque = k * amps - load.ConstantNewtonMetres - load.ViscousNewtonMetreSeconds * speed - load.FanNewtonMetreSecondsSquared * speed * speed;
        return (
            henries == 0 ? 0 : (volts - machine.BrushDropVolts - ohms * amps - SharedOhms * fieldAmps - k * speed) / henries,
            torque / machine.InertiaKgM2,
            FieldHenries == 0 ? 0 : (FieldVolts - FieldOhms * fieldAmps - SharedOhms * amps) / FieldHenries);
    }

    // By halving: without inductance the voltages balance at every instant.
    private double AmpsAtOnce(double speed, double fieldAmps, double near)
    {
        double low = 0, high = Math.Max(2 * Math.Abs(near), volts / ohms);
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            double left = volts - machine.BrushDropVolts - ohms * middle - SharedOhms * fieldAmps - Constant(middle, fieldAmps) * speed;
            if (left > 0) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }
}
