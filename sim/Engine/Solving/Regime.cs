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
    private readonly double _ampsSlopeFromAmps;
    private readonly double _ampsSlopeFromSpeed;
    private readonly double _ampsSlopeConstant;
    private readonly double _accelerationFromAmps;
    private readonly double _accelerationFromSpeed;
    private readonly double _accelerationConstant;

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
        Rotation = rotation;
        LongestStep = double.PositiveInfinity;
        if (rotation != 0)
        {
            _accelerationFromAmps = constant / machine.InertiaKgM2;
            _accelerationFromSpeed = -load.ViscousNewtonMetreSeconds / machine.InertiaKgM2;
            _accelerationConstant = (-rotation * load.ConstantNewtonMetres - load.HoistNewtonMetres) / machine.InertiaKgM2;
        }

        if (conduction == 0) return;
        if (machine.ArmatureHenries > 0)
        {
            _ampsSlopeFromAmps = -circuitOhms / machine.ArmatureHenries;
            _ampsSlopeFromSpeed = -constant / machine.ArmatureHenries;
            _ampsSlopeConstant = (openCircuitVolts - conduction * machine.BrushDropVolts) / machine.ArmatureHenries;
            LongestStep = QuarterSwing();
        }
        else
        {
            double fromAcceleration = -constant / circuitOhms;
            _ampsSlopeFromAmps = fromAcceleration * _accelerationFromAmps;
            _ampsSlopeFromSpeed = fromAcceleration * _accelerationFromSpeed;
            _ampsSlopeConstant = fromAcceleration * _accelerationConstant;
        }
    }

    /// <summary>Sign of the armature current: -1, 0 or 1.</summary>
    public int Conduction { get; }

    /// <summary>Sign of the speed: -1, 0 or 1.</summary>
    public int Rotation { get; }

    /// <summary>
    /// Longest step in which the current turns at most once, s: a quarter of a swing where the machine swings, else infinite.
    /// </summary>
    public double LongestStep { get; }

    /// <summary>dw/dt, rad/s2.</summary>
    public double Acceleration(double amps, double speed) =>
        _accelerationFromAmps * amps + _accelerationFromSpeed * speed + _accelerationConstant;

    /// <summary>dIa/dt, A/s.</summary>
    public double AmpsSlope(double amps, double speed) =>
        _ampsSlopeFromAmps * amps + _ampsSlopeFromSpeed * speed + _ampsSlopeConstant;

    // The roots of s^2 - (a + d) s + (a d - b c) are complex while (a - d)^2 + 4 b c is negative.
    private double QuarterSwing()
    {
        double difference = _ampsSlopeFromAmps - _accelerationFromSpeed;
        double discriminant = difference * difference + 4 * _ampsSlopeFromSpeed * _accelerationFromAmps;
        return discriminant < 0 ? Math.PI / Math.Sqrt(-discriminant) : double.PositiveInfinity;
    }

    /// <summary>The coefficients, for the closed form.</summary>
    /// <param name="rows">Receives two rows of three: factors of current, speed and one.</param>
    public void LinearRows(Span<double> rows)
    {
        rows[0] = _ampsSlopeFromAmps;
        rows[1] = _ampsSlopeFromSpeed;
        rows[2] = _ampsSlopeConstant;
        rows[3] = _accelerationFromAmps;
        rows[4] = _accelerationFromSpeed;
        rows[5] = _accelerationConstant;
    }
}
