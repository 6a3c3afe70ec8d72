using System;

namespace StarterCtl.Engine.Solving;

/// <summary>The signs for which a machine's equations hold, and what must stay true for them.</summary>
internal readonly record struct SignRules
{
    /// <summary>Sign that the current must keep: 1, -1, or 0 where its sign changes nothing.</summary>
    public int Current { get; init; }

    /// <summary>Sign that the speed must keep: 1, -1, or 0 where its sign changes nothing.</summary>
    public int Speed { get; init; }

    /// <summary>True while no current flows in a closed circuit: the voltage must stay inside the brushes' dead band.</summary>
    public bool IsCurrentHeld { get; init; }

    /// <summary>True while the load holds the shaft: what the torque leaves of the hoist's, or adds to it, must stay below the constant torque.</summary>
    public bool IsShaftHeld { get; init; }

    /// <summary>Voltage that drives the current, V.</summary>
    public double DrivingVolts { get; init; }

    /// <summary>Volts that an ampere of the field takes from it, ohm.</summary>
    public double CouplingOhms { get; init; }

    /// <summary>Brush drop, V.</summary>
    public double BrushVolts { get; init; }

    /// <summary>Torque that the load holds against, N m.</summary>
    public double HoldingNewtonMetres { get; init; }

    /// <summary>Torque of a hoist, which the motor's is held against, N m.</summary>
    public double HoistNewtonMetres { get; init; }

    /// <summary>True when there is anything beside the two signs.</summary>
    public bool HasMargin => IsCurrentHeld || IsShaftHeld;

    /// <summary>Below 0 where what holds current or shaft does so no more.</summary>
    public double Margin(MachineEquations equations, double amps, double speed, double fieldAmps)
    {
        double k = equations.ConstantAt(amps, fieldAmps), margin = double.PositiveInfinity;
        if (IsCurrentHeld) margin = DeadBandVolts(BrushVolts, DrivingVolts, k * speed) - Math.Abs(DrivingVolts - CouplingOhms * fieldAmps - k * speed);
        if (IsShaftHeld) margin = Math.Min(margin, HoldingNewtonMetres - Math.Abs(k * amps - HoistNewtonMetres));
        return margin;
    }

    /// <summary>The brush drop, and so much more that rounding cannot take up a current again at the very instant it died.</summary>
    public static double DeadBandVolts(double brushVolts, double drivingVolts, double backEmfVolts) =>
        brushVolts == 0 ? 0 : brushVolts + VoltRounding * (drivingVolts + Math.Abs(backEmfVolts));

    private const double VoltRounding = 1e-12;
}
