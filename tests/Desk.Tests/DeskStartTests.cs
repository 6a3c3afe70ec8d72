using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Desk.Tests;

/// <summary>Whole starts of shipped cases on the whole firmware, against the simulator's start of the same case.</summary>
public sealed class DeskStartTests
{
    /// <summary>
    /// The two differ by what stands between machine and controller: a median that delays by a period, contacts that are debounced for 5 ms,
    /// converters of 12 bits whose steps of the speed are worth up to 2 ms of this acceleration. No source: worked out from the wiring.
    /// </summary>
    [Theory]
    [InlineData("bench-rig.toml")]
    [InlineData("line-shaft.toml")]
    public void Start_OnTheWholeFirmware_CutsOutWithin5PeriodsOfTheSimulator(string caseName)
    {
        using DeskBench bench = new(caseName);
        bench.Start().Until(() => bench.Controller.Phase == Phase.Running, 5);
        RunResult run = CaseRunner.Run(bench.Case, null, TestContext.Current.CancellationToken).Result;

        Assert.Equal((Phase.Running, FaultId.None), (bench.Controller.Phase, bench.Controller.Fault.Id));
        Assert.Equal(run.Cutouts.Select(cutout => cutout.Stage), bench.Cutouts.Select(cutout => cutout.Stage));
        Assert.All(run.Cutouts.Zip(bench.Cutouts), pair => Assert.Equal(pair.First.Seconds, pair.Second.Seconds, 0.0051));
        // 5 ms of the fastest stage are 0.4 % of its speed and of its current.
        Assert.Equal(1, bench.Board.Plant.PeakAmps / run.PeakAmps, 0.004);
    }

    [Fact]
    public void Start_Twice_TakesTheSameCourse()
    {
        using DeskBench first = new("bench-rig.toml");
        using DeskBench second = new("bench-rig.toml");

        first.Start().Until(() => first.Controller.Phase == Phase.Running, 5);
        second.Start().Until(() => second.Controller.Phase == Phase.Running, 5);

        Assert.Equal(2, first.Cutouts.Count);
        Assert.Equal(first.Cutouts, second.Cutouts);
        Assert.Equal((first.Board.Plant.Seconds, first.Board.Plant.ArmatureAmps), (second.Board.Plant.Seconds, second.Board.Plant.ArmatureAmps));
    }
}
