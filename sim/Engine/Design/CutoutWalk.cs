using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>Currents and torques along the stages of a starter whose flux changes with the armature current.</summary>
/// <param name="characteristic">Machine and supply, on any resistance.</param>
/// <param name="totals">Stage totals, ohm; the last entry is the armature alone.</param>
/// <param name="load">Load during the start.</param>
internal sealed class CutoutWalk(Characteristic characteristic, double[] totals, Load load)
{
    // Where the current leaps it is far from what was asked for; where it does not, a root's rounding apart.
    private const double LeapTolerance = 1e-6;

    private const int TorqueSteps = 256;

    /// <summary>Armature-circuit total of a stage, ohm.</summary>
    public double TotalOf(int i) => totals[i];

    /// <summary>The cutout at which the current has fallen to I2, or a little before it.</summary>
    /// <param name="i">Index of the stage.</param>
    /// <param name="switchingAmps">I2, A.</param>
    /// <param name="limitAmps">I1, A; null: not known yet.</param>
    /// <remarks>
    /// With a flux that rises with the current, k(I1) w can pass the supply by the time the current has fallen to I2, when little
    /// is left to cut out; but the controller can only wait for a k(I1) w that the supply allows. So it never waits for less
    /// than I2 through the next total: the next current then lies between I2 and I1. At constant flux I2 itself comes first.
    /// </remarks>
    public Cutout AtAmps(int i, double switchingAmps, double? limitAmps)
    {
        double speed = characteristic.On(totals[i]).AtAmps(switchingAmps).SpeedRadPerSec;
        if (limitAmps is not double limit) return new Cutout(speed, switchingAmps);
        double latest = characteristic.On(totals[i + 1]).AtAmps(switchingAmps).BackEmfVolts / characteristic.ConstantAt(limit);
        return speed <= latest ? new Cutout(speed, switchingAmps) : new Cutout(latest, null);
    }

    /// <summary>The cutout at a back-EMF.</summary>
    /// <param name="i">Index of the stage.</param>
    /// <param name="backEmfVolts">Back-EMF just before it, V.</param>
    public Cutout AtVolts(int i, double backEmfVolts)
    {
        double amps = (characteristic.DrivingVolts - backEmfVolts) / totals[i];
        return new Cutout(characteristic.On(totals[i]).AtAmps(amps).SpeedRadPerSec, amps);
    }

    /// <summary>Current just before a cutout, A, followed down from the stage's peak; null when it never is the one asked for.</summary>
    public double? AmpsBefore(int i, Cutout cutout, double peakAmps)
    {
        double amps = characteristic.On(totals[i]).AmpsAt(cutout.RadPerSec, peakAmps);
        if (cutout.Amps is not double asked) return amps;
        return Math.Abs(amps - asked) <= LeapTolerance * asked ? asked : null;
    }

    /// <summary>True when the torque at a speed does not accelerate the load.</summary>
    public bool IsHeldAt(int i, double radPerSec, double peakAmps) =>
        characteristic.AtAmps(characteristic.On(totals[i]).AmpsAt(radPerSec, peakAmps)).TorqueNewtonMetres <= load.TorqueAt(radPerSec);

    /// <summary>The first speed of a stage at which the load is not accelerated, rad/s; null: there is none.</summary>
    public double? FirstHeld(int i, double fromRadPerSec, double toRadPerSec, double peakAmps)
    {
        for (int step = 0; step <= TorqueSteps; step++)
        {
            double speed = fromRadPerSec + (toRadPerSec - fromRadPerSec) * step / TorqueSteps;
            if (IsHeldAt(i, speed, peakAmps)) return speed;
        }

        return null;
    }
}
