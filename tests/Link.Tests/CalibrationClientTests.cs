using System;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Firmware;
using StarterCtl.Firmware.Tests.Link;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>The desk's end of calibration, noise check and memory, against the firmware's own.</summary>
public sealed class CalibrationClientTests : IDisposable
{
    private const CalibrationChannel Amps = CalibrationChannel.ArmatureAmps;

    private static readonly LinkTiming Timing = new() { Answer = TimeSpan.FromMilliseconds(100), Tries = 200 };

    private readonly LinkRig _rig = new();
    private readonly BoardStream _line;

    public CalibrationClientTests()
    {
        _line = new BoardStream(_rig);
        // At rest for a second.
        _rig.Step(1001);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Calibrate_StepByStep_EndsWithWhatWasTaken()
    {
        await using BoardClient client = await Connect();
        _rig.Bench.Show(Amps, 2060);
        Assert.Null((await Do(client, CalibrationStep.Begin)).New);
        BoardCalibration zero = await Do(client, CalibrationStep.TakeZero);
        Assert.Equal(CalibrationState.ZeroTaken, zero.State);
        Assert.Equal(2060f, zero.New!.OffsetCounts, 0.01f);
        _rig.Bench.Show(Amps, 2560);
        BoardCalibration both = await Do(client, CalibrationStep.TakeSpan, 240f);
        Assert.Equal((0.5f, 4095, 2), (both.InForce.UnitsPerCount, both.FullScaleCounts, both.SpreadCounts));

        BoardCalibration saved = await Do(client, CalibrationStep.Save);

        Assert.Equal((both.New, new OffsetAndGain(2048f, 0.5f)), (saved.InForce, saved.Former));
        Assert.Equal(0.48f, saved.InForce.UnitsPerCount, 1e-4f);
        Assert.Equal(new OffsetAndGain(2048f, 0.5f), (await Do(client, CalibrationStep.Undo)).InForce);
    }

    [Theory]
    [InlineData(2458, 0, 0f, "calibration of ArmatureAmps, TakeZero: the offset is 2458 counts (allowed: 2048 and up to 10 % of the range, 409.5 counts more or less): was it really zero?")]
    [InlineData(2048, 2300, 100f, "calibration of ArmatureAmps, TakeSpan: the second point, 2300 counts, is too near the zero at 2048 (allowed: 10 % of the range, 409.5 counts away or more)")]
    [InlineData(2048, 3048, 1200f, "calibration of ArmatureAmps, TakeSpan: the gain would be less than half or more than twice the nominal 0.5 per count, or of the other sign: wrong true value, or wrong parts")]
    public async Task Calibrate_Refused_SaysWhatWasFoundAndWhatIsAllowed(int zero, int span, float amps, string words)
    {
        await using BoardClient client = await Connect();
        await Do(client, CalibrationStep.Begin);
        _rig.Bench.Show(Amps, zero);

        LinkException refused = await Assert.ThrowsAsync<LinkException>(async () =>
        {
            await Do(client, CalibrationStep.TakeZero);
            _rig.Bench.Show(Amps, span);
            await Do(client, CalibrationStep.TakeSpan, amps);
        });

        Assert.Equal(words, refused.Message);
    }

    [Theory]
    [InlineData(CalibrationReason.Noisy, "the samples differ by 100 counts (allowed: 2 % of the range, 81.9 counts): see the noise check")]
    [InlineData(CalibrationReason.NotAtRest, "allowed only once every coil has been off and every contact open for 1 s")]
    [InlineData((CalibrationReason)99, "reason 99, which this program does not know")]
    public void Reason_InWords_HasItsNumbers(CalibrationReason reason, string words) => Assert.Equal(words, CalibrationText.Of(Refused(reason)));

    [Fact]
    public void Reason_EveryOne_HasWordsOfItsOwn()
    {
        CalibrationReason[] reasons = Enum.GetValues<CalibrationReason>();
        string[] words = Array.ConvertAll(reasons, reason => CalibrationText.Of(Refused(reason)));

        Assert.Distinct(words);
        Assert.All(words, text => Assert.DoesNotContain("does not know", text.Replace("does not know this step", "", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Noise_OfARun_IsThatOfItsSituations()
    {
        await using BoardClient client = await Connect();
        await client.BeginNoiseAsync(Cancellation);
        _line.Step(300);
        _rig.PermitGiven = true;
        await client.StartAsync(Cancellation);
        _line.Step(700);
        await client.StopAsync(Cancellation);
        _line.Step(200);
        await client.EndNoiseAsync(Cancellation);

        ChannelNoise noise = await client.ReadNoiseAsync(Amps, Cancellation);

        Assert.Equal((Amps, 4095, 2, 2), (noise.Channel, noise.FullScaleCounts, noise.Rest.Spread, noise.Release.LargestStep));
        Assert.Equal(Math.Sqrt(2.0 / 3.0), noise.Rest.Deviation, 0.01);
        Assert.True(noise.Rest.Count >= 300, $"{noise.Rest.Count}");
        Assert.InRange(noise.CoilsOn.Count, 150, 300);
        Assert.Equal(100, noise.Release.Count);
        Assert.Empty(NoiseRules.Judge(noise));
    }

    [Fact]
    public async Task Noise_OfAChannelThatIsNotThere_IsRefused()
    {
        await using BoardClient client = await Connect();

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => client.ReadNoiseAsync(CalibrationChannel.FieldAmps, Cancellation));

        Assert.Equal("noise of FieldAmps (Rest): out of range", refused.Message);
    }

    [Fact]
    public async Task Memory_IsWhatTheBoardHolds()
    {
        await using BoardClient client = await Connect();

        BoardMemoryState memory = await client.ReadMemoryAsync(Cancellation);

        Assert.Equal(new BoardMemoryState(StoreState.Blank, StoreState.Blank, ResetCause.Watchdog, ResetCause.Unknown, 1, StartLockReason.None), memory);
    }

    public void Dispose() => _line.Dispose();

    private static BoardCalibration Refused(CalibrationReason reason)
    {
        OffsetAndGain pair = new(2048f, 0.5f);
        return new BoardCalibration(Amps, CalibrationState.Begun, reason, pair, pair, null, pair, 2500f, 100, 4095);
    }

    private static Task<BoardCalibration> Do(BoardClient client, CalibrationStep step, float trueUnits = 0f) =>
        client.CalibrateAsync(Amps, step, trueUnits, Cancellation);

    private Task<BoardClient> Connect() => BoardClient.ConnectAsync(_line, Timing, Cancellation);
}
