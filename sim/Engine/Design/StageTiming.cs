using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Design;

/// <summary>Time and heat of a stage without inductance.</summary>
public static class StageTiming
{
    // A magnetisation curve bends abruptly at its points: 64 panels were once off by 1.4e-5 of the speed reached.
    private const int Panels = 256;

    // Gauss-Legendre, 5 points on (-1, 1); any table of quadrature formulas.
    private static readonly double[] Nodes = [-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640];
    private static readonly double[] Weights = [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

    /// <summary>Time in a stage and the integral of the current squared over it.</summary>
    /// <param name="drivingVolts">Supply less brush drop, V.</param>
    /// <param name="totalOhms">Armature-circuit total of the stage, ohm.</param>
    /// <param name="machineConstant">k, V s/rad.</param>
    /// <param name="inertiaKgM2">Total inertia, kg m2.</param>
    /// <param name="load">Load torque.</param>
    /// <param name="fromRadPerSec">Speed when the stage comes into effect, rad/s.</param>
    /// <param name="toRadPerSec">Speed at its cutout, rad/s.</param>
    /// <returns>Seconds, and A2 s. Infinity when the load holds the machine before the cutout speed.</returns>
    /// <remarks>
    /// Constant load torque: t = (J R / k^2) ln((I1 - IL)/(I2 - IL)), the closed form of any drives text. Otherwise
    /// t = integral of J dw / (k Ia(w) - TL(w)), by quadrature.
    /// </remarks>
    public static (double Seconds, double SquareAmpSeconds) Of(
        double drivingVolts, double totalOhms, double machineConstant, double inertiaKgM2, Load load, double fromRadPerSec, double toRadPerSec)
    {
        double AmpsAt(double speed) => (drivingVolts - machineConstant * speed) / totalOhms;
        double NetTorqueAt(double speed) => machineConstant * AmpsAt(speed) - load.TorqueAt(speed);

        if (NetTorqueAt(toRadPerSec) <= 0) return Never;
        if (load.ViscousNewtonMetreSeconds == 0 && !load.IsBent)
        {
            return ConstantTorque(AmpsAt(fromRadPerSec), AmpsAt(toRadPerSec), load.TorqueAt(0) / machineConstant, inertiaKgM2 * totalOhms / (machineConstant * machineConstant));
        }

        return Quadrature(inertiaKgM2, fromRadPerSec, toRadPerSec, AmpsAt, (speed, _) => NetTorqueAt(speed));
    }

    /// <summary>The same for a flux that changes with the armature current.</summary>
    /// <param name="stage">Machine and supply on the resistance of the stage.</param>
    /// <param name="inertiaKgM2">Total inertia, kg m2.</param>
    /// <param name="load">Load torque.</param>
    /// <param name="fromRadPerSec">Speed when the stage comes into effect, rad/s.</param>
    /// <param name="toRadPerSec">Speed at its cutout, rad/s.</param>
    /// <param name="peakAmps">Current when the stage comes into effect, A: the current falls from there.</param>
    /// <returns>Seconds, and A2 s. Infinity when the load holds the machine before the cutout speed.</returns>
    /// <remarks>t = integral of J dw / (k(Ia) Ia - TL(w)), by quadrature; Ia(w) is the root of V - Vb - Ia R - k(Ia) w.</remarks>
    public static (double Seconds, double SquareAmpSeconds) Of(
        Characteristic stage, double inertiaKgM2, Load load, double fromRadPerSec, double toRadPerSec, double peakAmps)
    {
        double amps = peakAmps;
        // Each current is looked for from the one before: with a falling flux there may be others.
        double AmpsAt(double speed) => amps = stage.AmpsAt(speed, amps);
        double NetTorqueAt(double speed, double atAmps) => stage.AtAmps(atAmps).TorqueNewtonMetres - load.TorqueAt(speed);

        (double Seconds, double SquareAmpSeconds) result = Quadrature(inertiaKgM2, fromRadPerSec, toRadPerSec, AmpsAt, NetTorqueAt);
        return NetTorqueAt(toRadPerSec, AmpsAt(toRadPerSec)) <= 0 ? Never : result;
    }

    private static (double Seconds, double SquareAmpSeconds) Never => (double.PositiveInfinity, double.PositiveInfinity);

    private static (double Seconds, double SquareAmpSeconds) Quadrature(
        double inertiaKgM2, double fromRadPerSec, double toRadPerSec, Func<double, double> ampsAt, Func<double, double, double> netTorqueAt)
    {
        double seconds = 0, squares = 0;
        double half = (toRadPerSec - fromRadPerSec) / Panels / 2;
        for (int panel = 0; panel < Panels; panel++)
        {
            double middle = fromRadPerSec + (2 * panel + 1) * half;
            for (int i = 0; i < Nodes.Length; i++)
            {
                double speed = middle + half * Nodes[i], amps = ampsAt(speed);
                double net = netTorqueAt(speed, amps);
                if (net <= 0) return Never;
                double slice = half * Weights[i] * inertiaKgM2 / net;
                seconds += slice;
                squares += slice * amps * amps;
            }
        }

        return (seconds, squares);
    }

    // Ia = IL + (I1 - IL) exp(-t/tau), integrated by hand.
    private static (double Seconds, double SquareAmpSeconds) ConstantTorque(double peakAmps, double switchingAmps, double loadAmps, double timeConstantSeconds)
    {
        double above = peakAmps - loadAmps;
        double left = (switchingAmps - loadAmps) / above;
        double seconds = -timeConstantSeconds * Math.Log(left);
        double squares = loadAmps * loadAmps * seconds
            + 2 * loadAmps * above * timeConstantSeconds * (1 - left)
            + above * above * timeConstantSeconds / 2 * (1 - left * left);
        return (seconds, squares);
    }
}
