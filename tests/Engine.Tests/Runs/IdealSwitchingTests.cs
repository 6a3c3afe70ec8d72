using System;
using System.Collections.Generic;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class IdealSwitchingTests
{
    private const double PeakTolerance = 2e-4;
    private const double CutoutTolerance = 50e-6;
    private const double SpeedTolerance = 1e-6;
    private const double ReferenceStep = 4e-6;

    public static TheoryData<string, double, double, double> Starts { get; } = AllStarts();

    // Source: none needed; the reference is an integration in small steps written for this test alone.
    [Theory]
    [MemberData(nameof(Starts))]
    public void Run_IdealSwitching_FollowsTheReference(string load, double henries, double brushVolts, double sourceOhms)
    {
        Rig rig = Rigs.LineShaft with
        {
            Machine = Rigs.LineShaft.Machine with { ArmatureHenries = henries, BrushDropVolts = brushVolts },
            Supply = new Supply(220, sourceOhms),
            Load = Loads[load],
            DurationSeconds = 4,
        };

        RunResult run = rig.Run();
        ReferenceStart reference = ReferenceStart.Run(rig, ReferenceStep);

        Assert.Equal(3, reference.CutoutSeconds.Count);
        Assert.Equal(3, run.Cutouts.Count);
        Assert.Empty(run.Faults);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(reference.CutoutSeconds[i], run.Cutouts[i].Seconds, CutoutTolerance);
            Assert.Equal(1, run.Cutouts[i].PeakAmpsAfter / reference.PeakAmps[i + 1], PeakTolerance);
        }

        double highest = Math.Max(Math.Max(reference.PeakAmps[0], reference.PeakAmps[1]), Math.Max(reference.PeakAmps[2], reference.PeakAmps[3]));
        Assert.Equal(1, run.PeakAmps / highest, PeakTolerance);
        Assert.Equal(1, run.FinalRpm * Math.PI / 30 / reference.FinalRadPerSec, SpeedTolerance);
    }

    private static Dictionary<string, Load> Loads { get; } = new()
    {
        ["constant"] = new Load(70, 0, 0),
        ["viscous"] = new Load(0, 0.6, 0),
        ["fan"] = new Load(0, 0, 0.005),
        ["all three"] = new Load(30, 0.2, 0.002),
    };

    private static TheoryData<string, double, double, double> AllStarts()
    {
        TheoryData<string, double, double, double> starts = [];
        foreach (string load in new[] { "constant", "viscous", "fan", "all three" })
        {
            starts.Add(load, 0, 0, 0);
            starts.Add(load, 0.003, 0, 0);
            starts.Add(load, 0, 2, 0.01);
            starts.Add(load, 0.003, 2, 0.01);
            starts.Add(load, 0.0002, 2, 0.05);
        }

        return starts;
    }
}
