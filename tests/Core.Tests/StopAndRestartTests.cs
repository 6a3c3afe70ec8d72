using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Stop and emergency stop win in the same tick, and nothing starts by itself (CHK-20: IEC 60204-1 clause 9.2 and
/// ISO 13850, second-hand).
/// </summary>
public sealed class StopAndRestartTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Stop_AnyStage_OpensEverythingInTheSameTick_Chk20(int stage)
    {
        Bench bench = new Bench(contactTicks: 5).InStage(stage);
        bench.AssertCoils(true, (1 << (stage - 1)) - 1);

        bench.PressStop();

        bench.AssertAllOff();
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        bench.AssertWhy(Reason.WaitingForContactsToOpen, 0f, 0f, 100 * Bench.Millisecond);
    }

    [Fact]
    public void Stop_OnTheTickOfACutout_Wins_Chk20()
    {
        Bench bench = new Bench().Started().BackEmf(130f);

        bench.PressStop();

        bench.AssertAllOff();
    }

    [Fact]
    public void Stop_OnTheTickOfAStart_Wins_Chk20()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.StopPressed = true;

        bench.PressStart();

        bench.AssertAllOff();
        bench.AssertWhy(Reason.StartRefused, (int)Refusal.StopPressed, 0f);
    }

    [Fact]
    public void EmergencyStop_OnTheTickOfAStart_Wins_Chk20()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.EmergencyStop = true;

        bench.PressStart();

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
    }

    [Fact]
    public void EmergencyStop_WithStop_IsTheTrip_Chk20()
    {
        Bench bench = new Bench().Run();
        bench.Readings.StopPressed = true;

        bench.PressEmergencyStop();

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
    }

    [Fact]
    public void Stop_Finished_IsReadyOnceEveryContactIsProvenOpen()
    {
        Bench bench = new Bench(contactTicks: 5).Run().PressStop();

        bench.Ticks(4);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        Assert.False(bench.Outputs.ReadyLamp);

        bench.Tick();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
        bench.AssertWhy(Reason.WaitingForStart, 0f, 0f);
        Assert.True(bench.Outputs.ReadyLamp);
    }

    [Fact]
    public void Stop_StageStillClosed_WaitsForItWithTheTimeLeft()
    {
        Bench bench = new Bench().Run();
        bench.StagesStuck = 4;

        bench.PressStop().Ticks(3);

        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        bench.AssertWhy(Reason.WaitingForContactsToOpen, 0f, 0f, 97 * Bench.Millisecond);
    }

    [Fact]
    public void Stop_BeforeTheLineContactHasMoved_StillPassesThroughStopping()
    {
        Bench bench = new Bench(contactTicks: 20).Tick().PressStart();

        bench.PressStop();
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);

        bench.Tick();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Stop_HeldWhenTheContactsOpen_ReadyLampStaysOut()
    {
        Bench bench = new Bench().Run();
        bench.Readings.StopPressed = true;

        bench.TickUntil(() => bench.Controller.Phase == Phase.Ready);

        Assert.Equal(Refusal.StopPressed, bench.Controller.Refusals);
        Assert.False(bench.Outputs.ReadyLamp);
    }

    [Fact]
    public void Reset_ContactsStillOpening_ReadyLampStaysOut()
    {
        Bench bench = new Bench(contactTicks: 20).Run().PressEmergencyStop();

        bench.PressReset();

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
        Assert.Equal(Refusal.LineNotOpen | Refusal.StageNotOpen, bench.Controller.Refusals);
        Assert.False(bench.Outputs.ReadyLamp);
    }

    [Fact]
    public void Start_HeldThroughAStop_StartsNothingUntilPressedAnew_Chk20()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.StartPressed = true;
        bench.TickUntil(() => bench.Readings.LineClosed).PressStop();

        bench.TickUntil(() => bench.Controller.Phase == Phase.Ready);
        bench.AssertWhy(Reason.StartRefused, (int)Refusal.StartHeld, 0f);
        AssertStartsOnlyWhenPressedAnew(bench);
    }

    [Fact]
    public void Start_HeldAtPowerUp_StartsNothingUntilPressedAnew_Chk20()
    {
        Bench bench = new();
        bench.Readings.StartPressed = true;

        bench.Tick();

        bench.AssertWhy(Reason.StartRefused, (int)Refusal.StartHeld, 0f);
        AssertStartsOnlyWhenPressedAnew(bench);
    }

    [Fact]
    public void Reset_HeldAtPowerUp_ResetsNothing_Chk20()
    {
        Bench bench = new();
        bench.Readings.ResetPressed = true;
        bench.Readings.EmergencyStop = true;
        bench.Tick();
        bench.Readings.EmergencyStop = false;

        bench.Ticks(10);

        Assert.Equal(Phase.Tripped, bench.Controller.Phase);
    }

    [Fact]
    public void Trip_CauseGone_NothingRestartsAndStartAloneDoesNotHelp_Chk20()
    {
        Bench bench = new Bench().Run().PressEmergencyStop();

        bench.Ticks(100).PressStart().Ticks(100);

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
    }

    [Fact]
    public void Reset_CauseGone_OnlyPermitsAStart_Chk20()
    {
        Bench bench = new Bench().Run().PressEmergencyStop().Ticks(5);

        bench.PressReset().Ticks(100);
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
        Assert.Equal(FaultId.None, bench.Controller.Fault.Id);
        bench.AssertAllOff();

        bench.PressStart();
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Fact]
    public void Start_AfterAStop_CutsOutFromTheFirstStageAgain()
    {
        Bench bench = new Bench().Run().PressStop().Ticks(3).BackEmf(0f);

        bench.PressStart();

        bench.AssertCoils(true, 0);
        Assert.Equal(1, bench.Controller.Stage);
    }

    [Theory]
    [InlineData(false, false, 0, Refusal.None)]
    [InlineData(true, false, 0, Refusal.StopPressed)]
    [InlineData(false, true, 0, Refusal.LineNotOpen)]
    [InlineData(false, false, 4, Refusal.StageNotOpen)]
    [InlineData(true, true, 1, Refusal.StopPressed | Refusal.LineNotOpen | Refusal.StageNotOpen)]
    public void Refusals_WhileReady_AreTheWholeSet(bool stop, bool line, int stages, Refusal expected)
    {
        Bench bench = new Bench { LineStuck = true, StagesStuck = Bench.AllStages }.Tick();
        bench.Readings.StopPressed = stop;
        bench.Readings.LineClosed = line;
        bench.Readings.StagesClosed = stages;

        bench.Tick();
        Assert.Equal(expected, bench.Controller.Refusals);
        Assert.Equal(expected == Refusal.None, bench.Outputs.ReadyLamp);
        bench.AssertWhy(Reason.WaitingForStart, 0f, 0f);

        bench.PressStart();
        Assert.Equal(expected == Refusal.None, bench.Outputs.CloseLine);
        if (expected != Refusal.None) bench.AssertWhy(Reason.StartRefused, (int)expected, 0f);
    }

    [Fact]
    public void Refusals_RefusedStartStillHeld_AddStartHeld()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.StopPressed = true;
        bench.Readings.StartPressed = true;
        bench.Tick();
        Assert.Equal(Refusal.StopPressed, bench.Controller.Refusals);

        bench.Tick();
        Assert.Equal(Refusal.StopPressed | Refusal.StartHeld, bench.Controller.Refusals);

        bench.Readings.StopPressed = false;
        AssertStartsOnlyWhenPressedAnew(bench.Tick());
    }

    [Fact]
    public void Refusals_Bits_ArePublished()
    {
        Assert.Equal(
            [
                "None=0", "StopPressed=1", "LineNotOpen=2", "StageNotOpen=4", "StartHeld=8", "BrakeNotOpen=16", "PermissiveMissing=32",
                "SupplyLow=64", "SupplyHigh=128", "ShaftTurns=256", "ShaftTurnsBackwards=512", "MotorTooHot=1024",
                "ResistorTooHot=2048", "TooManyStarts=4096",
            ],
            Array.ConvertAll(Enum.GetValues<Refusal>(), refusal => $"{refusal}={(int)refusal}"));
    }

    private static void AssertStartsOnlyWhenPressedAnew(Bench bench)
    {
        Assert.False(bench.Outputs.ReadyLamp);
        bench.Ticks(50).AssertAllOff();
        Assert.Equal(Refusal.StartHeld, bench.Controller.Refusals);

        bench.Readings.StartPressed = false;
        bench.Tick().AssertAllOff();
        bench.PressStart().AssertCoils(true, 0);
    }
}
