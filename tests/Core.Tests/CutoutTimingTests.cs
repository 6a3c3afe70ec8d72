using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Dwell, confirm time and contact proof between one cutout and the next.</summary>
public sealed class CutoutTimingTests
{
    private const int Millisecond = Bench.Millisecond;

    [Fact]
    public void Dwell_ConditionsMetEarly_HoldsUntilItIsOver()
    {
        Bench bench = new Bench(settings => settings.MinimumDwellMicroseconds = 3 * Millisecond).Started();
        bench.BackEmf(130f);

        bench.Tick();
        bench.AssertWhy(Reason.MinimumDwell, 130f, 125f, 2 * Millisecond);
        bench.Tick();
        bench.AssertWhy(Reason.MinimumDwell, 130f, 125f, Millisecond);
        bench.AssertCoils(true, 0);

        bench.Tick();
        bench.AssertCoils(true, 1);
    }

    [Fact]
    public void Dwell_NextStage_CountsFromTheProofOfTheLast()
    {
        Bench bench = new(settings => settings.MinimumDwellMicroseconds = 3 * Millisecond, contactTicks: 5);
        bench.Started().BackEmf(240f).TickUntil(() => bench.Outputs.CloseStages == 1);

        bench.TickUntil(() => bench.Controller.Stage == 2);

        bench.AssertWhy(Reason.MinimumDwell, 240f, 187.5f, 3 * Millisecond);
        bench.Ticks(2).AssertCoils(true, 1);
        bench.Tick().AssertCoils(true, 3);
    }

    [Fact]
    public void Dwell_LineNotClosedYet_DoesNotCount()
    {
        Bench bench = new Bench(settings => settings.MinimumDwellMicroseconds = 5 * Millisecond, contactTicks: 20).Tick();

        bench.PressStart().BackEmf(130f).TickUntil(() => bench.Readings.LineClosed);

        bench.AssertWhy(Reason.MinimumDwell, 130f, 125f, 5 * Millisecond);
    }

    [Fact]
    public void Confirm_Zero_CutsOutOnTheSameTick()
    {
        Bench bench = new Bench().Started();
        bench.AssertWhy(Reason.BackEmfBelowThreshold, 0f, 125f);

        bench.BackEmf(130f).Tick();

        bench.AssertWhy(Reason.StageCutOut, 130f, 125f);
        bench.AssertCoils(true, 1);
    }

    [Fact]
    public void Confirm_ConditionsHeld_CutsOutWhenTheTimeIsOver()
    {
        Bench bench = Confirming();

        bench.Tick();
        bench.AssertWhy(Reason.Confirming, 130f, 125f, 2 * Millisecond);
        bench.Tick();
        bench.AssertWhy(Reason.Confirming, 130f, 125f, Millisecond);
        bench.AssertCoils(true, 0);

        bench.Tick();
        bench.AssertWhy(Reason.StageCutOut, 130f, 125f);
        bench.AssertCoils(true, 1);
    }

    [Fact]
    public void Confirm_DipOfTheBackEmf_RestartsTheTime()
    {
        Bench bench = Confirming().Ticks(2);

        bench.BackEmf(124f).Tick();
        bench.AssertWhy(Reason.BackEmfBelowThreshold, 124f, 125f);

        bench.BackEmf(130f).Tick();
        bench.AssertWhy(Reason.Confirming, 130f, 125f, 3 * Millisecond);
    }

    [Fact]
    public void Confirm_CurrentPeak_RestartsTheTime()
    {
        Bench bench = Confirming().Ticks(2);

        bench.Readings.ArmatureAmps = 500f;
        bench.Tick();
        bench.AssertWhy(Reason.CurrentAboveLockout, 500f, 400f);

        bench.Readings.ArmatureAmps = 300f;
        bench.Tick();
        bench.AssertWhy(Reason.Confirming, 130f, 125f, 3 * Millisecond);
    }

