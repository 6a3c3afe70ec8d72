using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// A start into a turning shaft on CHK-01: the stages that the back-EMF permits (125, 187.5, 218.75 V; at 2.5 V s/rad 50, 75 and
/// 87.5 rad/s) are closed before the line, in order and each proven. Below 1 rad/s the shaft stands.
/// </summary>
public sealed class SpinningStartTests
{
    private const int Millisecond = Bench.Millisecond;

    [Theory]
    [InlineData(0f, 0)]
    [InlineData(1f, 0)]
    [InlineData(49.99f, 0)]
    [InlineData(50f, 1)]
    [InlineData(74.99f, 1)]
    [InlineData(75f, 2)]
    [InlineData(87.49f, 2)]
    [InlineData(87.5f, 3)]
    [InlineData(100f, 3)]
    [InlineData(112.5f, 3)]
    [InlineData(112.6f, 2)]
    [InlineData(125.1f, 1)]
    [InlineData(150.1f, 0)]
    public void Start_TurningShaft_PresetsExactlyTheStagesThatKeepThePeakEitherWay(float speed, int stages)
    {
        // Above 100 rad/s current flows back: (E - 250) over the resistance behind each stage is 700 A at 112.5, 125 and 150 rad/s.
        Bench bench = Fit();
        bench.Readings.SpeedRadPerSec = speed;

        bench.PressStart().TickUntil(() => bench.Outputs.CloseLine);

        bench.AssertCoils(true, (1 << stages) - 1);
        Assert.Equal((1 << stages) - 1, bench.Readings.StagesClosed);
        Assert.Equal(stages + 1, bench.Controller.Stage);
    }

    [Fact]
    public void Preset_ThreeStages_CloseInOrderEachProvenAndTheLineLast()
    {
        Bench bench = Fit(contactTicks: 3).BackEmf(240f).PressStart();
        bench.AssertCoils(false, 1);
        bench.AssertWhy(Reason.PresettingStages, 1f, 3f, 100 * Millisecond);

        bench.Ticks(2).AssertCoils(false, 1);
        bench.AssertWhy(Reason.PresettingStages, 1f, 3f, 98 * Millisecond);
        bench.Tick().AssertCoils(false, 3);
        bench.Ticks(3).AssertCoils(false, 7);
        bench.Ticks(2).AssertCoils(false, 7);
        bench.Tick().AssertCoils(true, 7);
        bench.Ticks(4);

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Preset_ShaftSlowsDownBeforeTheLineIsCommanded_OpensTheStagesThatAreTooMany()
    {
        Bench bench = Fit(contactTicks: 5).BackEmf(190f).PressStart().Ticks(6);
        bench.AssertCoils(false, 3);

        bench.BackEmf(187.4f).Tick().AssertCoils(false, 1);

        bench.TickUntil(() => bench.Outputs.CloseLine).AssertCoils(true, 1);
    }

    [Fact]
    public void Preset_ShaftSlowsDownWhileTheLineCloses_TakesTheLineBackAndPresetsAnew()
    {
        Bench bench = Fit(contactTicks: 20).BackEmf(190f).PressStart().TickUntil(Reason.WaitingForLineContact);
        bench.AssertCoils(true, 3);

        bench.BackEmf(180f).Tick().AssertCoils(false, 0);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
        bench.TickUntil(Reason.WaitingForLineContact).AssertCoils(true, 1);
        bench.TickUntil(Reason.BackEmfBelowThreshold);

        Assert.Equal((Phase.Accelerating, 2), (bench.Controller.Phase, bench.Controller.Stage));
    }

    [Fact]
    public void Preset_StageDoesNotClose_TripsAtTheContactTimeAndTheLineStaysOpen()
    {
        Bench bench = Fit().BackEmf(190f);
        bench.StagesStuck = 2;
        bench.Ticked = _ => Assert.False(bench.Outputs.CloseLine);

        bench.PressStart().Tick().AssertCoils(false, 3);
        bench.Ticks(99);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, 2f, 0f);
    }

    [Fact]
    public void Shaft_TooFastForTheWholeResistance_IsWaitedForWithTheLineOpen()
    {
        // 250 V and 700 A times 0.357 ohm are 500 V.
        Bench bench = Fit(settings => settings.HighestSpeedRadPerSec = 300f).BackEmf(500.1f).PressStart().Ticks(100);
        bench.AssertCoils(false, 0);
        bench.AssertWhy(Reason.WaitingForShaft, bench.Controller.Estimate.BackEmfVolts, 500f);

        bench.BackEmf(499.9f).Tick().AssertCoils(true, 0);
    }

    [Fact]
    public void Shaft_TurnsBackwards_IsRefused()
    {
        Bench bench = Fit();
        bench.Readings.SpeedRadPerSec = -1f;
        Assert.Equal(Refusal.None, bench.Tick().Controller.Refusals);

        bench.Readings.SpeedRadPerSec = -1.01f;
        bench.Tick().PressStart();

        bench.AssertWhy(Reason.StartRefused, (int)Refusal.ShaftTurnsBackwards, 0f);
    }

    [Fact]
    public void Shaft_TurnsBackwardsBehindThePress_IsWaitedFor()
    {
        Bench bench = Fit(contactTicks: 5).BackEmf(130f).PressStart();
        bench.AssertCoils(false, 1);

        bench.BackEmf(-5f).Ticks(100).AssertCoils(false, 0);
        bench.AssertWhy(Reason.WaitingForShaft, -5f, 0f);

        bench.BackEmf(0f).Tick().AssertCoils(true, 0);
    }

    [Theory]
    [InlineData(1f, Refusal.None)]
    [InlineData(1.01f, Refusal.ShaftTurns)]
    [InlineData(-1.01f, Refusal.ShaftTurnsBackwards)]
    public void SpinningStartOff_TurningShaft_IsRefused(float speed, Refusal refusal)
    {
        Bench bench = Fit(settings => settings.SpinningStart = false);
        bench.Readings.SpeedRadPerSec = speed;

        bench.PressStart();

        Assert.Equal(refusal == Refusal.None, bench.Outputs.CloseLine);
        if (refusal != Refusal.None) bench.AssertWhy(Reason.StartRefused, (int)refusal, 0f);
    }

    [Fact]
    public void Speed_UnknownDuringPreset_ClosesNoStageBeforeTheLine()
    {
        Bench bench = Fit(settings => settings.SpeedLossMicroseconds = 1000 * Millisecond).BackEmf(190f);
        bench.Readings.SpeedValid = false;

        bench.PressStart().AssertCoils(true, 0);
    }

    [Fact]
    public void Stop_WhilePresetting_OpensEverything()
    {
        Bench bench = Fit(contactTicks: 5).BackEmf(240f).PressStart().Ticks(7);

        bench.PressStop().AssertAllOff();
        bench.Ticks(10);

        Assert.Equal((Phase.Ready, 0), (bench.Controller.Phase, bench.Readings.StagesClosed));
    }

    private static Bench Fit(Action<Settings>? change = null, int contactTicks = 1) =>
        new Bench(
            settings =>
            {
                settings.StandstillRadPerSec = 1f;
                change?.Invoke(settings);
            },
            contactTicks).Tick();
}
