using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Contacts that do not follow their coils, and stages that take too long.</summary>
public sealed class ContactFaultTests
{
    private const int ContactTicks = 100;

    [Fact]
    public void Line_DoesNotClose_TripsAtTheContactTime()
    {
        Bench bench = new Bench { LineStuck = true }.Tick().PressStart();

        bench.Ticks(ContactTicks - 1).AssertCoils(true, 0);
        bench.AssertWhy(Reason.WaitingForLineContact, 0f, 0f, Bench.Millisecond);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
        Assert.Equal(Phase.Accelerating, bench.Controller.Fault.InPhase);
    }

    [Fact]
    public void Line_BouncesInStage1_WaitsUntilTheContactTime()
    {
        Bench bench = new Bench().Started();
        bench.LineStuck = true;
        bench.Readings.LineClosed = false;

        bench.Ticks(ContactTicks - 1);
        Assert.True(bench.Outputs.CloseLine);
        bench.AssertWhy(Reason.WaitingForLineContact, 0f, 0f, Bench.Millisecond);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
        Assert.Equal(1, bench.Controller.Fault.InStage);
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(1, 4)]
    [InlineData(2, 4)]
    public void Stage_ClosedWithoutCommandDuringTheStart_StopsEveryCutoutAndTripsAtTheContactTime(int stage, int weldedBits)
    {
        Bench bench = new Bench().InStage(stage);
        int commanded = bench.Outputs.CloseStages;
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.StagesClosed = commanded | weldedBits;
        int welded = weldedBits == 2 ? 2 : 3;

        bench.BackEmf(240f).Ticks(ContactTicks - 1).AssertCoils(true, commanded);

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, welded, 0f);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(4, 3)]
    public void Stage_ClosesWhileTheLineIsClosing_OpensTheLineAtOnce(int bits, int named)
    {
        Bench bench = new Bench(contactTicks: 20).Tick().PressStart();
        bench.AssertCoils(true, 0);
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.StagesClosed = bits;

        bench.Tick();

        bench.AssertTripped(FaultId.ContactDidNotOpen, named, 0f);
        bench.AssertCoils(false, 0);
    }

    [Fact]
    public void Line_DoesNotOpenOnAStop_TripsAtTheContactTime()
    {
        Bench bench = new Bench().Run();
        bench.LineStuck = true;

        bench.PressStop().Ticks(ContactTicks - 1);
        Assert.Equal(Phase.Stopping, bench.Controller.Phase);

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, 0f, 0f);
        Assert.Equal(Phase.Stopping, bench.Controller.Fault.InPhase);
    }

    [Fact]
    public void Line_ClosedWhileReady_TripsAtTheContactTime()
    {
        Bench bench = new Bench { LineStuck = true };
        bench.Readings.LineClosed = true;

        bench.Ticks(ContactTicks).AssertTripped(FaultId.ContactDidNotOpen, 0f, 0f);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Stage_DoesNotClose_TripsAndIsNamed(int stage)
    {
        Bench bench = new Bench().InStage(stage);
        bench.StagesStuck = 1 << (stage - 1);

        bench.BackEmf(240f).Tick().Ticks(ContactTicks - 1).AssertCoils(true, (1 << stage) - 1);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, stage, 0f);
        Assert.Equal(stage, bench.Controller.Fault.InStage);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Stage_OpensWhileRunning_TripsAndIsNamed(int stage)
    {
        Bench bench = new Bench().Run();
        bench.StagesStuck = 1 << (stage - 1);
        bench.Readings.StagesClosed = Bench.AllStages & ~bench.StagesStuck;

        bench.Ticks(ContactTicks).AssertTripped(FaultId.ContactDidNotClose, stage, 0f);
        Assert.Equal(Phase.Running, bench.Controller.Fault.InPhase);
    }

    [Theory]
    [InlineData(0b001, 1)]
    [InlineData(0b010, 2)]
    [InlineData(0b100, 3)]
    [InlineData(0b110, 2)]
    public void Stage_DoesNotOpenOnAStop_TripsAndTheLowestIsNamed(int welded, int stage)
    {
        Bench bench = new Bench().Run();
        bench.StagesStuck = welded;

        bench.PressStop().Ticks(ContactTicks).AssertTripped(FaultId.ContactDidNotOpen, stage, 0f);
        Assert.Equal(Phase.Stopping, bench.Controller.Fault.InPhase);
    }

    [Fact]
    public void Stage_ClosedBeforeItsTurn_TripsAndIsNamed()
    {
        Bench bench = new Bench().Started();
        bench.StagesStuck = 2;
        bench.Readings.StagesClosed = 2;

        bench.Ticks(ContactTicks).AssertTripped(FaultId.ContactDidNotOpen, 2f, 0f);
        Assert.Equal(Phase.Accelerating, bench.Controller.Fault.InPhase);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(17)]
    [InlineData(32)]
    public void Stage_NotFittedSaysClosed_TripsAndIsNamed(int stage)
    {
        Bench bench = new Bench { StagesStuck = 1 << (stage - 1) }.Tick();
        bench.Readings.StagesClosed = 1 << (stage - 1);

        bench.PressStart();
        Assert.Equal(Refusal.StageNotOpen, bench.Controller.Refusals);

        bench.Ticks(ContactTicks - 1).AssertTripped(FaultId.ContactDidNotOpen, stage, 0f);
    }

    [Fact]
    public void Contact_AgreesForOneTick_StartsItsTimeAnew()
    {
        Bench bench = new Bench().Run();
        for (int bounce = 0; bounce < 5; bounce++)
        {
            bench.StagesStuck = 1;
            bench.Readings.StagesClosed = Bench.AllStages - 1;
            bench.Ticks(ContactTicks - 1);
            bench.StagesStuck = 0;
            bench.Tick();
        }

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Contact_HoursInOneTick_Trips()
    {
        Bench bench = new Bench { LineStuck = true }.Tick().PressStart();

        bench.Tick(int.MaxValue).AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
    }

    [Fact]
    public void Contact_AllFollow_HoursInOneTickAreHarmless()
    {
        Bench bench = new Bench().Run();

        for (int i = 0; i < 10; i++) bench.Tick(int.MaxValue);

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Contact_LongestContactTime_NoTimerWraps()
    {
        Bench bench = new Bench(settings => settings.ContactMicroseconds = Settings.LongestMicroseconds) { LineStuck = true };
        bench.Tick().PressStart().Tick(Settings.LongestMicroseconds - 1);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);

        bench.Tick(Settings.LongestMicroseconds).AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
        bench.Tick(int.MaxValue).Tick(int.MaxValue).AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Stage_InEffectTooLong_TripsAtTheMaximum(int stage)
    {
        Bench bench = new Bench(settings => settings.MaximumStageMicroseconds = 200 * Bench.Millisecond).InStage(stage);

        bench.Ticks(199);
        Assert.Equal(Reason.BackEmfBelowThreshold, bench.Controller.Why.Reason);

        bench.Tick().AssertTripped(FaultId.StageTookTooLong, stage, 0.2f);
        Assert.Equal((Phase.Accelerating, stage), (bench.Controller.Fault.InPhase, bench.Controller.Fault.InStage));
        bench.AssertWhy(Reason.FaultLatched, (int)FaultId.StageTookTooLong, 0f);
    }

    [Fact]
    public void Stage_NextInEffect_StartsItsTimeAnew()
    {
        Bench bench = new Bench(settings => settings.MaximumStageMicroseconds = 200 * Bench.Millisecond).Started().Ticks(150);
        bench.BackEmf(130f).TickUntil(() => bench.Controller.Stage == 2);

        bench.Ticks(199);

        Assert.Equal((Phase.Accelerating, 2), (bench.Controller.Phase, bench.Controller.Stage));
    }

    [Fact]
    public void Stage_ThresholdMetOnTheTickOfTheMaximum_Trips()
    {
        Bench bench = new Bench(settings => settings.MaximumStageMicroseconds = 200 * Bench.Millisecond).Started().Ticks(199);

        bench.BackEmf(130f).Tick().AssertTripped(FaultId.StageTookTooLong, 1f, 0.2f);
    }

    [Fact]
    public void Running_ForHours_NeverTakesTooLong()
    {
        Bench bench = new Bench(settings => settings.MaximumStageMicroseconds = 200 * Bench.Millisecond).Run();

        bench.Ticks(1000).Tick(int.MaxValue);

        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }
}
