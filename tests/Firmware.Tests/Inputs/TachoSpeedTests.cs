using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>
/// A tacho generator of 0.1 rad/s per count about 2048 counts, believed down to 2 rad/s; time-out 1 s, standstill 2 s, no current up to 1 A.
/// Expected values are arithmetic.
/// </summary>
public sealed class TachoSpeedTests : IAnalogInput
{
    private readonly TachoSpeed _sensor;
    private int _counts = 2048;
    private float _amps;

    public TachoSpeedTests()
    {
        AnalogSetup setup = new() { LowestCounts = 205, HighestCounts = 3890, MedianSamples = 1 };
        setup.Calibration.OffsetCounts = 2048f;
        setup.Calibration.UnitsPerCount = 0.1f;
        _sensor = new TachoSpeed(new AnalogChannel(this, setup), new StandstillSetup { LeastRadPerSec = 2f, ZeroAmps = 1f });
    }

    public int FullScale => 4095;

    public int Read() => _counts;

    [Theory]
    [InlineData(1000)]
    [InlineData(-1000)]
    [InlineData(21)]
    [InlineData(-21)]
    public void AboveTheLeastSpeed_WithOrWithoutCurrent_IsWhatIsRead(int counts)
    {
        _counts = 2048 + counts;
        Assert.All(Run(5), row => Assert.Equal((true, 0.1f * counts), row));

        _amps = 50f;
        Assert.All(Run(5), row => Assert.Equal((true, 0.1f * counts), row));
    }

    /// <summary>A wire that has come off between generator and divider reads 0 rad/s, and so does a coupling that slips.</summary>
    [Fact]
    public void ReadingFallsToZero_CurrentFlows_CountsUntilTheTimeOutAndIsUnknownThen()
    {
        (_counts, _amps) = (3048, 50f);
        Run(1);
        _counts = 2048;

        List<(bool IsValid, float RadPerSec)> shown = Run(10);

        Assert.All(shown.Take(1000), row => Assert.Equal((true, 0f), row));
        Assert.All(shown.Skip(1000), row => Assert.False(row.IsValid));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(-20)]
    public void BelowTheLeastSpeed_NoCurrent_IsUnknownBetweenTimeOutAndStandstillAndZeroThen(int counts)
    {
        _counts = 3048;
        Run(1);
        _counts = 2048 + counts;

        List<(bool IsValid, float RadPerSec)> shown = Run(5);

        Assert.All(shown.Take(1000), row => Assert.Equal((true, 0.1f * counts), row));
        Assert.All(shown.Skip(1000).Take(1000), row => Assert.False(row.IsValid));
        Assert.All(shown.Skip(2000), row => Assert.Equal((true, 0f), row));
    }

    /// <summary>From 20 rad/s down by 1 % a period: above 2 rad/s for 0.229 s, and above 2 rad/s it never counts as standing.</summary>
    [Fact]
    public void CoastingSlowly_NeverZeroBeforeTheStandstillTimeBelowTheLeastSpeed()
    {
        double radPerSec = 20;
        List<(double True, bool IsValid, float RadPerSec)> shown = [];
        for (int i = 0; i < 3000; i++, radPerSec *= 0.99)
        {
            _counts = 2048 + (int)(radPerSec * 10);
            shown.Add((radPerSec, Step().IsValid, _sensor.RadPerSec));
        }

        int crossed = shown.FindIndex(row => row.RadPerSec <= 2f);
        Assert.InRange(crossed, 220, 232);
        Assert.All(shown.Take(crossed + 1000), row => Assert.InRange(row.True - row.RadPerSec, -1e-5, 0.101));
        Assert.All(shown.Skip(crossed + 1000).Take(1000), row => Assert.False(row.IsValid));
        Assert.Equal((true, 0f), (shown[^1].IsValid, shown[^1].RadPerSec));
    }

    [Fact]
    public void Standing_ThenCurrent_IsKnownUntilTheTimeOut()
    {
        Run(3);
        Assert.Equal((true, 0f), (_sensor.IsValid, _sensor.RadPerSec));
        _amps = 50f;

        List<(bool IsValid, float RadPerSec)> shown = Run(3);

        Assert.All(shown.Take(1000), row => Assert.Equal((true, 0f), row));
        Assert.All(shown.Skip(1000), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void Standing_ThenMoving_IsWhatIsReadFromTheFirstReadingOn()
    {
        Run(3);
        (_counts, _amps) = (2053, 50f);
        Assert.Equal((true, 0.5f), Step());
        _counts = 2148;
        Assert.All(Run(3), row => Assert.Equal((true, 10f), row));
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(1.1f)]
    [InlineData(-1.1f)]
    public void AtPowerUp_CurrentOrNoCurrentKnown_IsNeverZero(float amps)
    {
        _amps = amps;

        Assert.All(Run(10), row => Assert.False(row.IsValid));
    }

    [Fact]
    public void AtPowerUp_NoCurrent_IsUnknownUntilTheStandstillTime()
    {
        List<(bool IsValid, float RadPerSec)> shown = Run(3);

        Assert.All(shown.Take(2000), row => Assert.False(row.IsValid));
        Assert.All(shown.Skip(2000), row => Assert.Equal((true, 0f), row));
    }

    /// <summary>A contact that comes and goes: what it shows between is no proof of anything.</summary>
    [Fact]
    public void WireBrokenAndMended_BelowTheLeastSpeed_IsUnknownUntilItStands()
    {
        Run(3);
        _counts = 0;
        Assert.False(Step().IsValid);
        _counts = 2048;

        List<(bool IsValid, float RadPerSec)> shown = Run(3);

        Assert.All(shown.Take(2000), row => Assert.False(row.IsValid));
        Assert.All(shown.Skip(2000), row => Assert.Equal((true, 0f), row));
    }

    private (bool IsValid, float RadPerSec) Step()
    {
        _sensor.Update(0, 1000, _amps);
        return (_sensor.IsValid, _sensor.RadPerSec);
    }

    private List<(bool IsValid, float RadPerSec)> Run(int seconds)
    {
        List<(bool, float)> shown = [];
        for (int i = 0; i < seconds * 1000; i++) shown.Add(Step());
        return shown;
    }
}
