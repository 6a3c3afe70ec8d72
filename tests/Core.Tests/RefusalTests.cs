using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Everything that speaks against a start, one by one and two by two; and the starts of an hour.</summary>
public sealed class RefusalTests
{
    private const int Millisecond = Bench.Millisecond;
    private const int Second = 1_000_000;

    private static readonly (Refusal Refusal, Action<Bench> Cause)[] Causes =
    [
        (Refusal.StopPressed, bench => bench.Readings.StopPressed = true),
        (Refusal.LineNotOpen, bench => bench.Readings.LineClosed = true),
        (Refusal.StageNotOpen, bench => bench.Readings.StagesClosed = 4),
        (Refusal.StartHeld, HoldStart),
        (Refusal.BrakeNotOpen, bench => bench.Readings.BrakeClosed = true),
        (Refusal.PermissiveMissing, bench => bench.Readings.Permissives = 2),
        (Refusal.SupplyLow, bench => bench.Readings.SupplyVolts = 199.9f),
        (Refusal.SupplyHigh, bench => bench.Readings.SupplyVolts = 300.1f),
        (Refusal.ShaftTurns, bench => bench.Readings.SpeedRadPerSec = 1.01f),
        (Refusal.ShaftTurnsBackwards, bench => bench.Readings.SpeedRadPerSec = -1.01f),
        (Refusal.MotorTooHot, bench => bench.Controller.Heat.Motor.Level = 0.81f),
        (Refusal.ResistorTooHot, bench => bench.Controller.Heat.Resistor.Level = 0.51f),
        (Refusal.TooManyStarts, StartOnce),
    ];

    // The supply is not low and high at once, and the shaft turns one way.
    private static readonly Refusal[] Exclusive = [Refusal.SupplyLow | Refusal.SupplyHigh, Refusal.ShaftTurns | Refusal.ShaftTurnsBackwards];

    [Fact]
    public void Refusals_EveryOneAndEveryTwo_AreTheWholeSetAndRefuseTheStart()
    {
        int combinations = 0;
        for (int i = 0; i < Causes.Length; i++)
        {
            for (int j = i; j < Causes.Length; j++)
            {
                Refusal expected = Causes[i].Refusal | Causes[j].Refusal;
                if (Exclusive.Contains(expected)) continue;
                AssertRefused(expected, i == j ? [Causes[i].Cause] : [Causes[j].Cause, Causes[i].Cause]);
                combinations++;
            }
        }

        Assert.Equal(89, combinations);
    }

    [Fact]
    public void Refusals_AllThatCanBeThereAtOnce_AreAllNamed() =>
        AssertRefused(
            Causes.Aggregate(Refusal.None, (all, cause) => all | cause.Refusal) & ~Refusal.SupplyHigh & ~Refusal.ShaftTurns,
            [.. Causes.Where(cause => cause.Refusal is not (Refusal.SupplyHigh or Refusal.ShaftTurns)).Select(cause => cause.Cause).Reverse()]);

    [Fact]
    public void Refusals_ThePublishedOnes_AllHaveACauseHere_AndAnUnknownSpeedTripsInstead()
    {
        IEnumerable<Refusal> missing = Enum.GetValues<Refusal>().Except(Causes.Select(cause => cause.Refusal));
        Assert.Equal([Refusal.None], missing);

        Bench bench = Fit();
        bench.Readings.SpeedValid = false;
        bench.Tick().AssertTripped(FaultId.SpeedSignalLost, 0f, 0f);
    }

