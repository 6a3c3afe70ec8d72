using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.Firmware.Tests;
using StarterCtl.Firmware.Tests.Link;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Link.Tests;

/// <summary>The desk's end against the firmware's own link and control loop.</summary>
public sealed class BoardClientTests : IDisposable
{
    // Answers of a board in the same process need no time; what is lost must not hold up the tests, and a busy machine not end them.
    private static readonly LinkTiming Timing = new() { Answer = TimeSpan.FromMilliseconds(100), Tries = 200 };

    private readonly LinkRig _rig = new();
    private readonly BoardStream _line;

    public BoardClientTests()
    {
        _line = new BoardStream(_rig);
    }

    [Fact]
    public async Task Connect_ABoard_KnowsWhoItIs()
    {
        await using BoardClient client = await Connect();

        BoardGreeting greeting = client.Greeting;
        Assert.Equal(("bench board 1", "0.1.2"), (greeting.BoardName, greeting.Version));
        Assert.Equal((SettingTable.Version, SettingsChecksum.Of(_rig.Kept), 0x01020304), (greeting.SettingsVersion, greeting.SettingsChecksum, greeting.CaseHash));
        Assert.Equal((ResetCause.Watchdog, Phase.Ready, true, false), (greeting.ResetCause, greeting.Phase, greeting.ComputesAlike, greeting.LocalPermit));
    }

    [Fact]
    public async Task Connect_SilentLine_SaysAfterHowManyTries()
    {
        _line.RequestsToLose = int.MaxValue;

        LinkException silent = await Assert.ThrowsAsync<LinkException>(() =>
            BoardClient.ConnectAsync(_line, new LinkTiming { Answer = TimeSpan.FromMilliseconds(1), Tries = 3 }, TestContext.Current.CancellationToken));

        Assert.StartsWith("AskHello: no answer after 3 tries of 1 ms", silent.Message, StringComparison.Ordinal);
        Assert.Equal(3, _line.Writes);
    }

    [Theory]
    [InlineData(MessageId.Stop, 0)]
    [InlineData(MessageId.AskHello, 1)]
    public async Task Connect_LateAnswerToAnotherRequest_IsNobodys(MessageId request, int sequence)
    {
        _line.RequestsToLose = 1;
        Task<BoardClient> connecting = Connect();
        await InjectAsync(new AckAnswer { Request = request, RequestSequence = sequence, Reason = LinkReason.UnknownMessage }.Write);

        await using BoardClient client = await connecting;

        Assert.Equal("bench board 1", client.Greeting.BoardName);
    }

    [Fact]
    public async Task Connect_OtherProtocol_SaysWhichIsAllowed()
    {
        _line.RequestsToLose = int.MaxValue;
        Task<BoardClient> connecting = Connect();
        await InjectAsync(new HelloAnswer { ProtocolVersion = 2 }.Write);

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => connecting);

