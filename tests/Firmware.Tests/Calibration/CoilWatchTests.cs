using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>When a board counts as at rest, and what a sample is a sample of. Times: common practice, no source.</summary>
public sealed class CoilWatchTests
{
    private const int Millisecond = 1000;

    private readonly CoilWatch _watch = new();
    private readonly Readings _readings = new();

    [Fact]
    public void Rest_IsASecondWithEverythingOff()
    {
        Step(999, line: false);
        Assert.False(_watch.IsAtRest);
        Step(1, line: false);

        Assert.Equal((true, NoiseSituation.Rest), (_watch.IsAtRest, _watch.Situation));
    }

    [Theory]
    [InlineData("line")]
    [InlineData("stage")]
    [InlineData("brake")]
    [InlineData("field")]
    [InlineData("stale")]
    public void Rest_EndsAtAnyContactThatIsNotProvenOpen(string contact)
    {
        Step(2000, line: false);
        _readings.LineClosed = contact == "line";
        _readings.StagesClosed = contact == "stage" ? 0x8000 : 0;
        _readings.BrakeClosed = contact == "brake";
        _readings.FieldClosed = contact == "field";
        _readings.Stale = contact == "stale";

        Step(1, line: false);

        Assert.False(_watch.IsAtRest);
    }

    [Theory]
    [InlineData("line")]
    [InlineData("stage")]
    [InlineData("brake")]
    [InlineData("field")]
    public void Rest_EndsAtAnyCoil(string coil)
    {
        Step(2000, line: false);
        Outputs outputs = new()
        {
            CloseLine = coil == "line",
            CloseStages = coil == "stage" ? 0x8000 : 0,
            CloseBrake = coil == "brake",
            CloseField = coil == "field",
        };

        _watch.Step(Millisecond, _readings, outputs);

        Assert.False(_watch.IsAtRest);
    }

    [Fact]
    public void Situations_OfARun_ComeInTheirOrder()
    {
        Step(2000, line: false);
        Step(1, line: true);
        Assert.Equal(NoiseSituation.None, _watch.Situation);
        Step(499, line: true);
        Assert.Equal(NoiseSituation.None, _watch.Situation);
        Step(1, line: true);
        Assert.Equal(NoiseSituation.CoilsOn, _watch.Situation);
        Step(1, line: false);
        Assert.Equal(NoiseSituation.Release, _watch.Situation);
        Step(99, line: false);
        Assert.Equal(NoiseSituation.Release, _watch.Situation);
        Step(1, line: false);
        Assert.Equal(NoiseSituation.None, _watch.Situation);
        Step(900, line: false);

        Assert.Equal(NoiseSituation.Rest, _watch.Situation);
    }

    [Theory]
    [InlineData(int.MinValue)]
    [InlineData(int.MaxValue)]
    public void Time_OfAnySize_NeverTakesARestAway(int microseconds)
    {
        Step(2000, line: false);
        for (int i = 0; i < 5; i++)
        {
            _watch.Step(microseconds, _readings, new Outputs());
            Assert.True(_watch.IsAtRest);
        }
    }

    private void Step(int milliseconds, bool line)
    {
        Outputs outputs = new() { CloseLine = line };
        for (int i = 0; i < milliseconds; i++) _watch.Step(Millisecond, _readings, outputs);
    }
}
