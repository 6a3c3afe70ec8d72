using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Stop and dynamic braking: 0.5 ohm, 50 ms behind the line's opening, back-EMF at most 700 A times 0.5 ohm, down to 5 rad/s
/// (12.5 V) within 2 s. Contacts take 10 ms.
/// </summary>
public sealed class BrakingTests
{
    private const int ContactTicks = 10;
    private const int Millisecond = Bench.Millisecond;

    [Fact]
    public void Stop_ShaftTurns_BrakeFollowsTheLineAfterContactAndDelay()
    {
        Bench bench = Running().PressStop();
        bench.AssertAllOff();

        bench.Ticks(ContactTicks - 1).AssertAllOff();
        Assert.Equal(Reason.WaitingForContactsToOpen, bench.Controller.Why.Reason);
        bench.Tick().AssertWhy(Reason.BrakeDelay, 0f, 0f, 50 * Millisecond);
        bench.Ticks(49).AssertWhy(Reason.BrakeDelay, 0f, 0f, 1 * Millisecond);
        Assert.False(bench.Outputs.CloseBrake);

        bench.Tick().AssertWhy(Reason.WaitingForBrakeContact, 0f, 0f, 100 * Millisecond);
        Assert.True(bench.Outputs.CloseBrake && bench.Controller.Phase == Phase.Braking);
        bench.Ticks(ContactTicks).AssertWhy(Reason.Braking, 92f, 5f, 1990 * Millisecond);
    }

