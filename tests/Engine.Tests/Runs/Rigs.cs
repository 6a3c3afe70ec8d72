using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Machines of our own invention, fixed and random.</summary>
internal static class Rigs
{
    /// <summary>A 220 V line shaft; every test that needs no special machine takes it.</summary>
    public static Rig LineShaft { get; } = new()
    {
        Machine = new Machine(1.69, 0.18, 0.003, 2, 2.5),
        Supply = new Supply(220, 0),
        Load = new Load(70, 0, 0),
        PeakAmps = 156,
        StageCount = 3,
        DurationSeconds = 4,
    };

    /// <summary>A control loop as a panel would have it.</summary>
    public static ControlSetup Panel { get; } = new()
    {
        PeriodMicroseconds = 1000,
        ConfirmMicroseconds = 2000,
        MinimumDwellMicroseconds = 50_000,
        InstantTripAmps = 1e6,
    };

    /// <summary>Any machine that its load lets start: 12 to 600 V, 2 to 500 A, 1 to 6 stages.</summary>
    public static Gen<Rig> Any { get; } = Gen.Double[0, 1].Array[13].Select(Build);

    /// <summary>Any machine without a fan on its shaft: linear throughout.</summary>
    public static Gen<Rig> AnyLinear { get; } = Any.Select(rig => rig with { Load = rig.Load with { FanNewtonMetreSecondsSquared = 0 } });

    private static Rig Build(double[] u)
    {
        double volts = Log(12, 600, u[0]);
        double peakAmps = Log(2, 500, u[1]);
        double brushVolts = u[2] < 0.3 ? 0 : 0.02 * u[2] * volts;
        double firstOhms = (volts - brushVolts) / peakAmps;
        double armatureOhms = firstOhms / Log(2.5, 20, u[3]);
        int stages = 1 + (int)(5.999 * u[4]);
        double switchingAmps = peakAmps * Math.Pow(armatureOhms / firstOhms, 1.0 / stages);
        double topSpeed = Log(50, 400, u[5]);
        double k = volts / topSpeed;
        double inertia = Log(0.05, 0.5, u[6]) * k * k / firstOhms;
        double henries = u[7] < 0.25 ? 0 : Log(1e-5, 0.05, u[7]) * armatureOhms;
        // All parts together stay below nine tenths of the torque at the switching current.
        double torque = k * switchingAmps;
        Load load = new(
            u[8] < 0.3 ? 0 : 0.35 * u[8] * torque,
            u[9] < 0.3 ? 0 : 0.25 * u[9] * torque / topSpeed,
            u[10] < 0.3 ? 0 : 0.25 * u[10] * torque / (topSpeed * topSpeed));
        return new Rig
        {
            Machine = new Machine(k, armatureOhms, henries, brushVolts, inertia),
            Supply = new Supply(volts, u[11] < 0.5 ? 0 : 0.2 * u[11] * armatureOhms),
            Load = load,
            PeakAmps = peakAmps,
            StageCount = stages,
            DurationSeconds = 1 + u[12],
        };
    }

    private static double Log(double low, double high, double u) => low * Math.Pow(high / low, u);
}
