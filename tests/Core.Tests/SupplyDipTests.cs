using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Supply dips on CHK-01: low below 200 V, expected back to 250 V, ridden through for 300 ms. A stage may stay cut out while
/// the back-EMF keeps the returning peak within 700 A: from 125, 187.5 and 218.75 V.
/// </summary>
public sealed class SupplyDipTests
{
    private const int DipTicks = 300;
    private const int Millisecond = Bench.Millisecond;

    [Theory]
    [InlineData(218.75f, 7)]
    [InlineData(218.7f, 3)]
    [InlineData(187.5f, 3)]
    [InlineData(187.4f, 1)]
    [InlineData(125f, 1)]
    [InlineData(124.9f, 0)]
    [InlineData(0f, 0)]
    public void Dip_WhileRunning_PutsBackExactlyTheStagesWhosePeakWouldBePassedOnReturn(float backEmfVolts, int kept)
    {
        Bench bench = Fit().Run().BackEmf(backEmfVolts);

        Dip(bench, 199.9f).AssertCoils(true, kept);

        Assert.Equal(kept == 7 ? Phase.Running : Phase.Accelerating, bench.Controller.Phase);
        bench.AssertWhy(Reason.SupplyDip, 199.9f, 200f, DipTicks * Millisecond);
        bench.Ticks(5).AssertCoils(true, kept);
        Assert.Equal(kept, bench.Readings.StagesClosed);
    }

    [Theory]
    [InlineData(240f, 190f, 3)]
    [InlineData(240f, 170f, 1)]
    [InlineData(240f, 110f, 0)]
    public void Dip_SoDeepThatTheCurrentBackPassesThePeak_PutsBackTheStagesThatLetIt(float backEmfVolts, float supplyVolts, int kept)
    {
        // (E - V) over the resistance behind each stage, at most 700 A: up to 31.25, 62.5 and 125 V of difference.
        Bench bench = Fit().Run().BackEmf(backEmfVolts);

        Dip(bench, supplyVolts).AssertCoils(true, kept);
    }