    [Fact]
    public void Confirm_LineContactBounces_RestartsTheTime()
    {
        Bench bench = Confirming().Ticks(2);

        Bounce(bench);

        bench.AssertWhy(Reason.Confirming, 130f, 125f, 3 * Millisecond);
    }

    [Fact]
    public void Confirm_EarlierStageBounces_RestartsTheTime()
    {
        Bench bench = new(settings => settings.ConfirmMicroseconds = 3 * Millisecond);
        bench.InStage(2).BackEmf(190f).Ticks(3);
        bench.AssertWhy(Reason.Confirming, 190f, 187.5f, Millisecond);

        bench.StagesStuck = 1;
        bench.Readings.StagesClosed = 0;
        bench.Tick();
        bench.StagesStuck = 0;
        bench.Tick();

        bench.AssertWhy(Reason.Confirming, 190f, 187.5f, 3 * Millisecond);
    }

    [Fact]
    public void Confirm_NextStage_StartsAnew()
    {
        Bench bench = new(settings => settings.ConfirmMicroseconds = 3 * Millisecond);

        bench.Started().BackEmf(240f).TickUntil(() => bench.Controller.Stage == 2);

        bench.AssertWhy(Reason.Confirming, 240f, 187.5f, 3 * Millisecond);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(int.MinValue)]
    public void Confirm_NoTimePasses_NeverEnds(int elapsedMicroseconds)
    {
        Bench bench = Confirming();

        for (int i = 0; i < 100; i++) bench.Tick(elapsedMicroseconds);

        bench.AssertWhy(Reason.Confirming, 130f, 125f, 3 * Millisecond);
    }

    [Fact]
    public void NextStage_LastNotProvenClosed_Waits()
    {
        Bench bench = new Bench(contactTicks: 4).Started().BackEmf(240f).Tick();
        bench.AssertCoils(true, 1);

        bench.Tick();
        bench.AssertWhy(Reason.WaitingForStageContact, 1f, 0f, 99 * Millisecond);
        bench.Ticks(2).AssertCoils(true, 1);
        bench.AssertWhy(Reason.WaitingForStageContact, 1f, 0f, 97 * Millisecond);

        bench.Tick().AssertCoils(true, 3);
    }

    [Fact]
    public void NextStage_EarlierStageOpensAgain_Waits()
    {
        Bench bench = new Bench().InStage(3);
        bench.StagesStuck = 1;
        bench.Readings.StagesClosed = 2;

        bench.BackEmf(240f).Tick();

        Assert.Equal(Reason.WaitingForStageContact, bench.Controller.Why.Reason);
        bench.AssertCoils(true, 3);
    }

    [Fact]
    public void LineContact_NotProvenClosed_WaitsWithTheTimeLeft()
    {
        Bench bench = new Bench(contactTicks: 10).Tick().PressStart().BackEmf(240f);
        bench.AssertWhy(Reason.WaitingForLineContact, 0f, 0f, 100 * Millisecond);

        bench.Ticks(4);

        bench.AssertWhy(Reason.WaitingForLineContact, 0f, 0f, 96 * Millisecond);
        bench.AssertCoils(true, 0);
    }

    private static Bench Confirming()
    {
        Bench bench = new Bench(settings =>
        {
            settings.ConfirmMicroseconds = 3 * Millisecond;
            settings.LockoutAmps = 400f;
        }).Started().BackEmf(130f).Tick();
        bench.AssertWhy(Reason.Confirming, 130f, 125f, 3 * Millisecond);
        return bench;
    }

    // Open for one tick, closed again on the next.
    private static void Bounce(Bench bench)
    {
        bench.LineStuck = true;
        bench.Readings.LineClosed = false;
        bench.Tick();
        Assert.Equal(Reason.WaitingForLineContact, bench.Controller.Why.Reason);
        bench.Readings.LineClosed = true;
        bench.LineStuck = false;
        bench.Tick();
    }
}
