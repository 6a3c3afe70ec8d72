using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Records;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>The same readings make the same decisions; a reading or a decision that was changed is found at its row.</summary>
public sealed class ReplayTests
{
    private static readonly string[] Names = [.. ShippedCase.Names];

    public static TheoryData<string> Shipped { get; } = [.. Names];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Of_AShippedCase_IsTheSameOnEveryTick(string name)
    {
        FullRateRecord record = FullRateRecord.Of(name + ".toml", ShippedCase.Text(name));

        ReplayResult result = Replayed(record.Header, record.Samples);

        Assert.True(result.IsSame, result.First?.ToString());
        Assert.Equal((record.Samples.Count, "same"), (result.Ticks, result.Verdict));
    }

    [Fact]
    public void Of_AnyShippedCaseWithAnySeedOfNoise_IsTheSameOnEveryTick() =>
        Gen.Select(Gen.OneOfConst([.. Names.Where(name => !ShippedCase.Text(name).Contains("[sensors]", StringComparison.Ordinal))]), Gen.Int[1, 1_000_000]).Sample(
            (name, seed) =>
            {
                FullRateRecord record = FullRateRecord.Of(name + ".toml", ShippedCase.Text(name) + FullRateRecord.NoiseOf(seed));
                Assert.Equal(seed, record.Header.SensorSeed);
                Assert.True(Replayed(record.Header, record.Samples).IsSame);
            },
            iter: 8,
            threads: 1);

    [Fact]
    public void Of_AReadingThatMattersWasChanged_DiffersFirstAtItsRow() =>
        Gen.Select(Gen.Int[2, 6002], Gen.Bool).Sample(
            (row, isSpeed) =>
            {
                List<Sample> samples = [.. FullRateRecord.BenchRig.Samples];
                samples[row - 1] = isSpeed
                    ? samples[row - 1] with { SpeedRadPerSec = samples[row - 1].SpeedRadPerSec + 0.01f }
                    : samples[row - 1] with { EmergencyStop = true };

                ReplayResult result = Replayed(FullRateRecord.BenchRig.Header, samples);

                Assert.Equal((row, samples[row - 1].TimeSeconds, "different"), (result.First!.Row, result.First.Seconds, result.Verdict));
                Assert.Contains(result.Around, around => around.Row == row);
                if (isSpeed) Assert.Equal("backEmfVolts", result.First.Signal.Name);
                else Assert.Equal(FaultId.EmergencyStop, result.Replayed.Fault);
            },
            iter: 60,
            threads: 1);

    [Fact]
    public void Of_AnyDecisionThatWasChanged_IsNamedAtItsRow() =>
        Gen.Select(Gen.Int[1, 6002], Gen.OneOfConst([.. SignalTable.All.Where(signal => signal.Role == SignalRole.Decision)])).Sample(
            (row, signal) =>
            {
                Sample[] samples = [.. FullRateRecord.BenchRig.Samples];
                double was = signal.Number(samples[row - 1]);
                signal.Put(ref samples[row - 1], signal.Kind == SignalKind.Switch ? 1 - was : double.IsNaN(was) ? 1 : was + 1);

                ReplayResult result = Replayed(FullRateRecord.BenchRig.Header, samples);

                Assert.Equal((1, row, signal.Name, was), (result.DifferentTicks, result.First!.Row, result.First.Signal.Name, result.First.Replayed));
            },
            iter: 100,
            threads: 1);

    [Fact]
    public void Of_ADifference_ShowsThreeRowsBeforeAndThreeBehind()
    {
        Sample[] samples = [.. FullRateRecord.BenchRig.Samples];
        samples[999].CloseStages = 7;

        Assert.Equal([997, 998, 999, 1000, 1001, 1002, 1003], Replayed(FullRateRecord.BenchRig.Header, samples).Around.Select(row => row.Row));
    }