    [Fact]
    public void Dip_AtTheLimitItself_IsNone()
    {
        Bench bench = Fit().Run().BackEmf(0f);

        Dip(bench, 200f).AssertCoils(true, 7);

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Dip_Over_CutsOutAgainStageByStageByTheSameThresholds()
    {
        Bench bench = Fit().Run().BackEmf(130f);
        Dip(bench, 150f).Ticks(50);
        bench.AssertCoils(true, 1);
        Assert.Equal(2, bench.Controller.Stage);

        Dip(bench, 250f);
        bench.AssertWhy(Reason.BackEmfBelowThreshold, 130f, 187.5f);
        bench.BackEmf(187.5f).Tick().AssertCoils(true, 3);
        bench.BackEmf(218.75f).Ticks(2).AssertCoils(true, 7);
        bench.Tick();

        Assert.Equal(Phase.Running, bench.Controller.Phase);
        Assert.Equal([1, 2, 3, 2, 3], Cutouts(bench));
    }

    [Fact]
    public void Dip_PutBack_IsLoggedWithTheStageAndTheSupply()
    {
        Bench bench = Fit().Run().BackEmf(130f);

        Dip(bench, 150f);

        EventLog log = bench.Controller.Log;
        Assert.Equal((EventKind.PutBack, 2, 150f), (log.KindAt(log.Count - 2), log.NumberAt(log.Count - 2), log.ValueAt(log.Count - 2)));
        Assert.Equal((EventKind.Phase, (int)Phase.Accelerating), (log.KindAt(log.Count - 1), log.NumberAt(log.Count - 1)));
    }

    [Fact]
    public void Dip_WhileAccelerating_CutsNothingOutAndPutsBackWhatTheShaftHasBecomeTooSlowFor()
    {
        Bench bench = Fit().InStage(3).BackEmf(200f);
        Dip(bench, 199f).Ticks(50).AssertCoils(true, 3);
        bench.AssertWhy(Reason.SupplyDip, 199f, 200f, (DipTicks - 50) * Millisecond);

        bench.BackEmf(187.4f).Tick().AssertCoils(true, 1);

        Assert.Equal(2, bench.Controller.Stage);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void Dip_TooLong_OpensTheLineAtItsTimeAndNotOneTickBefore(int stage)
    {
        Bench bench = Fit().InStage(stage).Ticks(5);

        Dip(bench, 150f).Ticks(DipTicks - 1);
        Assert.True(bench.Outputs.CloseLine);

        bench.Tick().AssertTripped(FaultId.SupplyLow, 150f, 200f);
    }

    [Fact]
    public void Dip_OneTickShorter_IsRiddenThroughAndTheNextCountsAnew()
    {
        Bench bench = Fit().Run().BackEmf(225f);
        for (int i = 0; i < 5; i++)
        {
            Dip(bench, 199f).Ticks(DipTicks - 1);
            Dip(bench, 250f);
        }

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Dip_StagesToBeLeft_StayInUntilTheLineOpens()
    {
        Bench bench = Fit(settings => settings.DipAction = DipAction.LeaveStages).Run().BackEmf(0f);

        Dip(bench, 150f).Ticks(DipTicks - 1).AssertCoils(true, 7);
        Assert.Equal(Phase.Running, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.SupplyLow, 150f, 200f);
    }

    [Fact]
    public void Dip_StagesToBeLeftDuringAStart_CutsNothingOut()
    {
        Bench bench = Fit(settings => settings.DipAction = DipAction.LeaveStages).InStage(2).BackEmf(190f);

        Dip(bench, 199f).Ticks(50).AssertCoils(true, 1);

        Dip(bench, 250f).AssertCoils(true, 3);
    }

    [Fact]
    public void Dip_BeforeTheLineIsIn_PresetsNothingAndClosesNoLineUntilTheSupplyIsBack()
    {
        // At 100 V of back-EMF a supply of 150 V permits two stages; its return would then drive 840 A.
        Bench bench = Fit(contactTicks: 5).BackEmf(130f).PressStart();
        bench.AssertCoils(false, 1);
        Dip(bench.BackEmf(100f), 150f).Ticks(100).AssertCoils(false, 1);
        Assert.Equal(Reason.SupplyDip, bench.Controller.Why.Reason);

        Dip(bench, 250f).AssertCoils(false, 0);
        bench.Ticks(10).AssertCoils(true, 0);
    }

    [Fact]
    public void Dip_BeforeTheLineIsIn_GivesTheStartUpAtItsTime()
    {
        Bench bench = Fit(contactTicks: 5).BackEmf(130f).PressStart();

        Dip(bench, 150f).Ticks(DipTicks - 1).AssertCoils(false, 1);

        bench.Tick().AssertTripped(FaultId.SupplyLow, 150f, 200f);
    }

    [Fact]
    public void Dip_WhileReady_RefusesTheStartAndNeverTrips()
    {
        Bench bench = Fit();

        Dip(bench, 199f).Ticks(2 * DipTicks).PressStart();

        bench.AssertWhy(Reason.StartRefused, (int)Refusal.SupplyLow, 0f);
    }

    private static Bench Dip(Bench bench, float supplyVolts)
    {
        bench.Readings.SupplyVolts = supplyVolts;
        return bench.Tick();
    }

    private static int[] Cutouts(Bench bench)
    {
        EventLog log = bench.Controller.Log;
        int[] events = new int[log.Count];
        for (int i = 0; i < events.Length; i++) events[i] = log.KindAt(i) == EventKind.Cutout ? log.NumberAt(i) : 0;
        return Array.FindAll(events, stage => stage > 0);
    }

    private static Bench Fit(Action<Settings>? change = null, int contactTicks = 1) =>
        new Bench(
            settings =>
            {
                settings.SupplyLowVolts = 200f;
                settings.NominalSupplyVolts = 250f;
                settings.DipAction = DipAction.PutResistanceBack;
                settings.DipMicroseconds = DipTicks * Millisecond;
                change?.Invoke(settings);
            },
            contactTicks).Tick();
}
