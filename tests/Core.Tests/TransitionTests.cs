using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;
using static StarterCtl.Core.Phase;

namespace StarterCtl.Core.Tests;

/// <summary>Every way from one phase to another: each is gone once, and nothing in these tests goes another.</summary>
public sealed class TransitionTests
{
    private static readonly (Phase From, Phase To, string How, Func<Bench> Go)[] All =
    [
        (Ready, NotSetUp, "settings that fail their check", () => new Bench(settings => settings.StageCount = 0)),
        (Ready, FieldBuilding, "start, with a field to build", () => Scenes.Prepare(Scene.FieldBuilding)),
        (Ready, Accelerating, "start, without one", () => new Bench().Tick().PressStart()),
        (Ready, Tripped, "a fault", () => Trip(Scene.Ready)),
        (FieldBuilding, Accelerating, "the field stands", () => Scenes.Prepare(Scene.LineClosing)),
        (FieldBuilding, Stopping, "stop", () => Scenes.Prepare(Scene.FieldBuilding).PressStop()),
        (FieldBuilding, Tripped, "a fault", () => Trip(Scene.FieldBuilding)),
        (Accelerating, Running, "the last stage is proven", () => Scenes.Prepare(Scene.Running)),
        (Accelerating, Stopping, "stop", () => Scenes.Prepare(Scene.Accelerating).PressStop()),
        (Accelerating, Tripped, "a fault", () => Trip(Scene.Accelerating)),
        (Running, Accelerating, "a dip that puts resistance back", Dip),
        (Running, Stopping, "stop", () => Scenes.Prepare(Scene.Stopping)),
        (Running, Tripped, "a fault", () => Trip(Scene.Running)),
        (Stopping, Ready, "everything open, nothing to brake", () => Scenes.Prepare(Scene.LineClosing).PressStop().TickUntil(Reason.WaitingForStart)),
        (Stopping, Braking, "everything open, the shaft turns", () => Scenes.Prepare(Scene.Braking)),
        (Stopping, Tripped, "a fault", () => Trip(Scene.BrakeDelay)),
        (Braking, Stopping, "the shaft is slow", () => Scenes.Prepare(Scene.Braking).BackEmf(0f).Tick()),
        (Braking, Tripped, "a fault", () => Trip(Scene.Braking)),
        (Tripped, Ready, "reset, the cause gone", () => Scenes.Prepare(Scene.Tripped).PressReset()),
    ];

    public static TheoryData<int> Ways => [.. Enumerable.Range(0, All.Length)];

    [Theory]
    [MemberData(nameof(Ways))]
    public void Transition_EveryWay_IsTheLastOneGone(int number)
    {
        (Phase from, Phase to, string how, Func<Bench> go) = All[number];

        Bench bench = go();

        Assert.True(bench.Controller.Phase == to, $"{how}: {bench.Controller.Phase}");
        Assert.Equal((from, to), Logged.Transitions(bench)[^1]);
    }

    [Fact]
    public void Transitions_OfTheseTests_AreExactlyTheListed()
    {
        HashSet<(Phase, Phase)> seen = [.. All.SelectMany(way => Logged.Transitions(way.Go()))];

        Assert.Equal(All.Select(way => (way.From, way.To)).Order(), seen.Order());
    }

    [Fact]
    public void Transitions_OfThePhaseTable_AreTheListedWithAFieldToBuild()
    {
        HashSet<(Phase, Phase)> seen = [.. PhaseTableTests.EveryCell().SelectMany(Logged.Transitions)];

        Assert.Equal(All.Select(way => (way.From, way.To)).Where(way => way != (Ready, Accelerating)).Order(), seen.Order());
    }

    [Fact]
    public void Transitions_OfTheFaultRows_AreAmongTheListed()
    {
        HashSet<(Phase, Phase)> listed = [.. All.Select(way => (way.From, way.To))];
        foreach (FaultCase fault in FaultCases.All)
        {
            foreach (Scene scene in fault.Trips.Concat(fault.IsHarmless))
            {
                Bench bench = Scenes.Prepare(scene, fault.Change);
                bench.Spoil = fault.Spoil;
                fault.Provoke(bench);
                for (int tick = 0; tick < fault.Ticks; tick++) bench.Tick(fault.TickMicroseconds);

                Assert.All(Logged.Transitions(bench), way => Assert.Contains(way, listed));
            }
        }
    }

    private static Bench Trip(Scene scene) => Scenes.Prepare(scene).PressEmergencyStop();

    private static Bench Dip()
    {
        Bench bench = Scenes.Prepare(Scene.Running).BackEmf(200f);
        bench.Readings.SupplyVolts = 199f;
        return bench.Tick();
    }
}