    // The other way round it is earlier, and the contact is there before the recorded one.
    [Fact]
    public void Of_SettingsThatCutOutEarlier_DoesSoWithoutAFault()
    {
        Settings laxer = Replay.SettingsOf(FullRateRecord.BenchRig.Header);
        laxer.VoltsLeft[0] *= 1.1f;

        ReplayResult result = Replayed(FullRateRecord.BenchRig.Header, FullRateRecord.BenchRig.Samples, laxer);

        Assert.InRange(result.Recorded.Cutouts[0].Seconds - result.Replayed.Cutouts[0].Seconds, 0.01, 1);
        Assert.Equal(FaultId.None, result.Replayed.Fault);
    }

    // Volts left for the first stage 10 % less: the same speed crosses a higher threshold later.
    [Fact]
    public void Of_OtherSettings_SaysWhatTheyWouldHaveDecided()
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        Settings stricter = Replay.SettingsOf(start.Header);
        stricter.VoltsLeft[0] *= 0.9f;

        ReplayResult result = Replayed(start.Header, start.Samples, stricter);

        Assert.True(result.IsWithOtherSettings);
        Assert.Equal([1, 2], result.Recorded.Cutouts.Select(cutout => cutout.Stage));
        Assert.Equal([1, 2], result.Replayed.Cutouts.Select(cutout => cutout.Stage));
        Assert.InRange(result.Replayed.Cutouts[0].Seconds - result.Recorded.Cutouts[0].Seconds, 0.01, 1);
        Assert.Equal((FaultId.None, FaultId.None), (result.Recorded.Fault, result.Replayed.Fault));
    }

    [Fact]
    public void Of_ARecordOfAnotherCore_ReplaysAndSaysSoInTheVerdict()
    {
        RecordHeader header = FullRateRecord.BenchRig.Header with { CoreVersion = "0.0.9" };

        ReplayResult result = Replayed(header, FullRateRecord.BenchRig.Samples);

        Assert.True(result.IsSame);
        Assert.Equal($"same, but core 0.0.9 made this record; core {CoreIdentity.Version} replays it", result.Verdict);
    }

    [Fact]
    public void Of_ARecordThatSkipsControlPeriods_IsRefusedWithWhatToDo()
    {
        RecordException error = Assert.Throws<RecordException>(() =>
            Replayed(FullRateRecord.BenchRig.Header with { RecordPeriodMicroseconds = 5000 }, FullRateRecord.BenchRig.Samples));

        Assert.Equal(
            "record of bench-rig.toml: found a sample every 5000 us while the controller decided every 1000 us; allowed: a sample of every control period: starterctl run bench-rig.toml --every-period",
            error.Message);
    }

    [Theory]
    [InlineData(1, "row 1: elapsedMicroseconds: found 1000; allowed: 0: a replay begins with the controller's power-up")]
    [InlineData(2, "row 2 at 0.001 s: found 2000 us since the row before, where the controller was told 1000 us; allowed: a record without rows left out")]
    [InlineData(3000, "row 3000 at 2.999 s: found 2000 us since the row before, where the controller was told 1000 us")]
    public void Of_ARecordWithARowLeftOut_IsRefusedAtTheRowBehind(int row, string message)
    {
        List<Sample> samples = [.. FullRateRecord.BenchRig.Samples];
        samples.RemoveAt(row - 1);

        RecordException error = Assert.Throws<RecordException>(() => Replayed(FullRateRecord.BenchRig.Header, samples));

        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ARecordWhoseSettingsAreDamaged_IsRefused()
    {
        RecordHeader header = FullRateRecord.BenchRig.Header;
        RecordException error = Assert.Throws<RecordException>(() =>
            Replayed(header with { Settings = header.Settings.Replace("stage-count = 2", "stage-count = 1", StringComparison.Ordinal) }, []));

        Assert.StartsWith("settings of the record of bench-rig.toml: found ", error.Message, StringComparison.Ordinal);
    }

    private static ReplayResult Replayed(RecordHeader header, IEnumerable<Sample> samples, Settings? with = null) =>
        Replay.Of(header, samples, with, TestContext.Current.CancellationToken);
}
