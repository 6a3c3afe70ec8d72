using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Late periods, the resistor's sensor and a high supply, at their limits.</summary>
public sealed class SurroundingsTests
{
    private const int Millisecond = Bench.Millisecond;

    [Theory]
    [InlineData(5000, false)]
    [InlineData(5001, true)]
    [InlineData(int.MaxValue, true)]
    public void LateLoop_WithTheLineOn_TripsAboveTheLongestPeriod(int microseconds, bool trips)
    {
        Bench bench = new Bench(settings => settings.MaximumTickMicroseconds = 5 * Millisecond).Run();

        bench.Tick(microseconds);

        if (trips) bench.AssertTripped(FaultId.LoopLate, System.Math.Min(microseconds, Settings.LongestMicroseconds) * 0.000001f, 5000 * 0.000001f);
        else Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void LateLoop_EveryCoilOff_DoesNotMatter()
    {
        Bench bench = new Bench(settings => settings.MaximumTickMicroseconds = 5 * Millisecond).Tick(20 * Millisecond).Tick(20 * Millisecond);
        Assert.Equal(Phase.Ready, bench.Controller.Phase);

        // That of the press begins before any coil is on.
        bench.Readings.StartPressed = true;
        bench.Tick(20 * Millisecond).AssertCoils(true, 0);

        bench.Tick(20 * Millisecond).AssertTripped(FaultId.LoopLate, 0.02f, 5000 * 0.000001f);
    }

    [Fact]
    public void LateLoop_ResetBehindIt_IsAcceptedInTime()
    {
        Bench bench = new Bench(settings => settings.MaximumTickMicroseconds = 5 * Millisecond).Run().Tick(6 * Millisecond);

        bench.Ticks(5).PressReset();

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(true, 350f, FaultId.None)]
    [InlineData(true, 350.1f, FaultId.ResistorTooHot)]
    [InlineData(true, -100f, FaultId.None)]
    [InlineData(true, -100.1f, FaultId.ReadingInvalid)]
    [InlineData(true, 2000.1f, FaultId.ReadingInvalid)]
    [InlineData(true, float.NaN, FaultId.ReadingInvalid)]
    [InlineData(false, 1000f, FaultId.None)]
    [InlineData(false, float.NaN, FaultId.None)]
    public void ResistorSensor_AtItsLimits_TripsWhereItIsFitted(bool isFitted, float celsius, FaultId fault)
    {
        foreach (Bench bench in (Bench[])[Fit(isFitted).Tick(), Fit(isFitted).InStage(2), Fit(isFitted).Run()])
        {
            bench.Readings.ResistorCelsius = celsius;
            bench.Tick();

            Assert.Equal(fault, bench.Controller.Fault.Id);
            Assert.Equal(fault == FaultId.None ? Channel.None : Channel.ResistorTemperature, bench.Controller.Fault.Channel);
        }
    }

    [Fact]
    public void ResistorSensor_CooledDown_ResetIsAcceptedAtTheLimit()
    {
        Bench bench = Fit(true).Run();
        bench.Readings.ResistorCelsius = 351f;
        bench.Tick().PressReset().AssertWhy(Reason.ResetRefused, (int)FaultId.ResistorTooHot, 0f);

        bench.Readings.ResistorCelsius = 350f;
        bench.Tick().PressReset();

        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(300f, 1000, false)]
    [InlineData(300.1f, 200, false)]
    [InlineData(300.1f, 201, true)]
    public void SupplyHigh_ForItsTime_OpensTheLine(float volts, int ticks, bool trips)
    {
        Bench bench = new Bench(settings =>
        {
            settings.SupplyHighVolts = 300f;
            settings.SupplyHighMicroseconds = 200 * Millisecond;
        }).Run();
        bench.Readings.SupplyVolts = volts;

        bench.Ticks(ticks);

        if (trips) bench.AssertTripped(FaultId.SupplyHigh, volts, 300f);
        else Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    private static Bench Fit(bool isFitted) => new(settings => settings.ResistorSensorFitted = isFitted);
}
