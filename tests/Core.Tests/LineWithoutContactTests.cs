using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// A line contactor without an auxiliary contact: closed once current shows it, open once its time is over and no current flows.
/// 10 A count as none; the contact time is 100 ms, the contactor takes 10 ms.
/// </summary>
public sealed class LineWithoutContactTests
{
    private const int ContactTicks = 10;
    private const int ProofTicks = 100;

    [Fact]
    public void PowerUp_NothingProvenYet_StartIsRefusedForTheContactTime()
    {
        Bench bench = Fit().Ticks(ProofTicks - 1);
        Assert.Equal(Refusal.LineNotOpen, bench.Controller.Refusals);

        bench.Tick();
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    [Theory]
    [InlineData(10f, false)]
    [InlineData(-10f, false)]
    [InlineData(10.1f, true)]
    [InlineData(-10.1f, true)]
    public void PowerUp_CurrentFlows_TripsAtTheContactTime(float amps, bool trips)
    {
        Bench bench = Fit();
        bench.Spoil = readings => readings.ArmatureAmps = amps;

        bench.Ticks(ProofTicks);

        if (trips) bench.AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Line, 0f);
        else Assert.Equal((Phase.Ready, Refusal.None), (bench.Controller.Phase, bench.Controller.Refusals));
    }

    [Fact]
    public void Start_CurrentRises_ProvesTheLineClosed()
    {
        Bench bench = Ready().PressStart();
        bench.AssertCoils(true, 0);

        bench.Ticks(ContactTicks - 1);
        Assert.True(bench.Controller.Why.Reason is Reason.WaitingForLineContact or Reason.ProvingByCurrent);
        bench.Tick();

        bench.TickUntil(Reason.BackEmfBelowThreshold);
        Assert.Equal(700f, bench.Readings.ArmatureAmps, 0.01f);
    }

    [Fact]
    public void Start_NoCurrent_TripsAtTheContactTime()
    {
        Bench bench = Ready();
        bench.LineStuck = true;

        bench.PressStart().Ticks(ProofTicks - 1).AssertCoils(true, 0);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, ContactNumber.Line, 0f);
    }

    [Fact]
    public void Start_BackEmfEqualsTheSupply_NothingCanBeSeenAndTheClosingIsTakenOnTrust()
    {
        Bench bench = Ready().BackEmf(250f).PressStart();
        bench.TickUntil(() => bench.Outputs.CloseLine);

        bench.Ticks(ProofTicks + 10);

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Running_CurrentGoesThroughZero_IsNoOpenLine()
    {
        Bench bench = Running();

        bench.BackEmf(250f).Ticks(1000);

        Assert.Equal((Phase.Running, true), (bench.Controller.Phase, bench.Outputs.RunningLamp));
    }

    [Fact]
    public void Stop_NoCurrent_IsReadyOnlyAfterTheContactTime()
    {
        Bench bench = Running().PressStop();

        bench.Ticks(ProofTicks - 1).AssertAllOff();
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);

        bench.Tick();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Stop_LineWelded_TripsAtTheContactTime()
    {
        Bench bench = Running();
        bench.LineStuck = true;

        bench.PressStop().Ticks(ProofTicks - 1);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Line, 0f);
        bench.Ticks(100).PressReset().AssertWhy(Reason.ResetRefused, (int)FaultId.ContactDidNotOpen, 0f);
    }

    [Fact]
    public void Open_CurrentFlowsAfterAll_TripsAtTheContactTime()
    {
        Bench bench = Ready().Ticks(50);
        bench.Spoil = readings => readings.ArmatureAmps = -10.1f;

        bench.Ticks(ProofTicks);
        Assert.Equal(Phase.Ready, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.CurrentWhileOpen, -10.1f, 10f);
    }

    [Fact]
    public void Open_CurrentForLessThanItsTime_CountsAnew()
    {
        Bench bench = Ready();
        for (int i = 0; i < 5; i++)
        {
            bench.Spoil = readings => readings.ArmatureAmps = 50f;
            bench.Ticks(ProofTicks);
            bench.Spoil = null;
            bench.Tick();
        }

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Open_ZeroCurrentSwitchedOff_IsNotWatchedWhereTheContactIsFitted()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.ArmatureAmps = 999f;

        Assert.Equal(Phase.Ready, bench.Ticks(1000).Controller.Phase);
    }

    private static Bench Ready() => Fit().Ticks(ProofTicks);

    private static Bench Running()
    {
        Bench bench = Ready().PressStart();
        bench.TickUntil(() => bench.Readings.LineClosed).Ticks(5).BackEmf(240f);
        return bench.TickUntil(() => bench.Controller.Phase == Phase.Running).Ticks(50);
    }

    private static Bench Fit() =>
        new(
            settings =>
            {
                settings.LineContactFitted = false;
                settings.ZeroAmps = 10f;
            },
            ContactTicks)
        { Flows = true };
}
