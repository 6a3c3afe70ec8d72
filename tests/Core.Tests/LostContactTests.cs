using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Contacts that were in and drop out: what their return would meet decides whether it is waited for.</summary>
public sealed class LostContactTests
{
    private const int ContactTicks = 100;

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Line_DropsOutWithAStageOut_TripsOnceItsReturnWouldPassThePeak(int stage)
    {
        // Just behind the cutout the back-EMF stands at the threshold; a little slower and the returning line passes 700 A.
        Bench bench = new Bench().InStage(stage);
        bench.LineStuck = true;
        bench.Readings.LineClosed = false;

        bench.Tick().AssertWhy(Reason.WaitingForLineContact, 0f, 0f, (ContactTicks - 1) * Bench.Millisecond);
        Assert.False(bench.Outputs.RunningLamp);
        bench.BackEmf(Bench.SupplyVolts - bench.Settings.VoltsLeft[stage - 2] - 0.1f).Tick();

        bench.AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
        Assert.Equal(stage, bench.Controller.Fault.InStage);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(1, true)]
    [InlineData(3, false)]
    [InlineData(3, true)]
    public void Line_DropsOutWhileAStageCloses_TripsOnceItsReturnWouldPassThePeak(int stage, bool stageIsIn)
    {
        // The return meets what the last cutout leaves, and not what was in before it.
        float thresholdVolts = Bench.SupplyVolts - Bench.Chk01().VoltsLeft[stage - 1];
        Bench bench = new Bench().InStage(stage).BackEmf(thresholdVolts).Tick();
        bench.AssertCoils(true, (1 << stage) - 1);
        bench.LineStuck = true;
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.LineClosed = false;
        if (stageIsIn) bench.Readings.StagesClosed = bench.Outputs.CloseStages;

        bench.Tick().AssertWhy(Reason.WaitingForLineContact, 0f, 0f, (ContactTicks - 1) * Bench.Millisecond);
        bench.BackEmf(thresholdVolts - 0.1f).Tick();

        bench.AssertTripped(FaultId.ContactDidNotClose, 0f, 0f);
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    [InlineData(3, 2)]
    [InlineData(4, 1)]
    [InlineData(4, 3)]
    public void ProvenStage_DropsOut_TripsOnceItsReturnWouldPassThePeak(int stage, int dropped)
    {
        Bench bench = new Bench().InStage(stage);
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.StagesClosed &= ~(1 << (dropped - 1));

        bench.Tick().AssertWhy(Reason.WaitingForStageContact, dropped, 0f, (ContactTicks - 1) * Bench.Millisecond);
        bench.BackEmf(Bench.SupplyVolts - bench.Settings.VoltsLeft[stage - 2] - 0.1f).Tick();

        bench.AssertTripped(FaultId.ContactDidNotClose, dropped, 0f);
    }

    // In by its auxiliary contact, but its current is not looked at yet when it drops out again.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void StageWhoseCurrentIsNotProvenYet_DropsOut_TripsOnceItsReturnWouldPassThePeak(int stage)
    {
        float thresholdVolts = Bench.SupplyVolts - Bench.Chk01().VoltsLeft[stage - 1];
        Bench bench = new Bench(settings =>
        {
            settings.StepToleranceRatio = 0.2f;
            settings.ZeroAmps = 5f;
            settings.StepSettleMicroseconds = 20 * Bench.Millisecond;
        })
        { Flows = true };
        bench.InStage(stage).BackEmf(thresholdVolts);
        bench.TickUntil(() => bench.Controller.Why.Reason == Reason.ProvingByCurrent && bench.Readings.StagesClosed == (1 << stage) - 1);
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.StagesClosed &= ~(1 << (stage - 1));

        bench.Tick();
        Assert.False(bench.Controller.Fault.IsLatched);
        bench.BackEmf(thresholdVolts - 0.1f).Tick();

        bench.AssertTripped(FaultId.ContactDidNotClose, stage, 0f);
    }

    [Theory]
    [InlineData(2, 0b011, 2)]
    [InlineData(2, 0b110, 2)]
    [InlineData(3, 0b111, 3)]
    [InlineData(4, 0b1111, 4)]
    public void Stage_ClosesUncommandedWhileTheLineHasDroppedOut_OpensTheLineAtOnce(int stage, int closed, int named)
    {
        // The back-EMF would do for the stage in effect; it is the stage nobody asked for that the return must not meet.
        Bench bench = new Bench().InStage(stage);
        bench.LineStuck = true;
        bench.StagesStuck = 15;
        bench.Readings.LineClosed = false;
        bench.Tick().AssertCoils(true, (1 << (stage - 1)) - 1);
        bench.Readings.StagesClosed = closed;

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, named, 0f);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void Brake_SaysClosedForOneTickUnderTheLine_TheLineOpensAndDoesNotCloseAgain(int stage)
    {
        Bench bench = new Bench(settings =>
        {
            settings.BrakeFitted = true;
            settings.BrakeOhms = 0.5f;
            settings.BrakeReleaseRadPerSec = 5f;
        }).InStage(stage).BackEmf(240f);
        bench.Spoil = readings => readings.BrakeClosed = true;

        bench.Tick().AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Brake, 0f);

        bench.Spoil = null;
        bench.Ticks(200).AssertTripped(FaultId.ContactDidNotOpen, ContactNumber.Brake, 0f);
    }
}
