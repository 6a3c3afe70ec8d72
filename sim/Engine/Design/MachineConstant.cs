using System;

namespace StarterCtl.Engine.Design;

/// <summary>Ways to the machine constant k, V s/rad = N m/A.</summary>
public static class MachineConstant
{
    /// <summary>From construction: k = P Z phi / (2 pi A).</summary>
    /// <param name="poles">Number of poles, P.</param>
    /// <param name="conductors">Armature conductors, Z.</param>
    /// <param name="parallelPaths">Parallel paths through the armature, A: 2 for a wave, P for a simplex lap winding.</param>
    /// <param name="fluxPerPoleWebers">Flux of one pole, Wb.</param>
    /// <remarks>Any machines text; from E = P phi Z N / (60 A) with w = 2 pi N / 60.</remarks>
    public static double FromConstruction(int poles, int conductors, int parallelPaths, double fluxPerPoleWebers) =>
        poles * (double)conductors * fluxPerPoleWebers / (2 * Math.PI * parallelPaths);

    /// <summary>From the plate: k = (V - Vb - Ia Ra) / w at the rated point.</summary>
    /// <param name="ratedVolts">Rated voltage, V.</param>
    /// <param name="ratedAmps">Rated armature current, A.</param>
    /// <param name="ratedRadPerSec">Rated speed, rad/s.</param>
    /// <param name="armatureOhms">Armature-circuit resistance at working temperature, ohm.</param>
    /// <param name="brushDropVolts">Drop of both brushes, V.</param>
    public static double FromPlate(double ratedVolts, double ratedAmps, double ratedRadPerSec, double armatureOhms, double brushDropVolts) =>
        (ratedVolts - brushDropVolts - ratedAmps * armatureOhms) / ratedRadPerSec;

    /// <summary>Rated current from the plate's power and efficiency: Ia = P / (V eta).</summary>
    /// <param name="ratedWatts">Shaft power, W.</param>
    /// <param name="ratedVolts">Rated voltage, V.</param>
    /// <param name="efficiencyRatio">Shaft power over armature input, above 0, at most 1.</param>
    public static double RatedAmps(double ratedWatts, double ratedVolts, double efficiencyRatio) =>
        ratedWatts / (ratedVolts * efficiencyRatio);
}