        Assert.Equal("greeting: the board speaks version 2 of the link; allowed: 1", refused.Message);
    }

    [Fact]
    public async Task Ask_RequestLost_IsSentAgain()
    {
        await using BoardClient client = await Connect();
        _line.RequestsToLose = 2;
        int before = _line.Writes;

        await client.PingAsync(TestContext.Current.CancellationToken);

        Assert.True(_line.Writes - before >= 3, $"{_line.Writes - before}");
    }

    [Fact]
    public async Task Start_AnswerLost_IsSentAgainAndStartsOnce()
    {
        await using BoardClient client = await Connect();
        _rig.PermitGiven = true;
        _line.AnswersToLose = 1;

        await client.StartAsync(TestContext.Current.CancellationToken);

        EventLog log = _rig.Controller.Log;
        Assert.Equal(1, Enumerable.Range(0, log.Count).Count(i => (log.KindAt(i), log.NumberAt(i)) == (EventKind.Phase, (int)Phase.Accelerating)));
        Assert.True(_rig.CloseLine);
    }

    [Fact]
    public async Task Start_WithoutThePermit_SaysSo()
    {
        await using BoardClient client = await Connect();

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => client.StartAsync(TestContext.Current.CancellationToken));

        Assert.Equal(("start: the local permit for a start over the link is not given", LinkReason.NoLocalPermit), (refused.Message, refused.Reason));
        Assert.Equal(0, _rig.LivePeriods);
    }

    [Fact]
    public async Task Stop_WhileTheLineIsClosed_OpensIt()
    {
        await using BoardClient client = await Connect();
        _rig.PermitGiven = true;
        await client.StartAsync(TestContext.Current.CancellationToken);
        Assert.True(_rig.CloseLine);

        await client.StopAsync(TestContext.Current.CancellationToken);

        Assert.False(_rig.CloseLine);
    }

    [Fact]
    public async Task Reset_WhileTripped_GoesBackToReady()
    {
        await using BoardClient client = await Connect();
        _rig.ReadFails = true;
        _line.Step(1);
        _rig.ReadFails = false;
        Assert.Equal(Phase.Tripped, (await client.GreetAsync(TestContext.Current.CancellationToken)).Phase);

        await client.ResetAsync(TestContext.Current.CancellationToken);

        Assert.Equal(Phase.Ready, (await client.GreetAsync(TestContext.Current.CancellationToken)).Phase);
    }

    [Fact]
    public async Task Ping_RubbishOnTheLine_IsCountedAtTheBoard()
    {
        await using BoardClient client = await Connect();
        _rig.Put([7, 7, 0], 3);

        LinkHealth health = await client.PingAsync(TestContext.Current.CancellationToken);

        Assert.Equal(new LinkHealth(0, 0, 1, 0, 0), health);
    }

    [Fact]
    public async Task Upload_ASet_IsKeptAndReadBack()
    {
        await using BoardClient client = await Connect();
        Settings sent = BootCourse.Settings();

        await client.UploadAsync(sent, 4711, TestContext.Current.CancellationToken);

        BoardGreeting greeting = await client.GreetAsync(TestContext.Current.CancellationToken);
        Assert.Equal((SettingsChecksum.Of(sent), 4711), (greeting.SettingsChecksum, greeting.CaseHash));
        Settings kept = await client.ReadSettingsAsync(TestContext.Current.CancellationToken);
        Assert.Equal(SettingsText.Write(sent), SettingsText.Write(kept));
    }

    [Fact]
    public async Task Upload_OverALineThatLosesEveryThirdFrame_IsKept()
    {
        LossyLine lossy = new(_line);
        await using BoardClient client = await BoardClient.ConnectAsync(lossy, Timing with { Answer = TimeSpan.FromMilliseconds(5), Tries = 1000 }, TestContext.Current.CancellationToken);

        await client.UploadAsync(FakeBoard.Chk01(), 1, TestContext.Current.CancellationToken);

        Assert.Equal(SettingsChecksum.Of(FakeBoard.Chk01()), _rig.Checksum);
    }

    [Fact]
    public async Task Upload_MinusZero_IsKeptAsZero()
    {
        await using BoardClient client = await Connect();

        await client.UploadAsync(FakeBoard.Chk01(settings => settings.BrushDropVolts = -0f), 1, TestContext.Current.CancellationToken);

        Assert.Equal(SettingsChecksum.Of(FakeBoard.Chk01()), _rig.Checksum);
    }

    [Theory]
    [InlineData(0.5f, -1f, "brush-drop = -1 (allowed: 0 to 1E+6 V): out of range", LinkReason.OutOfRange)]
    [InlineData(1000f, 0f, "settings: a setting contradicts another one: peak-current, NotBelowOther", LinkReason.Contradiction)]
    public async Task Upload_BadSet_NamesSettingValueAndRange(float peakAmps, float brushDropVolts, string message, LinkReason reason)
    {
        await using BoardClient client = await Connect();
        Settings before = _rig.Kept;
        Settings bad = FakeBoard.Chk01(settings => (settings.PeakAmps, settings.BrushDropVolts) = (peakAmps, brushDropVolts));

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => client.UploadAsync(bad, 1, TestContext.Current.CancellationToken));

        Assert.Equal((message, reason), (refused.Message, refused.Reason));
        Assert.Same(before, _rig.Kept);
    }

    [Fact]
    public async Task Upload_StageValueOutOfRange_IsNamedByItsStage()
    {
        await using BoardClient client = await Connect();

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() =>
            client.UploadAsync(FakeBoard.Chk01(settings => settings.StageOhms[1] = 0f), 1, TestContext.Current.CancellationToken));

        Assert.Equal("stage-ohms.2 = 0 (allowed: above 0 to 1E+6 ohm): out of range", refused.Message);
    }

    [Fact]
    public async Task Upload_BoardKeepsAnotherNumber_IsSeenByTheReadBack()
    {
        await using BoardClient client = await Connect();
        _rig.SpoilKept = kept => kept.MachineConstant = 2.4f;

        LinkException wrong = await Assert.ThrowsAsync<LinkException>(() => client.UploadAsync(FakeBoard.Chk01(), 1, TestContext.Current.CancellationToken));

        Assert.Equal("machine-constant: sent 2.5, the board keeps 2.4", wrong.Message);
    }

    [Fact]
    public async Task DownloadLog_AfterAStart_IsTheControllersLog()
    {
        await using BoardClient client = await Connect();
        _rig.PermitGiven = true;
        await client.StartAsync(TestContext.Current.CancellationToken);
        EventLog log = _rig.Controller.Log;
        List<LoggedEvent> expected = [.. Enumerable.Range(0, log.Count).Select(i => new LoggedEvent(log.KindAt(i), log.NumberAt(i), log.ValueAt(i), log.SecondsAt(i)))];

        Assert.Equal(expected, await client.DownloadLogAsync(TestContext.Current.CancellationToken));
        Assert.NotEmpty(expected);
    }

    [Fact]
    public async Task Record_TenSamples_AreRowsAtTheirPeriod()
    {
        await using BoardClient client = await Connect();
        _rig.SpeedRadPerSec = 12.5f;
        Task<Record> recording = client.RecordAsync(10_000, 10, TestContext.Current.CancellationToken);
        while (!recording.IsCompleted)
        {
            _line.Step(10);
            await Task.Yield();
        }

        Record record = await recording;

        Assert.Equal((10_000, 10), (record.PeriodMicroseconds, record.Samples.Count));
        double[] steps = [.. record.Samples.Zip(record.Samples.Skip(1), (first, second) => Math.Round(second.TimeSeconds - first.TimeSeconds, 6))];
        Assert.All(steps, step => Assert.Equal(0.01, step));
        Sample sample = record.Samples[5];
        Assert.Equal((250f, 12.5f, 31.25f, Phase.Ready, true), (sample.SupplyVolts, sample.SpeedRadPerSec, sample.BackEmfVolts, sample.Phase, sample.SpeedValid));
        Assert.Equal((double.NaN, float.NaN), (sample.TorqueNewtonMetres, sample.ResistiveBackEmfVolts));
    }

    [Fact]
    public async Task Record_LineTooSlow_SaysHowManyAreMissing()
    {
        await using BoardClient client = await Connect();
        Task<Record> recording = client.RecordAsync(1_000, 20, TestContext.Current.CancellationToken);
        while (!recording.IsCompleted)
        {
            _line.Step(10);
            await Task.Yield();
        }

        LinkException slow = await Assert.ThrowsAsync<LinkException>(() => recording);

        Assert.Matches("^record: the board left out [1-9][0-9]* samples at a period of 1000 us", slow.Message);
    }

    /// <summary>The board sent it and counts nothing as left out: only the numbers of the frames show that one is not there.</summary>
    [Fact]
    public async Task Record_SampleLostOnTheLine_SaysSo()
    {
        await using BoardClient client = await Connect();
        int before = _line.Writes;
        Task<Record> recording = client.RecordAsync(10_000, 10, TestContext.Current.CancellationToken);
        for (int step = 0; !recording.IsCompleted; step++)
        {
            // Again and again, for who takes the samples may come so late that the first loss lies before its record; and samples alone: the
            // first request has been answered once a step has come behind it.
            bool isRecording = _line.Writes == before + 1;
            _line.Step(10);
            if (isRecording && step % 6 == 5) _line.AnswersToLose = 1;
            await Task.Yield();
        }

        LinkException lost = await Assert.ThrowsAsync<LinkException>(() => recording);

        Assert.Equal("record: frames from the board were lost or damaged on the line, so samples may be missing", lost.Message);
    }

    [Fact]
    public async Task Record_BoardGoesAway_Ends()
    {
        await using BoardClient client = await Connect();
        Task<Record> recording = client.RecordAsync(60_000_000, 2, TestContext.Current.CancellationToken);
        _line.HangUp();

        LinkException gone = await Assert.ThrowsAsync<LinkException>(() => recording);

        Assert.Contains("the board closed the line", gone.Message, StringComparison.Ordinal);
        await Assert.ThrowsAsync<LinkException>(() => client.StopAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task SetTelemetry_PeriodOutOfRange_SaysWhatIsAllowed()
    {
        await using BoardClient client = await Connect();

        LinkException refused = await Assert.ThrowsAsync<LinkException>(() => client.SetTelemetryAsync(999, TestContext.Current.CancellationToken));

        Assert.Equal("time between samples 999 us (allowed: 0, or 1000 to 60000000 us): out of range", refused.Message);
    }

    [Fact]
    public async Task Requests_FromManyTasks_GoOneByOne()
    {
        await using BoardClient client = await Connect();

        LinkHealth[] all = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => client.PingAsync(TestContext.Current.CancellationToken)));

        Assert.All(all, health => Assert.Equal(0, health.LostFrames));
    }

    public void Dispose() => _line.Dispose();

    // A frame that no board sent, once the desk waits for an answer.
    private async Task InjectAsync(Action<Frame> write)
    {
        Frame frame = new();
        write(frame);
        FrameWriter writer = new();
        writer.Write(frame);
        while (_line.Writes == 0) await Task.Yield();
        _line.Inject(writer.Line[..writer.Length]);
    }

    private Task<BoardClient> Connect() => BoardClient.ConnectAsync(_line, Timing, TestContext.Current.CancellationToken);
}
