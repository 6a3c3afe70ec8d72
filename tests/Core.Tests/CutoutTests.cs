using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The threshold law on the starter of CHK-01: thresholds, what waits at them and what the wait says.</summary>
public sealed class CutoutTests
{
    [Theory]
    [InlineData(250f, 1, 125f)]
    [InlineData(250f, 2, 187.5f)]
    [InlineData(250f, 3, 218.75f)]
    [InlineData(230f, 1, 105f)]
    [InlineData(230f, 2, 167.5f)]
    [InlineData(230f, 3, 198.75f)]
    [InlineData(270f, 1, 145f)]
    [InlineData(270f, 2, 207.5f)]
    [InlineData(270f, 3, 238.75f)]
    public void Cutout_Threshold_FollowsTheSupplyVoltForVolt_Chk01(float supplyVolts, int stage, float thresholdVolts)
    {
        Bench bench = new Bench().InStage(stage).BackEmf(thresholdVolts);
        bench.Readings.SupplyVolts = supplyVolts;
        float thresholdSpeed = bench.Readings.SpeedRadPerSec;

        bench.Readings.SpeedRadPerSec = thresholdSpeed - 0.001f;
        bench.Tick();

        bench.AssertWhy(Reason.BackEmfBelowThreshold, bench.Controller.Estimate.BackEmfVolts, thresholdVolts);
        Assert.InRange(bench.Controller.Estimate.BackEmfVolts, thresholdVolts - 0.01f, MathF.BitDecrement(thresholdVolts));
        bench.AssertCoils(true, ClosedBefore(stage));

        bench.Readings.SpeedRadPerSec = thresholdSpeed;
        bench.Tick();

        bench.AssertWhy(Reason.StageCutOut, bench.Controller.Estimate.BackEmfVolts, thresholdVolts);
        bench.AssertCoils(true, ClosedBefore(stage + 1));
    }

    [Theory]
    [InlineData(1, 50f)]
    [InlineData(2, 75f)]
    [InlineData(3, 87.5f)]
    public void Cutout_LastFloatBelowTheThresholdSpeed_Waits_Chk01(int stage, float thresholdSpeed)
    {
        Bench bench = new Bench().InStage(stage);

        bench.Readings.SpeedRadPerSec = MathF.BitDecrement(thresholdSpeed);
        bench.Tick();
        bench.AssertCoils(true, ClosedBefore(stage));

        bench.Readings.SpeedRadPerSec = thresholdSpeed;
        bench.Tick();
        bench.AssertCoils(true, ClosedBefore(stage + 1));
    }

    [Theory]
    [InlineData(1, 700f)]
    [InlineData(2, 700f)]
    [InlineData(3, 625f)]
    public void Cutout_AtTheThreshold_PeakBehindItIsThePermittedOne_Chk01(int stage, float peakAmps)
    {
        Bench bench = new Bench().InStage(stage);
        bench.BackEmf(SupplyLess(bench.Settings.VoltsLeft[stage - 1])).Tick();

        float amps = (bench.Readings.SupplyVolts - bench.Controller.Why.Limit) / bench.Settings.StageOhms[stage];

        Assert.Equal(Reason.StageCutOut, bench.Controller.Why.Reason);
        Assert.Equal(peakAmps, amps, 0.5f);
    }

    [Fact]
    public void Cutout_BrushDrop_LowersEveryThresholdByIt()
    {
        Bench bench = new Bench(settings => settings.BrushDropVolts = 2f).Started();

        bench.BackEmf(100f).Tick();

        bench.AssertWhy(Reason.BackEmfBelowThreshold, 100f, 123f);
    }

    [Fact]
    public void Cutout_NegativeSpeed_Waits()
    {
        Bench bench = new Bench().Started().BackEmf(-200f).Tick();

        bench.AssertWhy(Reason.BackEmfBelowThreshold, -200f, 125f);
        bench.AssertCoils(true, 0);
    }

    [Fact]
    public void Cutout_CurrentAboveLockout_WaitsWithNumbers()
    {
        Bench bench = new Bench(settings => settings.LockoutAmps = 400f).Started().BackEmf(130f);
        bench.Readings.ArmatureAmps = MathF.BitIncrement(400f);

        bench.Tick();
        bench.AssertWhy(Reason.CurrentAboveLockout, MathF.BitIncrement(400f), 400f);
        bench.AssertCoils(true, 0);

        bench.Readings.ArmatureAmps = 400f;
        bench.Tick();
        bench.AssertCoils(true, 1);
    }

    [Theory]
    [InlineData(-399f, 1)]
    [InlineData(-401f, 0)]
    public void Cutout_GeneratingCurrent_IsLockedOutByItsMagnitude(float armatureAmps, int stages)
    {
        Bench bench = new Bench(settings => settings.LockoutAmps = 400f).Started().BackEmf(240f);
        bench.Readings.ArmatureAmps = armatureAmps;

        bench.Tick();

        bench.AssertCoils(true, stages);
    }

