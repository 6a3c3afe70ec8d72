using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>The shipped cases of each kind of machine: their figures pinned, and their end held against the two balances by hand.</summary>
public sealed class MachineCaseTests
{
    /// <summary>Name, times of the cutouts' contacts, s, peak current, A, final speed, r/min, and final current, A.</summary>
    public static TheoryData<string, double[], double, double, double> Cases { get; } = new()
    {
        { "crane-travel", [0.862, 1.467, 1.926], 108.3, 723.0, 57.22 },
        { "press-drive", [3.303, 5.119, 6.332, 7.145, 7.694], 114.8, 960.0, 12.77 },
        { "shunt-shaft", [1.770, 2.449, 2.891, 3.179, 3.368], 147.8, 1174, 68.45 },
        { "rig-24v", [0.675, 1.062], 14.68, 3351, 5.015 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Run_ShippedMachine_StartsAsPinned(string name, double[] cutoutSeconds, double peakAmps, double finalRpm, double finalAmps)
    {
        StartStudy study = ShippedCase.Run(name);
        RunResult result = study.Result;

        Assert.Equal("pass", study.Verdict.Word);
        Assert.Equal(cutoutSeconds.Length, result.Cutouts.Count);
        Assert.All(result.Cutouts.Zip(cutoutSeconds), pair => Assert.Equal(pair.Second, pair.First.Seconds, 0.0015));
        Assert.Equal(1, result.PeakAmps / peakAmps, 1e-3);
        Assert.Equal(1, result.FinalRpm / finalRpm, 1e-3);
        Assert.Equal(1, result.FinalAmps / finalAmps, 1e-3);
        Assert.All(result.Cutouts, cutout => Assert.InRange(cutout.PeakAmpsAfter, 0, study.Design.PeakAmps));
    }

    // At the end of the crane's run, between the points 40 A, 340 V and 58 A, 404 V of a curve taken at 720 r/min.
    [Fact]
    public void CraneTravel_End_BalancesVoltsAndTorqueOnItsCurve()
    {
        RunResult result = ShippedCase.Run("crane-travel").Result;
        double speed = result.FinalRpm * Math.PI / 30, amps = result.FinalAmps;

        double backEmf = 440 - 2 - amps * (0.02 + 0.36 + 0.22);
        double torque = backEmf / speed * amps;
        Assert.Equal(260 + 0.6 * speed, torque, 0.5);
        // The curve is smooth and lies a little above the chord between its points.
        double at720 = backEmf * 720 / result.FinalRpm;
        double chord = 340 + (404 - 340) * (amps - 40) / 18;
        Assert.InRange(at720, chord - 0.2, chord + 2);
    }

    // 230 V over 12 mohm, 138 ohm and 0.19 ohm; 0.0008 A of field per ampere; between 1.2 A, 198 V and 1.6 A, 215 V at 1180 r/min.
    [Fact]
    public void ShuntShaft_End_BalancesVoltsAndTorqueOnItsCurve()
    {
        RunResult result = ShippedCase.Run("shunt-shaft").Result;
        double speed = result.FinalRpm * Math.PI / 30, amps = result.FinalAmps;
        double fieldAmps = (230 - 0.012 * amps) / (138 + 0.012);

        double backEmf = 230 - 0.012 * (amps + fieldAmps) - 2 - 0.19 * amps;
        Assert.Equal(95 + 0.0016 * speed * speed, backEmf / speed * amps, 0.5);
        double exciting = fieldAmps - 0.0008 * amps;
        double chord = 198 + (215 - 198) * (exciting - 1.2) / 0.4;
        Assert.InRange(backEmf * 1180 / result.FinalRpm, chord - 0.2, chord + 3);
    }

    [Fact]
    public void ShuntShaft_FieldStillRises_WhileTheLineCloses()
    {
        StartStudy study = ShippedCase.Run("shunt-shaft");
        double line = study.Result.Phases.Single(phase => phase.Phase == Phase.Accelerating).Seconds;

        // (230 / 138) (1 - exp(-t / 0.449 s)) passes 1.2 A at 0.573 s; the field contactor takes 0.04 s before that.
        double expected = 0.04 - 62.0 / 138 * Math.Log(1 - 1.2 * 138.012 / 230);
        Assert.Equal(expected, line, 0.002);
    }

    // k (1 - 0.002 x 50 K) and Ra (235 + 70) / (235 + 20).
    [Fact]
    [Trait("Source", "CHK-24")]
    public void Rig24V_Warm_HasMoreResistanceAndLessFlux()
    {
        StartStudy study = ShippedCase.Run("rig-24v");

        Assert.Equal(0.065 * 0.9, study.Setup.Machine.Constant, 1e-12);
        Assert.Equal(0.42 * 305 / 255, study.Setup.Machine.ArmatureOhms, 1e-12);
        double speed = study.Result.FinalRpm * Math.PI / 30;
        Assert.Equal(0.3 / 0.0585, study.Result.FinalAmps, 0.2);
        Assert.Equal(24 - 0.8 - study.Result.FinalAmps * (0.03 + 0.42 * 305 / 255), 0.0585 * speed, 1e-3 * speed * 0.0585);
    }

    // The flywheel gives what the ram takes: torque of the machine rises by far less than the ram's.
    [Fact]
    public void PressDrive_RamStrikes_FlywheelGivesMostOfIt()
    {
        StartStudy study = ShippedCase.Run("press-drive");
        double ramJoules = 420 * 0.4 * 96;
        var during = study.Trace.Samples.Where(sample => sample.TimeSeconds is > 11 and < 11.4).ToList();

        Assert.True(during.Max(sample => sample.TorqueNewtonMetres) < 0.6 * 420);
        double before = study.Trace.Samples.Last(sample => sample.TimeSeconds <= 11).SpeedRadPerSec, after = during.Last().SpeedRadPerSec;
        double given = 0.5 * 14.55 * (before * before - after * after);
        Assert.InRange(given, 0.6 * ramJoules, ramJoules);
    }

    /// <summary>With its own limit, and without one: twice the 720 r/min of the plate.</summary>
    [Theory]
    [InlineData(true, 1500)]
    [InlineData(false, 1440)]
    public void Series_WithoutLoad_RunsAwayAndEndsAtOverspeed(bool hasLimit, double rpm)
    {
        string text = ShippedCase.Text("crane-travel")
            .Replace("constant-torque = \"150 N m\"", "", StringComparison.Ordinal)
            .Replace("viscous-torque = \"0.6 N m s/rad\"", "", StringComparison.Ordinal)
            .Replace("duration = \"12 s\"", "duration = \"30 s\"", StringComparison.Ordinal);
        text = text[..text.IndexOf("[[event]]", StringComparison.Ordinal)];
        if (!hasLimit) text = text.Replace("overspeed = \"1500 rpm\"", "", StringComparison.Ordinal);

        StartStudy study = CaseRunner.Run(CaseFile.Parse("runaway.toml", text), null, TestContext.Current.CancellationToken);

        FaultEntry fault = Assert.Single(study.Result.Faults);
        Assert.Equal(FaultId.Overspeed, fault.Id);
        Assert.Equal(rpm, fault.Value * 30 / Math.PI, 0.01 * rpm);
        Assert.Equal("fail", study.Verdict.Word);
        Assert.Contains(study.Warnings, warning => warning.StartsWith("Nothing loads this series motor", StringComparison.Ordinal) && warning.Contains($"{rpm} r/min", StringComparison.Ordinal));
    }

    // The load's 40 N m less 12 N m of friction, k = (220 - 2 - 39 x 0.3) V / (1000 r/min): first into the supply, then into 2.7 ohm.
    [Fact]
    public void HoistLowering_Load_IsHeldByTheSupplyAndThenByTheBrake()
    {
        StartStudy study = ShippedCase.Run("hoist-lowering");
        double k = (220 - 2 - 39 * 0.3) / (1000 * Math.PI / 30), amps = (40 - 12) / k;
        Assert.Equal("pass", study.Verdict.Word);

        var driven = study.Trace.Samples.Last(sample => sample.TimeSeconds < 5);
        Assert.Equal(-amps, driven.ArmatureAmps, 0.02);
        Assert.Equal((220 + 2 + amps * 0.32) / k, driven.SpeedRadPerSec, 0.05);

        // It comes down to the crawl with J R / k^2 = 0.93 s, and the mechanical brake takes over a second after 260 r/min.
        var braked = study.Trace.Samples.Last(sample => sample.TimeSeconds < study.Result.Timeline.Last(entry => entry.Event?.ShaftLocked == true).Seconds);
        double crawl = (2 + amps * 3) / k;
        double below = crawl + (260 * Math.PI / 30 - crawl) * Math.Exp(-1 / (1.2 * 3 / (k * k)));
        Assert.Equal(below, braked.SpeedRadPerSec, 0.1);
        Assert.True(study.Result.SupplyJoules < 0 && study.Result.LoadJoules < 0);
    }
}
