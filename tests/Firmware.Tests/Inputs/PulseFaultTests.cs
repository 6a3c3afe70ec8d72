using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>Edges that are missing or too many. Expected values are arithmetic; the tolerances are the product's own.</summary>
public sealed class PulseFaultTests
{
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.6)]
    public void ExtraEdge_OnePulseATurn_DoesNotShow(double part)
    {
        PulseRig rig = new();
        rig.Steady(0, 3e6, 100).Edge(rig.EdgeAt(20) + part * 62_832).Run(1);

        List<(double, float, bool IsValid)> shown = rig.Run(3);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 100), 0, 0.02);
        Assert.Equal((0, 1), rig.PutRight);
    }

    [Fact]
    public void MissingEdge_OnePulseATurn_CostsTheDecelerationOfOneTurn()
    {
        // 62.8 ms at 50 rad/s2 are 3.1 rad/s.
        PulseRig rig = new();
        rig.Steady(0, 3e6, 100).Without(20).Run(1);

        List<(double, float, bool IsValid)> shown = rig.Run(3);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 100), 0.02, 0.065);
        Assert.Equal((1, 0), rig.PutRight);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void OneWrongEdge_Anywhere_CostsAtMostTwoThirdsOfAPeriodInTheSpan(bool isExtra)
    {
        Gen.Select(Gen.Double[120, 6000], Gen.Double[0.01, 0.99], Gen.Int[0, 1000]).Sample(
            (radPerSec, part, turns) =>
            {
                PulseRig rig = new();
                double period = 2 * Math.PI / radPerSec * 1e6;
                rig.Steady(0, 2.2e6, radPerSec);
                int edge = (int)(1e6 / period) + turns % 10;
                if (isExtra) rig.Edge(rig.EdgeAt(edge) + part * period);
                else rig.Without(edge);
                rig.Run(0.5);

                List<(double, float, bool IsValid)> shown = rig.Run(2.2);

                double edgesInSpan = Math.Max(1, Math.Floor(5000 / period));
                Assert.All(shown, row => Assert.True(row.IsValid));
                Assert.InRange(PulseRig.WorstError(shown, radPerSec), 0, 2.0 / 3 / edgesInSpan);
            },
            iter: 150, threads: 1);
    }

    [Fact]
    public void MissingTooth_EveryTurn_ShaftStaysKnown()
    {
        // 60 teeth, one broken: the angle between two edges is doubled once a turn.
        PulseRig rig = new(PulseRig.Sixty());
        rig.Steady(0, 3e6, 50);
        for (int turn = 20; turn >= 1; turn--) rig.Without(60 * turn);
        rig.Run(0.1);

        List<(double, float, bool IsValid)> shown = rig.Run(2.4);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 50), 0, 0.1);
        Assert.InRange(rig.PutRight.Missing, 15, 20);
    }

    [Fact]
    public void UnevenSpacing_TenPercent_IsNoWrongEdge()
    {
        PulseSetup setup = PulseRig.OneATurn();
        setup.EdgesPerTurn = 2;
        PulseRig rig = new(setup);
        double half = Math.PI / 100 * 1e6;
        for (int n = 0; n < 100; n++) rig.Edge(n * half + (n % 2 == 0 ? 0 : 0.1 * half));
        rig.Run(1);

        List<(double, float, bool IsValid)> shown = rig.Run(3);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 100), 0.08, 0.12);
        Assert.Equal((0, 0), rig.PutRight);
    }

    [Fact]
    public void NoiseOnTheCable_ManyEdgesAtRandom_IsUnknownAndNotAFastShaft()
    {
        // 20 edges where one belongs: bursts of noise on each of them, from 1.5 s on.
        PulseRig rig = new();
        rig.Steady(0, 3e6, 100);
        Random random = new(7);
        for (int n = 0; n < 450; n++) rig.Edge(1.5e6 + random.NextDouble() * 1.5e6);
        rig.Run(1.5);

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(1.6);

        Assert.Contains(shown, row => !row.IsValid);
        Assert.InRange(PulseRig.WorstError(shown.TakeWhile(row => row.IsValid), 100), 0, 0.5);
    }

    [Fact]
    public void SpeedHalvesAtOnce_AsNoShaftCan_IsUnknownUntilTheNewOneIsInOrder()
    {
        PulseRig rig = new(PulseRig.Sixty());
        rig.Steady(0, 1e6, 100).Steady(1e6, 2e6, 43).Run(1);

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(2);

        Assert.Contains(shown, row => !row.IsValid);
        Assert.All(shown.Where(row => row.Seconds > 1.05), row => Assert.InRange(row.RadPerSec, 42.98, 43.02));
    }

    [Fact]
    public void Bounce_EachEdgeTwice_IsPutRightWhereTheFirstPeriodsWereSound()
    {
        // A relay contact at the pick-up's input that bounces once within 300 us, from the 16th turn to the 18th.
        PulseRig rig = new();
        rig.Steady(0, 3e6, 100);
        foreach (int turn in new[] { 16, 17, 18 }) rig.Edge(turn * 62_831.85 + 300);
        rig.Run(0.9);

        List<(double, float, bool IsValid)> shown = rig.Run(3);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, 100), 0, 0.05);
    }
}