    [Fact]
    public void Stop_LineContactHangs_BrakeNeverCloses()
    {
        Bench bench = Running();
        bench.LineStuck = true;
        bench.Ticked = _ => Assert.False(bench.Outputs.CloseBrake);

        bench.PressStop().Ticks(100).AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Line, 0f);
        bench.Ticks(3000);
    }

    [Fact]
    public void Stop_StageContactHangs_BrakeNeverCloses()
    {
        Bench bench = Running();
        bench.StagesStuck = 2;
        bench.Ticked = _ => Assert.False(bench.Outputs.CloseBrake);

        bench.PressStop().Ticks(100).AssertTripped(FaultId.ContactDidNotOpen, 2f, 0f);
        bench.Ticks(3000);
    }

    [Theory]
    [InlineData(5f, false)]
    [InlineData(-5f, false)]
    [InlineData(5.01f, true)]
    [InlineData(-5.01f, true)]
    public void Stop_ShaftSlowerThanTheReleaseSpeed_IsNotBraked(float speed, bool brakes)
    {
        Bench bench = Running().PressStop().Ticks(ContactTicks);
        bench.Readings.SpeedRadPerSec = speed;

        bench.Ticks(60);

        Assert.Equal(brakes ? Phase.Braking : Phase.Ready, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(210f)]
    [InlineData(-210f)]
    public void Brake_BackEmfTooHigh_WaitsUntilThePeakIsKept(float limitVolts)
    {
        // 700 A times 0.3 ohm are 210 V.
        Bench bench = Running(settings => settings.BrakeOhms = 0.3f).PressStop().Ticks(ContactTicks).BackEmf(limitVolts * 1.01f).Ticks(500);
        Assert.Equal(Reason.BackEmfAboveBrake, bench.Controller.Why.Reason);
        Assert.False(bench.Outputs.CloseBrake);

        bench.BackEmf(limitVolts * 0.999f).Tick();

        Assert.True(bench.Outputs.CloseBrake);
    }

    [Fact]
    public void Brake_BackEmfNeverFalls_GivesUpAtTheMaximum()
    {
        Bench bench = Running(settings => settings.BrakeOhms = 0.3f).PressStop();

        bench.Ticks(ContactTicks + 1998);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.BrakeDidNotFinish, 92f, 5f);
    }

    [Fact]
    public void Brake_AtTheReleaseSpeed_OpensAndIsReadyOnceItsContactIs()
    {
        Bench bench = Braking();

        bench.BackEmf(12.6f).Tick();
        Assert.True(bench.Outputs.CloseBrake);
        bench.BackEmf(12.5f).Tick();
        Assert.False(bench.Outputs.CloseBrake);
        Assert.Equal((Phase.Stopping, Reason.WaitingForContactsToOpen), (bench.Controller.Phase, bench.Controller.Why.Reason));

        bench.Ticks(ContactTicks - 1);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        bench.Tick();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Brake_ShaftSpeedsUpAgainBehindIt_IsNotBrakedTwice()
    {
        Bench bench = Braking().BackEmf(12f).Tick().BackEmf(100f);

        bench.Ticks(ContactTicks + 100);

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Brake_DoesNotFinish_OpensAndTripsAtTheMaximum()
    {
        Bench bench = Braking().Ticks(2000 - ContactTicks - 1);
        Assert.True(bench.Outputs.CloseBrake);

        bench.Tick().AssertTripped(FaultId.BrakeDidNotFinish, 92f, 5f);
    }

    [Fact]
    public void Brake_EmergencyStop_OpensItInTheSameTick()
    {
        Braking().PressEmergencyStop().AssertTripped(FaultId.EmergencyStop, 1f, 0f);
    }

    [Theory]
    [InlineData(nameof(Scene.Stopping))]
    [InlineData(nameof(Scene.BrakeDelay))]
    [InlineData(nameof(Scene.Braking))]
    public void Start_PressedOnTheWayToAStop_DoesNothingAndIsHeldAgainstThePresser(string scene)
    {
        Bench bench = Scenes.Prepare(Enum.Parse<Scene>(scene));
        bench.Readings.StartPressed = true;
        bench.Ticked = _ => Assert.False(bench.Outputs.CloseLine);

        bench.Ticks(700).BackEmf(10f).TickUntil(() => bench.Controller.Phase == Phase.Ready).Ticks(100);

        Assert.Equal(Refusal.StartHeld, bench.Controller.Refusals);
    }

    [Fact]
    public void Stop_ReleasedWhileBraking_BrakesOn()
    {
        Bench bench = Braking();
        bench.Readings.StopPressed = true;
        bench.Ticks(50);
        bench.Readings.StopPressed = false;

        bench.Ticks(50);

        Assert.Equal(Phase.Braking, bench.Controller.Phase);
    }

    [Fact]
    public void BrakeContact_NotFitted_CountsAsClosedUntilTimeAndZeroCurrentProveItOpen()
    {
        Bench bench = Running(settings => settings.BrakeContactFitted = false).PressStop();
        bench.TickUntil(Reason.Braking).Ticks(100);

        // 10 A are zero on this bench; with 10.1 A it is not proven open, and welded at its time.
        bench.Spoil = readings => readings.ArmatureAmps = 10.1f;
        bench.BackEmf(12f).Ticks(101);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Brake, 0f);
    }

    [Fact]
    public void BrakeContact_NotFittedAndNoCurrent_IsReadyAfterTheContactTime()
    {
        Bench bench = Running(settings => settings.BrakeContactFitted = false).PressStop().TickUntil(Reason.Braking);

        bench.BackEmf(12f).Ticks(101);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);
        bench.Tick();

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void BrakeContact_NotFitted_StartIsRefusedAfterPowerUpUntilItIsProvenOpen()
    {
        Bench bench = new(settings =>
        {
            Fitted.Everything(settings);
            settings.BrakeContactFitted = false;
        });

        bench.Ticks(100);
        Assert.Equal(Refusal.BrakeNotOpen, bench.Controller.Refusals);

        bench.Tick();
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    private static Bench Running(Action<Settings>? change = null)
    {
        Bench bench = new Bench(
            settings =>
            {
                Fitted.Everything(settings);
                change?.Invoke(settings);
            },
            ContactTicks)
        { Flows = true }.Ticks(200);
        return bench.InStage(4).BackEmf(230f).TickUntil(Reason.AllStagesCutOut);
    }

    private static Bench Braking() => Running().PressStop().TickUntil(Reason.Braking);
}
