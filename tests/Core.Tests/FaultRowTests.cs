using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Every fault from everywhere where it can come: when it trips, what it keeps, what it switches off, what clears it.</summary>
public sealed class FaultRowTests
{
    private const int ContactTicks = 100;

    public static TheoryData<int> Cases => [.. Enumerable.Range(0, FaultCases.All.Length)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_WhereItCanCome_TripsAtItsDeadlineAndNotOneTickBefore(int number)
    {
        foreach ((FaultCase fault, Scene scene, Bench bench) in Provoked(number))
        {
            for (int tick = 1; tick < fault.Ticks; tick++)
            {
                bench.Tick(fault.TickMicroseconds);
                Assert.True(!bench.Controller.Fault.IsLatched, $"{fault} in {scene}: {bench.Controller.Fault.Id} on tick {tick}");
            }

            (Phase phase, int stage, bool line, int stages) = (bench.Controller.Phase, bench.Controller.Stage, bench.Outputs.CloseLine, bench.Outputs.CloseStages);
            bool field = bench.Outputs.CloseField;
            (float amps, float volts) = (float.NaN, float.NaN);
            bool lineRead = false;
            bench.Spoil = fault.Spoil + (r => (amps, volts, lineRead) = (r.ArmatureAmps, r.SupplyVolts, r.LineClosed));
            bench.Tick(fault.TickMicroseconds);
            // The field stays under a closed line, and under one that was told to close on the tick before.
            Assert.True((field && (line || lineRead)) == bench.Outputs.CloseField, $"{fault} in {scene}: field");

            FaultLatch latched = bench.Controller.Fault;
            Assert.Equal(
                (scene, fault.Id, fault.Value, fault.Limit, fault.Channel, phase, stage),
                (scene, latched.Id, Rounded(latched.Value), latched.Limit, latched.Channel, latched.InPhase, latched.InStage));
            Snapshot snapshot = latched.Snapshot;
            Assert.Equal((line, stages, amps, volts), (snapshot.LineCommanded, snapshot.StagesCommanded, snapshot.ArmatureAmps, snapshot.SupplyVolts));
            AssertOff(bench);
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_WhereItCannotCome_NothingHappens(int number)
    {
        FaultCase fault = FaultCases.All[number];
        foreach (Scene scene in fault.IsHarmless)
        {
            Bench bench = Spoilt(fault, scene);
            for (int tick = 1; tick <= fault.Ticks; tick++) bench.Tick(fault.TickMicroseconds);

            Assert.True(!bench.Controller.Fault.IsLatched, $"{fault} in {scene}: {bench.Controller.Fault.Id}");
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_AfterAnother_OverwritesNothing(int number)
    {
        FaultCase fault = FaultCases.All[number];
        Bench bench = Spoilt(fault, Scene.Tripped);

        for (int tick = 0; tick < Math.Max(fault.Ticks, ContactTicks + 1); tick++) bench.Tick(fault.TickMicroseconds);

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
        // What can be seen with everything open goes to the log; that of the trip itself stands there already.
        int entries = fault.Id == FaultId.EmergencyStop ? 2 : fault.Holds ? 1 : 0;
        Assert.Equal(entries, Logged.Faults(bench).Count(id => id == fault.Id));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_CauseThere_ResetIsRefusedIfItCanBeSeenAndStartIfItMatters(int number)
    {
        foreach ((FaultCase fault, Scene scene, Bench bench) in Tripped(number))
        {
            bench.Ticks(ContactTicks).PressReset();

            Assert.True(fault.Holds == (bench.Controller.Phase == Phase.Tripped), $"{fault} in {scene}: {bench.Controller.Phase}, {bench.Controller.Why.Reason}");
            if (fault.Holds)
            {
                bench.AssertWhy(Reason.ResetRefused, (int)fault.Id, 0f);
                continue;
            }

            Assert.Equal((scene, fault.Refusal), (scene, bench.Controller.Refusals));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Fault_CauseGone_ResetMakesReadyAndNothingRestarts(int number)
    {
        foreach ((FaultCase fault, Scene scene, Bench bench) in Tripped(number))
        {
            bench.Ticks(ContactTicks);
            bench.Spoil = null;
            bench.Controller.Heat.Motor.Level = 0f;
            bench.Controller.Heat.Resistor.Level = 0f;
            bench.BackEmf(0f).Tick().PressReset();

            Assert.Equal((scene, Phase.Ready, FaultId.None), (scene, bench.Controller.Phase, bench.Controller.Fault.Id));
            bench.Ticks(50).AssertAllOff();
            Assert.Equal((scene, Phase.Ready, Refusal.None), (scene, bench.Controller.Phase, bench.Controller.Refusals));
            Assert.True(bench.Outputs.ReadyLamp);
            Assert.False(bench.Outputs.CloseField || bench.Outputs.TrippedLamp);
        }
    }

    [Fact]
    public void Faults_OfTheTable_AllHaveACase()
    {
        // Settings are checked once and have no phase to come from.
        IEnumerable<FaultId> missing = Enum.GetValues<FaultId>().Except(FaultCases.All.Select(fault => fault.Id));

        Assert.Equal([FaultId.None, FaultId.SettingsInvalid], missing);
    }

    [Fact]
    public void SettingsInvalid_FromTheFirstTick_NothingClosesAndNoResetHelps()
    {
        Bench bench = new(settings => settings.StageCount = 0);

        bench.PressStart().PressReset().PressStart().Ticks(100);

        Assert.Equal((Phase.NotSetUp, FaultId.SettingsInvalid, (float)SettingId.StageCount), (bench.Controller.Phase, bench.Controller.Fault.Id, bench.Controller.Fault.Value));
        bench.AssertAllOff();
        Assert.True(bench.Outputs.TrippedLamp);
    }

    private static IEnumerable<(FaultCase Fault, Scene Scene, Bench Bench)> Provoked(int number)
    {
        FaultCase fault = FaultCases.All[number];
        foreach (Scene scene in fault.Trips) yield return (fault, scene, Spoilt(fault, scene));
    }

    private static IEnumerable<(FaultCase Fault, Scene Scene, Bench Bench)> Tripped(int number)
    {
        foreach ((FaultCase fault, Scene scene, Bench bench) in Provoked(number))
        {
            for (int tick = 0; tick < fault.Ticks; tick++) bench.Tick(fault.TickMicroseconds);
            Assert.Equal(fault.Id, bench.Controller.Fault.Id);
            yield return (fault, scene, bench);
        }
    }

    private static Bench Spoilt(FaultCase fault, Scene scene)
    {
        Bench bench = Scenes.Prepare(scene, fault.Change);
        bench.Spoil = fault.Spoil;
        fault.Provoke(bench);
        return bench;
    }

    // Off on the tick of the trip and from then on; the field follows once the line is seen open.
    private static void AssertOff(Bench bench)
    {
        for (int tick = 0; tick < 2 * ContactTicks; tick++)
        {
            bool lineRead = false;
            Assert.Equal(Phase.Tripped, bench.Controller.Phase);
            bench.AssertAllOff();
            Assert.True(bench.Outputs.TrippedLamp && !bench.Outputs.ReadyLamp && !bench.Outputs.RunningLamp);
            bool field = bench.Outputs.CloseField;
            Action<Readings>? spoil = bench.Spoil;
            bench.Spoil = spoil + (r => lineRead = r.LineClosed);
            bench.Tick();
            bench.Spoil = spoil;
            Assert.Equal(field && lineRead, bench.Outputs.CloseField);
        }
    }

    private static float Rounded(float number) => MathF.Round(number, 3) is var rounded && MathF.Abs(number) > 1f ? rounded : number;
}
