using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>Speed and direction from a counter that goes up and down. Expected values are arithmetic.</summary>
public sealed class EncoderSpeedTests
{
    [Theory]
    [InlineData(80)]
    [InlineData(-80)]
    [InlineData(0.5)]
    [InlineData(-0.5)]
    public void Steady_EitherDirection_ErrorIsAtMostResolutionBySpan(double radPerSec)
    {
        PulseRig rig = new(PulseRig.Sixty(), counterStart: int.MaxValue - 100_000, countStart: int.MinValue + 20, isEncoder: true);
        rig.Steady(0, 3e6, radPerSec).Run(1);

        List<(double, float, bool IsValid)> shown = rig.Run(3);

        Assert.All(shown, row => Assert.True(row.IsValid));
        Assert.InRange(PulseRig.WorstError(shown, radPerSec), 0, 1.0 / 5000 + 1e-6);
    }

    [Fact]
    public void Reversal_ThroughZero_ShowsTheSignOfTheNewDirectionWithinThreeEdges()
    {
        // 20 rad/s forwards to 1 s, backwards from 1.01 s: edges each 5.236 ms.
        PulseRig rig = new(PulseRig.Sixty(), isEncoder: true);
        rig.Steady(0, 1e6, 20).Steady(1.01e6, 2e6, -20).Run(1);
        Assert.True(rig.Sensor.RadPerSec > 19.9f);

        List<(double Seconds, float RadPerSec, bool IsValid)> shown = rig.Run(2);

        Assert.InRange(shown.First(row => row.RadPerSec < -19.9f).Seconds, 1.01, 1.01 + 3 * 0.005236 + 0.001);
        Assert.All(shown, row => Assert.InRange(row.RadPerSec, -20.01, 20.01));
    }

    [Fact]
    public void OneEdgeToAndFro_NoCurrent_IsZero()
    {
        PulseRig rig = new(PulseRig.Sixty(), isEncoder: true) { ArmatureAmps = 0f };
        for (int n = 0; n < 300; n++) rig.Edge(n * 10_000, n % 2 == 0 ? 1 : -1);
        rig.Run(1);

        // One edge's angle of 0.105 rad in 10 ms is what it can be wrong by.
        Assert.All(rig.Run(3), row => Assert.InRange(row.RadPerSec, -10.48, 10.48));
        Assert.Equal((true, 0f), (rig.Run(6).Last().IsValid, rig.Sensor.RadPerSec));
    }

    [Fact]
    public void EdgesEnd_CurrentFlows_IsUnknownAndNotZero()
    {
        PulseRig rig = new(PulseRig.Sixty(), isEncoder: true);
        rig.Steady(0, 1e6, -50).Run(1);

        // Four edges at 50 rad/s are 8.4 ms.
        Assert.All(rig.Run(4).Skip(12), row => Assert.False(row.IsValid));
    }

    /// <summary>An edge at 3 s and the last one before it, at 1 s, are 0.1 rad in 2 s: no speed that the shaft ever had.</summary>
    [Fact]
    public void EdgesBeginAgain_BehindAnUnknownSpeed_TheFirstSpeedIsTrue()
    {
        PulseRig rig = new(PulseRig.Sixty(), isEncoder: true);
        rig.Steady(0, 1e6, 80).Steady(3e6, 4e6, 80).Run(2.9);
        Assert.False(rig.Sensor.IsValid);

        List<(double Seconds, float RadPerSec, bool IsValid)> known = [.. rig.Run(4).Where(row => row.IsValid)];

        Assert.InRange(known[0].Seconds, 3, 3.01);
        Assert.All(known, row => Assert.InRange(row.RadPerSec, 79.9, 80.1));
    }
}
