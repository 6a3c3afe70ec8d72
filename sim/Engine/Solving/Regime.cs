using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The machine's two linear equations while no contact moves, no sign changes and the flux stands still:
/// <c>La dIa/dt = V - s Vb - R Ia - k w</c> and <c>J dw/dt = k Ia - r Tc - Th - B w</c>, with s and r the signs of conduction and
/// rotation. Without inductance the first becomes the time derivative of its own balance, so that one form serves both.
/// </summary>
public sealed class Regime
{
    // Below it two terms of the series are exact enough.
    private const double SmallAngle = 1e-4;

    // Of the damped swing or decay of current and speed: half the trace of their equations, and its square less their determinant.
    private readonly double _halfTrace;
    private readonly double _discriminant;
    private readonly bool _isBalance;

    /// <summary>Builds the regime's coefficients.</summary>
    /// <param name="machine">Machine and inertia.</param>
    /// <param name="constant">Machine constant times flux, V s/rad.</param>
    /// <param name="load">Load torque, without a part that bends with speed.</param>
    /// <param name="openCircuitVolts">Voltage behind the circuit's resistance, V: the supply's open-circuit voltage, or 0 on a brake resistor.</param>
    /// <param name="circuitOhms">Everything in series: source, starter sections, armature, ohm; or brake resistor and armature.</param>
    /// <param name="conduction">Sign of the armature current; 0 while no current flows or the circuit is open.</param>
    /// <param name="rotation">Sign of the speed; 0 while the load holds the shaft at rest.</param>
    public Regime(Machine machine, double constant, Load load, double openCircuitVolts, double circuitOhms, int conduction, int rotation)
    {
        Conduction = conduction;
        _isBalance = machine.ArmatureHenries == 0;
        Rotation = rotation;
        if (rotation != 0)
        {
            Acceleration = new LinearForm(
                constant / machine.InertiaKgM2,
                -load.ViscousNewtonMetreSeconds / machine.InertiaKgM2,
                (-rotation * load.ConstantNewtonMetres - load.HoistNewtonMetres) / machine.InertiaKgM2);
        }

        if (conduction != 0)
        {
            AmpsSlope = machine.ArmatureHenries > 0
                ? new LinearForm(-circuitOhms, -constant, openCircuitVolts - conduction * machine.BrushDropVolts).Times(1 / machine.ArmatureHenries)
                : Acceleration.Times(-constant / circuitOhms);
        }

        _halfTrace = 0.5 * (AmpsSlope.Amps + Acceleration.Speed);
        double halfDifference = 0.5 * (AmpsSlope.Amps - Acceleration.Speed);
        _discriminant = halfDifference * halfDifference + AmpsSlope.Speed * Acceleration.Amps;
        HalfSwingSeconds = _discriminant < 0 ? Math.PI / Math.Sqrt(-_discriminant) : double.PositiveInfinity;
    }

    /// <summary>Sign of the armature current: -1, 0 or 1.</summary>
    public int Conduction { get; }

    /// <summary>Sign of the speed: -1, 0 or 1.</summary>
    public int Rotation { get; }

    /// <summary>dIa/dt, A/s.</summary>
    public LinearForm AmpsSlope { get; }

    /// <summary>dw/dt, rad/s2.</summary>
    public LinearForm Acceleration { get; }

    /// <summary>Time between two turning points of the current, or of the speed, s; infinite where the machine does not swing.</summary>
    public double HalfSwingSeconds { get; }

    /// <summary>When a current or speed turns that has not turned yet, s from now; infinite when it never does.</summary>
    /// <remarks>
    /// Both slopes follow y" - (a + d) y' + (a d - b c) y = 0, so y = e^(mt) (y0 cosh(rt) + (y0' - m y0) sinh(rt) / r) with m half the
    /// trace and r^2 the discriminant; y is zero where tanh(rt) / r = -y0 / (y0' - m y0), a tangent where r^2 is negative. What is
    /// rounded in the time matters by its square only. Derived here.
    /// </remarks>
    /// <param name="slope">Slope of the current or of the speed now.</param>
    /// <param name="slopeOfSlope">Slope of that slope.</param>
    public double FirstTurnSeconds(double slope, double slopeOfSlope)
    {
        double rate = Math.Sqrt(Math.Abs(_discriminant)), driven = slopeOfSlope - _halfTrace * slope;
        double ratio = -slope / driven;
        if (rate * Math.Abs(ratio) < SmallAngle && ratio > 0) return ratio * (1 + _discriminant * ratio * ratio / 3);
        // In single precision: the last bits of the library's functions are not the same on every machine.
        if (_discriminant < 0)
        {
            double angle = Math.Atan2(-rate * slope, driven);
            return (float)(angle > 0 ? angle : angle + Math.PI) / rate;
        }

        double part = rate * ratio;
        if (!(part > 0)) return double.PositiveInfinity;
        return (float)Math.Log((1 + part) / Math.Max(1 - part, double.Epsilon)) / (2 * rate);
    }

    /// <summary>True where current and speed swing about where they settle, and turn for ever.</summary>
    public bool Swings => _discriminant < 0;

    /// <summary>Whether a current or speed that does not swing turns at any time from now.</summary>
    /// <param name="slope">Its slope now.</param>
    /// <param name="slopeOfSlope">Slope of that slope.</param>
    public bool Turns(double slope, double slopeOfSlope)
    {
        // tanh(rt) of FirstTurnSeconds reaches what lies between 0 and 1, and nothing beyond; where r is zero, t itself is what is asked for.
        double ratio = -slope / (slopeOfSlope - _halfTrace * slope);
        return ratio > 0 && !(Math.Sqrt(_discriminant) * ratio >= 1);
    }

    /// <summary>What a swing never exceeds from now on, to either side of where it settles.</summary>
    /// <param name="off">How far off current or speed is now.</param>
    /// <param name="slope">Its slope now.</param>
    /// <remarks>x = e^(mt) (x0 cos(rt) + (x0' - m x0) sin(rt) / r) with m below 0: any text on oscillations.</remarks>
    public double LargestSwing(double off, double slope)
    {
        double driven = slope - _halfTrace * off;
        return Math.Sqrt(off * off - driven * driven / _discriminant);
    }

    /// <summary>Where current and speed settle.</summary>
    /// <param name="amps">Current now, A.</param>
    /// <param name="speed">Speed now, rad/s.</param>
    /// <param name="finalAmps">Final current, A.</param>
    /// <param name="finalSpeed">Final speed, rad/s.</param>
    /// <returns>False where they do not settle at a point.</returns>
    public bool TrySettle(double amps, double speed, out double finalAmps, out double finalSpeed)
    {
        finalAmps = finalSpeed = 0;
        LinearForm first = AmpsSlope;
        if (_isBalance)
        {
            // Without inductance the balance of voltages, not its slope, says which current belongs to which speed.
            double perSpeed = AmpsSlope.Amps / Acceleration.Amps;
            first = new LinearForm(1, -perSpeed, perSpeed * speed - amps);
        }

        double determinant = first.Amps * Acceleration.Speed - first.Speed * Acceleration.Amps;
        if (determinant == 0) return false;
        finalAmps = (first.Speed * Acceleration.One - first.One * Acceleration.Speed) / determinant;
        finalSpeed = (first.One * Acceleration.Amps - first.Amps * Acceleration.One) / determinant;
        return true;
    }
}
