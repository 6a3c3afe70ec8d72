using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>What happens without a speed signal: in each of the three modes, for its time, and with no sensor at all.</summary>
public sealed class SpeedLossTests
{
    private const int LossTicks = 30;
    private const int Millisecond = Bench.Millisecond;

    [Theory]
    [InlineData(SpeedLossAction.Trip, 2)]
    [InlineData(SpeedLossAction.Trip, 4)]
    [InlineData(SpeedLossAction.KeepRunning, 2)]
    public void Lost_ModeThatNeedsIt_TripsWhenItsTimeIsOverAndCutsNothingOutMeanwhile(SpeedLossAction action, int stage)
    {
        Bench bench = Fit(action).InStage(stage).Tick();
        int commanded = bench.Outputs.CloseStages;
        bench.Readings.SpeedValid = false;
        bench.BackEmf(240f);

        bench.Ticks(LossTicks).AssertCoils(true, commanded);
        if (stage == 2) bench.AssertWhy(Reason.SpeedUnknown, 0f, 0f, 1 * Millisecond);

        bench.Tick().AssertTripped(FaultId.SpeedSignalLost, 0f, 0f);
    }

    [Theory]
    [InlineData(SpeedLossAction.KeepRunning)]
    [InlineData(SpeedLossAction.FinishStart)]
    public void Lost_WhileRunningInAModeThatKeepsIt_RunsOnForHoursAndSaysSo(SpeedLossAction action)
    {
        Bench bench = Fit(action).Run();
        bench.Readings.SpeedValid = false;
        bench.Readings.ArmatureAmps = 100f;

        bench.Ticks(1000).Tick(int.MaxValue);

        bench.AssertCoils(true, Bench.AllStages);
        bench.AssertWhy(Reason.RunningWithoutSpeed, 245f, 250f);
        Assert.True(bench.Outputs.RunningLamp);
    }

    [Fact]
    public void Lost_ForOneTickLessThanItsTime_ChangesNothingAndCountsAnew()
    {
        Bench bench = Fit(SpeedLossAction.Trip).Run();
        for (int i = 0; i < 10; i++)
        {
            bench.Readings.SpeedValid = false;
            bench.Ticks(LossTicks);
            bench.Readings.SpeedValid = true;
            bench.Tick();
        }

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Lost_DuringAStartThatIsToBeFinished_CutsOutByCurrentAndVoltageWithTheLongerConfirmTime()
    {
        // Stage 2 is 0.1786 ohm: 350 A leave 250 - 62.5 = 187.5 V of back-EMF, exactly its threshold.
        Bench bench = Fit(SpeedLossAction.FinishStart).InStage(2).Tick();
        bench.Readings.SpeedValid = false;
        bench.Readings.SpeedRadPerSec = 0f;
        bench.Readings.ArmatureAmps = 351f;
        bench.Ticks(100);
        Assert.Equal(Reason.BackEmfBelowThreshold, bench.Controller.Why.Reason);

        bench.Readings.ArmatureAmps = 349f;
        bench.Ticks(50);
        Assert.Equal((Reason.Confirming, 1 * Millisecond), (bench.Controller.Why.Reason, bench.Controller.Why.MicrosecondsLeft));
        bench.AssertCoils(true, 1);

        bench.Tick().AssertCoils(true, 3);
    }

    [Fact]
    public void Known_SameSettings_CutsOutWithTheShortConfirmTime()
    {
        Bench bench = Fit(SpeedLossAction.FinishStart).InStage(2).BackEmf(187.5f);

        bench.Ticks(2).AssertCoils(true, 1);

        bench.Tick().AssertCoils(true, 3);
    }

    [Fact]
    public void Resistive_CurrentNotSteady_DoesNotCutOut()
    {
        Bench bench = Fit(SpeedLossAction.FinishStart, settings => settings.SteadyAmpsPerSec = 10_000f).InStage(2).Tick();
        bench.Readings.SpeedValid = false;
        for (int i = 0; i < 200; i++)
        {
            // 11 A each ms are 11 000 A/s.
            bench.Readings.ArmatureAmps = i % 2 == 0 ? 300f : 311f;
            bench.Tick();
        }

        bench.AssertCoils(true, 1);
        Assert.Equal(Reason.SpeedUnknown, bench.Controller.Why.Reason);
    }

    [Fact]
    public void Dip_WhileRunningWithoutSpeed_PutsAllResistanceBackAndTripsWhereAStartNeedsTheSpeed()
    {
        Bench bench = Fit(SpeedLossAction.KeepRunning, Dips).Run();
        bench.Readings.SpeedValid = false;
        bench.Ticks(100);

        bench.Readings.SupplyVolts = 199f;
        bench.Tick().AssertCoils(true, 0);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.SpeedSignalLost, 0f, 0f);
    }

