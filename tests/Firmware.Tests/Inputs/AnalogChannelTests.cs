using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>
/// A current sensor of -1000 to 1000 A at a 12 bit converter: 2048 counts at 0 A, 0.5 A a count, sound from 20 to 4075 counts.
/// Expected values are arithmetic.
/// </summary>
public sealed class AnalogChannelTests : IAnalogInput
{
    private const int Period = 1000;

    private readonly AnalogSetup _setup = new()
    {
        Calibration = new ChannelCalibration { OffsetCounts = 2048f, UnitsPerCount = 0.5f },
        LowestCounts = 20,
        HighestCounts = 4075,
    };

    private int _counts = 2048;

    public int FullScale => 4095;

    public int Read() => _counts;

    [Theory]
    [InlineData(2048, 0f)]
    [InlineData(2448, 200f)]
    [InlineData(1648, -200f)]
    [InlineData(20, -1014f)]
    [InlineData(4075, 1013.5f)]
    public void Counts_OfASoundSensor_AreUnits(int counts, float amps)
    {
        AnalogChannel channel = Shown(counts);

        Assert.Equal((AnalogFault.None, amps), (channel.Fault, channel.Units));
    }

    [Theory]
    [InlineData(19, AnalogFault.TooFewCounts)]
    [InlineData(0, AnalogFault.TooFewCounts)]
    [InlineData(4076, AnalogFault.TooManyCounts)]
    [InlineData(4095, AnalogFault.TooManyCounts)]
    [InlineData(-1, AnalogFault.NotRead)]
    [InlineData(4096, AnalogFault.NotRead)]
    public void Counts_OfNoSoundSensor_AreNoNumber(int counts, AnalogFault fault)
    {
        AnalogChannel channel = Shown(counts);

        Assert.Equal((fault, float.NaN), (channel.Fault, channel.Units));
        Assert.Equal(counts, channel.Counts);
    }

    [Fact]
    public void Built_BeforeItIsRead_HasNoNumber()
    {
        AnalogChannel channel = new(this, _setup);

        Assert.Equal((AnalogFault.NotRead, float.NaN), (channel.Fault, channel.Units));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 2)]
    [InlineData(5, 3)]
    public void WireBreaks_ShowsAfterHalfTheMediansSamples(int medianSamples, int shownAt)
    {
        _setup.MedianSamples = medianSamples;
        AnalogChannel channel = Shown(2448);

        _counts = 0;
        for (int sample = 1; sample <= 6; sample++)
        {
            channel.Update(Period);
            Assert.Equal(sample >= shownAt ? AnalogFault.TooFewCounts : AnalogFault.None, channel.Fault);
        }
    }

    [Fact]
    public void OneWrongSample_DoesNotShow()
    {
        AnalogChannel channel = Shown(2448);

        _counts = 4095;
        channel.Update(Period);
        _counts = 2448;
        for (int i = 0; i < 5; i++)
        {
            channel.Update(Period);
            Assert.Equal(200f, channel.Units);
        }
    }

    [Fact]
    public void LiveZero_FourToTwentyMilliamperes_BrokenWireIsNoZeroVolts()
    {
        // 4 mA at 819 counts is 0 V, 20 mA at 4095 is 400 V; a wire counts as broken below 3.6 mA, 737 counts.
        _setup.Calibration = new ChannelCalibration { OffsetCounts = 819f, UnitsPerCount = 400f / 3276f };
        _setup.LowestCounts = 737;
        _setup.HighestCounts = 4095;

        Assert.Equal(0f, Shown(819).Units);
        Assert.Equal(400f, Shown(4095).Units, 1e-3f);
        Assert.Equal(AnalogFault.TooFewCounts, Shown(736).Fault);
    }

    [Fact]
    public void Fault_Gone_BeginsAnewWithoutTheOldFilter()
    {
        _setup.FilterMicroseconds = 50_000;
        AnalogChannel channel = Shown(2048);
        _counts = -1;
        channel.Update(Period);
        _counts = 2448;
        channel.Update(Period);

        Assert.Equal(200f, channel.Units);
    }

    [Fact]
    public void Filter_OfARamp_AddsItsTimeConstantToTheMediansSample()
    {
        // 2 counts, 1 A, in each period of 1 ms: 10 ms and one sample behind are 11 A.
        _setup.FilterMicroseconds = 10_000;
        AnalogChannel channel = Shown(2048);
        for (int i = 1; i <= 400; i++)
        {
            _counts = 2048 + 2 * i;
            channel.Update(Period);
        }

        Assert.Equal(400f - 11f, channel.Units, 0.01f);
    }

    [Fact]
    public void Range_SensorMountedTheOtherWayRound_IsTurnedToo()
    {
        _setup.Calibration.UnitsPerCount = -0.5f;

        Assert.Equal((-1013.5f, 1014f), (_setup.LowestUnits, _setup.HighestUnits));
        Assert.Equal(-200f, Shown(2448).Units);
    }

    private AnalogChannel Shown(int counts)
    {
        AnalogChannel channel = new(this, _setup);
        _counts = counts;
        for (int i = 0; i < 6; i++) channel.Update(Period);
        return channel;
    }
}
