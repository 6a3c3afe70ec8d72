using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The field comes first: 2 A for 50 ms within 1 s, then the line; it stays until the line is open. Contacts take 10 ms.
/// </summary>
public sealed class FieldTests
{
    private const int Millisecond = Bench.Millisecond;
    private const int ContactTicks = 10;

    [Fact]
    public void Field_StandsAtOnce_LineFollowsAfterContactAndBuildTime()
    {
        Bench bench = Fit().PressStart();
        Assert.True(bench.Outputs.CloseField);
        bench.AssertCoils(false, 0);
        bench.AssertWhy(Reason.FieldBelowMinimum, 0f, 2f, 1000 * Millisecond);

        bench.Ticks(ContactTicks).AssertWhy(Reason.FieldBuilding, 5f, 2f, 50 * Millisecond);
        bench.Ticks(49).AssertWhy(Reason.FieldBuilding, 5f, 2f, 1 * Millisecond);
        bench.AssertCoils(false, 0);

        bench.Tick().AssertCoils(true, 0);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(2f, true)]
    [InlineData(-2f, true)]
    [InlineData(1.999f, false)]
    [InlineData(-1.999f, false)]
    public void Field_AtItsLeastCurrentOfEitherSign_Counts(float fieldAmps, bool stands)
    {
        Bench bench = Fit();
        bench.Spoil = readings => readings.FieldAmps = fieldAmps;

        bench.PressStart().Ticks(200);

        Assert.Equal(stands, bench.Outputs.CloseLine);
    }

    [Fact]
    public void Field_DipsBelowItsLeastCurrent_BuildsAnew()
    {
        Bench bench = Fit().PressStart().Ticks(ContactTicks + 40);
        bench.Spoil = readings => readings.FieldAmps = 1.9f;
        bench.Tick();
        bench.Spoil = null;

        bench.Tick().AssertWhy(Reason.FieldBuilding, 5f, 2f, 50 * Millisecond);
    }

    [Fact]
    public void NoField_InItsTime_TripsAndTheLineWasNeverClosed()
    {
        Bench bench = Fit();
        bool wasClosed = false;
        bench.Ticked = _ => wasClosed |= bench.Outputs.CloseLine;
        bench.Spoil = readings => readings.FieldAmps = 0.5f;

        bench.PressStart().Ticks(999);
        bench.AssertWhy(Reason.FieldBelowMinimum, 0.5f, 2f, 1 * Millisecond);

        bench.Tick().AssertTripped(FaultId.NoField, 0.5f, 2f);
        Assert.False(wasClosed || bench.Outputs.CloseField);
    }

    [Fact]
    public void FieldContact_NotIn_HoldsTheLineWhateverTheSensorSays()
    {
        Bench bench = Fit();
        bench.FieldStuck = true;
        bench.Spoil = readings => readings.FieldAmps = 5f;

        bench.PressStart().Ticks(100).AssertCoils(false, 0);

        bench.Tick().AssertTripped(FaultId.ContactDidNotClose, ContactNumber.Field, 0f);
    }

    [Fact]
    public void FieldContact_NotFitted_CurrentAloneProvesTheField()
    {
        Bench bench = Fit(settings => settings.FieldContactFitted = false);
        bench.Spoil = readings => readings.FieldClosed = false;

        bench.PressStart().Ticks(ContactTicks + 50).AssertCoils(true, 0);

        bench.Ticks(200);
        Assert.Equal(FaultId.None, bench.Controller.Fault.Id);
    }

    [Fact]
    public void FieldSensor_NotFitted_BuildTimeRunsFromTheContact()
    {
        Bench bench = Fit(settings => (settings.FieldSensorFitted, settings.MinimumFieldAmps) = (false, 0f));
        bench.Spoil = readings => readings.FieldAmps = float.NaN;

        bench.PressStart().Ticks(ContactTicks + 49).AssertCoils(false, 0);

        bench.Tick().AssertCoils(true, 0);
    }

    [Fact]
    public void Field_NobodySwitches_OnlyItsCurrentIsWaitedFor()
    {
        Bench bench = Fit(settings => (settings.FieldContactorFitted, settings.FieldContactFitted) = (false, false));
        bench.Spoil = readings => readings.FieldAmps = 5f;

        bench.PressStart().Ticks(49).AssertCoils(false, 0);

        bench.Tick().AssertCoils(true, 0);
        Assert.False(bench.Outputs.CloseField);
    }

    [Fact]
    public void Stop_WhileTheFieldBuilds_EndsTheStartAndTheFieldWithIt()
    {
        Bench bench = Fit().PressStart().Ticks(30);

        bench.PressStop().AssertAllOff();
        bench.Ticks(2 * ContactTicks);

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
        Assert.False(bench.Outputs.CloseField || bench.Readings.FieldClosed);
    }

    [Fact]
    public void Stop_FieldStays_UntilTheShaftIsBraked()
    {
        Bench bench = Fit().InStage(4).BackEmf(230f).TickUntil(Reason.AllStagesCutOut).PressStop();
        bench.TickUntil(Reason.Braking).Ticks(100);
        Assert.True(bench.Outputs.CloseBrake && bench.Outputs.CloseField);

        bench.BackEmf(12f).TickUntil(Reason.WaitingForStart);

        Assert.False(bench.Outputs.CloseField);
    }

    [Fact]
    public void Trip_LineContactHangs_FieldStaysForAsLong()
    {
        Bench bench = Fit().InStage(4).BackEmf(230f).TickUntil(Reason.AllStagesCutOut);
        bench.LineStuck = true;

        bench.PressEmergencyStop().AssertAllOff();
        bench.Ticks(5000);
        Assert.True(bench.Outputs.CloseField && bench.Readings.LineClosed);

        bench.LineStuck = false;
        bench.TickUntil(() => !bench.Readings.LineClosed);
        Assert.False(bench.Outputs.CloseField);
    }

    [Fact]
    public void FieldContactor_FailsUnderTheLine_TripsByItsCurrentBeforeItsContact()
    {
        Bench bench = Fit().InStage(2).BackEmf(150f);
        bench.FieldStuck = true;
        bench.Readings.FieldClosed = false;

        bench.Ticks(20).AssertCoils(true, 1);

        bench.Tick().AssertTripped(FaultId.FieldLost, 0f, 2f);
    }

    private static Bench Fit(Action<Settings>? change = null) =>
        new Bench(
            settings =>
            {
                Fitted.Everything(settings);
                change?.Invoke(settings);
            },
            ContactTicks)
        { Flows = true }.Tick();
}