    [Fact]
    public void Stop_WhileRunningWithoutSpeed_IsAStop()
    {
        Bench bench = Fit(SpeedLossAction.KeepRunning).Run();
        bench.Readings.SpeedValid = false;
        bench.Ticks(100);

        bench.PressStop().Ticks(5);

        Assert.Equal((Phase.Ready, FaultId.None), (bench.Controller.Phase, bench.Controller.Fault.Id));
    }

    [Fact]
    public void Ready_PickUpGivesNoPulseFromAStandingShaft_IsNoLostSignalAndTheStartIsPermitted()
    {
        Bench bench = Fit(SpeedLossAction.Trip);
        bench.Readings.SpeedValid = false;

        bench.Ticks(1000);
        Assert.Equal((Phase.Ready, Refusal.None), (bench.Controller.Phase, bench.Controller.Refusals));

        // The first pulse comes once the shaft turns; without one the time runs from the start.
        bench.PressStart().Ticks(LossTicks - 1).AssertCoils(true, 0);
        bench.Readings.SpeedValid = true;
        bench.Ticks(100).AssertCoils(true, 0);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Fact]
    public void Tripped_PickUpGivesNoPulseFromAStandingShaft_ResetIsAccepted()
    {
        Bench bench = Fit(SpeedLossAction.Trip).Run().PressEmergencyStop();
        bench.Readings.SpeedValid = false;

        bench.Ticks(1000).PressReset();

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Start_NoPulseEver_TripsWhenTheTimeIsOver()
    {
        Bench bench = Fit(SpeedLossAction.Trip);
        bench.Readings.SpeedValid = false;
        bench.Ticks(100).PressStart();

        bench.Ticks(LossTicks).AssertCoils(true, 0);

        bench.Tick().AssertTripped(FaultId.SpeedSignalLost, 0f, 0f);
    }

    [Fact]
    public void NoSensorFitted_WholeStart_GoesByCurrentAndVoltageAndNeverMissesTheSpeed()
    {
        Bench bench = Fit(SpeedLossAction.FinishStart, WithoutSensor);
        bench.Flows = true;
        bench.Spoil = readings => (readings.SpeedValid, readings.SpeedRadPerSec) = (false, float.NaN);
        bench.PressStart();
        for (int stage = 1; stage <= 3; stage++)
        {
            bench.TickUntil(Reason.BackEmfBelowThreshold).Ticks(100).AssertCoils(true, (1 << (stage - 1)) - 1);
            bench.BackEmf(251f - bench.Settings.VoltsLeft[stage - 1]);
            bench.TickUntil(() => bench.Outputs.CloseStages == (1 << stage) - 1);
        }

        bench.TickUntil(() => bench.Controller.Phase == Phase.Running);
        Assert.Equal(Reason.RunningWithoutSpeed, bench.Controller.Why.Reason);

        bench.Flows = false;
        bench.Readings.ArmatureAmps = 100f;
        bench.Ticks(1000).AssertCoils(true, Bench.AllStages);
        bench.AssertWhy(Reason.RunningWithoutSpeed, 245f, 250f);
    }

    [Fact]
    public void NoSensorFitted_NoCurrentFlows_CutsNothingOutAndSaysThatNoTimeRuns()
    {
        // A dead current sensor leaves 250 V in the voltage equation, and no back-EMF.
        Bench bench = Fit(SpeedLossAction.FinishStart, settings =>
        {
            WithoutSensor(settings);
            settings.SteadyAmpsPerSec = Settings.Largest;
        });
        bench.Flows = true;
        bench.Spoil = readings => (readings.SpeedValid, readings.SpeedRadPerSec) = (false, float.NaN);
        bench.PressStart().TickUntil(Reason.BackEmfBelowThreshold);
        bench.Flows = false;
        bench.Readings.ArmatureAmps = 10f;

        bench.Ticks(1000).AssertCoils(true, 0);
        bench.AssertWhy(Reason.SpeedUnknown, 0f, 0f);
    }

    private static void WithoutSensor(Settings settings)
    {
        settings.SpeedSensorFitted = false;
        settings.StepToleranceRatio = 0.3f;
        settings.StepSettleMicroseconds = 20 * Millisecond;
    }

    private static void Dips(Settings settings)
    {
        settings.SupplyLowVolts = 200f;
        settings.NominalSupplyVolts = 250f;
        settings.DipAction = DipAction.PutResistanceBack;
        settings.DipMicroseconds = 300 * Millisecond;
    }

    private static Bench Fit(SpeedLossAction action, Action<Settings>? change = null) =>
        new Bench(settings =>
        {
            settings.SpeedLoss = action;
            settings.SpeedLossMicroseconds = LossTicks * Millisecond;
            settings.ConfirmMicroseconds = 2 * Millisecond;
            settings.ResistiveConfirmMicroseconds = 50 * Millisecond;
            settings.ZeroAmps = 10f;
            change?.Invoke(settings);
        }).Tick();
}