    [Theory]
    [InlineData(200f, 300f)]
    public void Supply_AtItsLimits_IsNotRefused(float low, float high)
    {
        Bench bench = Fit();
        foreach (float volts in (float[])[low, high])
        {
            bench.Readings.SupplyVolts = volts;
            Assert.Equal(Refusal.None, bench.Tick().Controller.Refusals);
        }
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(7, true)]
    [InlineData(-1, true)]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(4, false)]
    [InlineData(0, false)]
    public void Permissives_AllThatAreRequired_MustBeGivenAndOthersDoNotMatter(int given, bool permits)
    {
        Bench bench = Fit();
        bench.Readings.Permissives = given;

        bench.PressStart();

        Assert.Equal(permits, bench.Outputs.CloseLine);
    }

    [Fact]
    public void Permissive_WithdrawnForLessThanItsTime_RunsOn()
    {
        Bench bench = Fit(settings => settings.TripConfirmMicroseconds = 20 * Millisecond).Run();
        for (int i = 0; i < 5; i++)
        {
            bench.Readings.Permissives = 1;
            bench.Ticks(20);
            bench.Readings.Permissives = 3;
            bench.Tick();
        }

        Assert.Equal(Phase.Running, bench.Controller.Phase);
        bench.Readings.Permissives = 1;
        bench.Ticks(21).AssertTripped(FaultId.PermissiveLost, 1f, 3f);
    }

    [Fact]
    public void Starts_ThreeInAnHour_TheFourthIsPermittedExactlyAnHourBehindTheFirst()
    {
        Bench bench = Fit(settings => settings.StartsPerHour = 3);
        int[] startedAt = [10, 700, 3000];
        int now = 0;
        foreach (int second in startedAt)
        {
            Pass(bench, second - now);
            StartAndStop(bench);
            now = second;
        }

        Pass(bench, 3609 - now);
        Assert.Equal(Refusal.TooManyStarts, bench.Controller.Refusals);
        Pass(bench, 1);
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
        StartAndStop(bench);

        // Now that of second 700 counts, and only that.
        Pass(bench, 4299 - 3610);
        Assert.Equal(Refusal.TooManyStarts, bench.Controller.Refusals);
        Pass(bench, 1);
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    [Fact]
    public void Starts_RefusedOnes_AreNotCounted()
    {
        Bench bench = Fit(settings => settings.StartsPerHour = 1);
        bench.Readings.SupplyVolts = 150f;
        bench.PressStart().Tick();
        bench.Readings.SupplyVolts = 250f;

        bench.Tick().PressStart().AssertCoils(true, 0);
    }

    [Fact]
    public void Starts_CountSwitchedOff_AreNeverTooMany()
    {
        Bench bench = Fit(settings => settings.StartsPerHour = 0);

        for (int i = 0; i < 100; i++) StartAndStop(bench);

        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    private static void AssertRefused(Refusal expected, Action<Bench>[] causes)
    {
        Bench bench = Fit(settings => settings.StartsPerHour = 1);
        bench.LineStuck = true;
        bench.StagesStuck = 4;
        bench.BrakeStuck = true;
        foreach (Action<Bench> cause in causes) cause(bench);

        bench.Tick();
        Assert.Equal(expected, bench.Controller.Refusals);
        Assert.False(bench.Outputs.ReadyLamp);

        bench.PressStart().AssertAllOff();
        bench.AssertWhy(Reason.StartRefused, (int)expected, 0f);
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    // Held is what was pressed where it could not start anything.
    private static void HoldStart(Bench bench)
    {
        bench.Readings.StartPressed = true;
        bench.Readings.StopPressed = true;
        bench.Tick();
        bench.Readings.StopPressed = false;
    }

    private static void StartOnce(Bench bench)
    {
        bench.LineStuck = false;
        StartAndStop(bench);
        bench.LineStuck = true;
    }

    private static void StartAndStop(Bench bench)
    {
        bench.PressStart();
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
        bench.PressStop().TickUntil(() => bench.Controller.Phase == Phase.Ready);
    }

    private static void Pass(Bench bench, int seconds)
    {
        for (int i = 0; i < seconds; i++) bench.Tick(Second);
    }

    private static Bench Fit(Action<Settings>? change = null) =>
        new Bench(settings =>
        {
            settings.SupplyLowVolts = 200f;
            settings.NominalSupplyVolts = 250f;
            settings.SupplyHighVolts = 300f;
            settings.RequiredPermissives = 3;
            settings.StandstillRadPerSec = 1f;
            settings.SpinningStart = false;
            settings.BrakeFitted = true;
            settings.BrakeOhms = 0.5f;
            settings.BrakeReleaseRadPerSec = 5f;
            settings.OverloadAmps = 350f;
            settings.ResistorJoules = 1_000_000f;
            change?.Invoke(settings);
        }).Tick(0);
}