    [Theory]
    [InlineData(1, 375f)]
    [InlineData(2, 312.5f)]
    [InlineData(3, 281.25f)]
    public void Cutout_ShaftSoFastThatTheCurrentBackWouldPassThePeak_Waits(int stage, float ceilingVolts)
    {
        // Driven above its no-load speed the machine feeds back: (E - V) / R_next may not pass 700 A either.
        Bench bench = new Bench().InStage(stage).BackEmf(ceilingVolts + 0.1f);
        int commanded = bench.Outputs.CloseStages;

        bench.Ticks(10).AssertWhy(Reason.BackEmfAboveSupply, bench.Controller.Estimate.BackEmfVolts, ceilingVolts);
        bench.AssertCoils(true, commanded);

        bench.BackEmf(ceilingVolts - 0.1f).Tick().AssertWhy(Reason.StageCutOut, bench.Controller.Estimate.BackEmfVolts, 250f - bench.Settings.VoltsLeft[stage - 1]);
    }

    [Fact]
    public void Cutout_LockoutLeftAtItsDefault_NeverWaits()
    {
        Bench bench = new Bench(settings => settings.InstantTripAmps = Settings.Largest).Started().BackEmf(130f);
        bench.Readings.ArmatureAmps = Settings.Largest;

        bench.Tick();

        bench.AssertCoils(true, 1);
    }

    [Fact]
    public void Cutout_FullSpeedFromTheStart_CutsOneStagePerDecisionEachProvenClosed()
    {
        Bench bench = new Bench(contactTicks: 3).Tick().BackEmf(240f);
        int stages = 0;
        bench.Ticked = _ =>
        {
            int closed = bench.Outputs.CloseStages;
            if (closed == stages) return;
            Assert.Equal((stages << 1) | 1, closed);
            Assert.Equal(stages, bench.Readings.StagesClosed);
            stages = closed;
        };

        bench.PressStart().TickUntil(() => bench.Controller.Phase == Phase.Running);

        Assert.Equal(Bench.AllStages, stages);
        Assert.Equal(4, bench.Controller.Stage);
        bench.AssertWhy(Reason.AllStagesCutOut, 240f, 250f);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(16)]
    public void Cutout_AnyStageCount_EndsInRunningWithEveryStageClosed(int stageCount)
    {
        Bench bench = new(settings =>
        {
            settings.StageCount = stageCount;
            for (int i = 0; i < stageCount; i++) settings.VoltsLeft[i] = 200f - 10f * i;
            for (int i = 0; i <= stageCount; i++) settings.StageOhms[i] = 2f - 0.1f * i;
        });

        bench.Run();

        bench.AssertCoils(true, (1 << stageCount) - 1);
        Assert.Equal(stageCount + 1, bench.Controller.Stage);
        Assert.True(bench.Outputs.RunningLamp);
    }

    [Fact]
    public void Estimate_WholeStart_UsesTheResistanceOfTheStageInEffect()
    {
        Bench bench = new Bench(settings => settings.BrushDropVolts = 2f).InStage(2);
        bench.Readings.ArmatureAmps = 350f;
        bench.Tick();

        Assert.Equal(250f - 2f - 350f * (125f / 700f), bench.Controller.Estimate.ResistiveBackEmfVolts, 1e-3f);

        bench.Readings.ArmatureAmps = -350f;
        bench.Tick();

        Assert.Equal(250f + 2f + 350f * (125f / 700f), bench.Controller.Estimate.ResistiveBackEmfVolts, 1e-3f);
    }

    [Fact]
    public void Estimate_ResistiveOne_IsValidOnlyWithTheLineClosedAndTheCurrentSteady()
    {
        Bench bench = new(settings => settings.SteadyAmpsPerSec = 10_000f);
        Assert.False(bench.Tick().Controller.Estimate.ResistiveValid);
        bench.Started();
        Assert.True(bench.Controller.Estimate.ResistiveValid);

        bench.Readings.ArmatureAmps = 9.5f;
        Assert.True(bench.Tick().Controller.Estimate.ResistiveValid);
        bench.Readings.ArmatureAmps = -1f;
        Assert.False(bench.Tick().Controller.Estimate.ResistiveValid);
    }

    [Theory]
    [InlineData(0f)]
    [InlineData(-10f)]
    [InlineData(60f)]
    [InlineData(125f)]
    public void Cutout_SupplySoLowThatTheThresholdIsNotAboveZero_NeverCutsOut(float supplyVolts)
    {
        // A dead voltage sensor must not look like a machine that is up to speed.
        Bench bench = new Bench().Started();

        bench.Readings.SupplyVolts = supplyVolts;
        bench.Ticks(100);

        bench.AssertWhy(Reason.BackEmfBelowThreshold, 0f, supplyVolts - 125f);
        bench.AssertCoils(true, 0);
    }

    private static int ClosedBefore(int stage) => (1 << (stage - 1)) - 1;

    private static float SupplyLess(float volts) => Bench.SupplyVolts - volts;
}
