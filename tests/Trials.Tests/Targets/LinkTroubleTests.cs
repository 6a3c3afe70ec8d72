using System;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.House;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Trials.Tests.Targets;

/// <summary>A link that breaks is no failure of the starter: the trial ends with an error of its own, and what was recorded is kept.</summary>
public sealed class LinkTroubleTests : IDisposable
{
    // Writes until the exchange of the power-up tick is done: greeting, echo, beginning, exchange.
    private const int BeforeTheRun = 4;

    // However busy the machine is, what is sound is answered in time; what is lost is repeated at once.
    private static readonly TargetTiming Patient = new() { Connect = TimeSpan.FromSeconds(60), Step = TimeSpan.FromSeconds(10), Answer = TimeSpan.FromMilliseconds(50), MakeSafe = TimeSpan.FromSeconds(10) };

    // What is never answered is given up after 2 s.
    private static readonly TargetTiming Short = Patient with { Step = TimeSpan.FromSeconds(2), MakeSafe = TimeSpan.FromMilliseconds(300) };

    private readonly CaseFile _case = CaseFile.Read(Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"));
    private readonly PreparedRun _run;
    private CancellationTokenSource _off = new();
    private readonly Record _record = new(1000);
    private WireLine _line = null!;
    private DeskBoard _board = null!;
    private Task _running = Task.CompletedTask;

    public LinkTroubleTests()
    {
        _run = CaseRunner.Prepare(_case);
        PowerUp();
    }

    public void Dispose()
    {
        _off.Cancel();
        _running.Wait(TestContext.Current.CancellationToken);
        _line.Dispose();
        _off.Dispose();
    }

    [Fact]
    public void Unplugged_InMidStart_EndsInTimeWithWhereAndKeepsTheRecord()
    {
        TargetException error = Assert.Throws<TargetException>(() => Run(soundWrites: BeforeTheRun + 100, _ => null));

        Assert.Equal("at 0.100 s: the line to the board cannot be written: unplugged", error.Message);
        Assert.Equal(101, _record.Samples.Count);
        AssertSafe();
    }

    [Fact]
    public void Silent_FromTheMiddleOn_IsGivenUpAfterTheTimeForAStep()
    {
        TargetException error = Assert.Throws<TargetException>(() => Run(BeforeTheRun + 50, _ => [], timing: Short));

        Assert.StartsWith("at 0.050 s: Exchange: no answer after 40 tries of 50 ms", error.Message, StringComparison.Ordinal);
        Assert.Equal(51, _record.Samples.Count);
    }

    // One write in ten is damaged, cut in half, or has noise in front: every request is repeated until it comes through.
    [Theory]
    [InlineData("damaged")]
    [InlineData("half")]
    [InlineData("noise")]
    public void Garbage_NowAndThen_ChangesNothingAndIsCounted(string kind)
    {
        int writes = 0;
        TargetReport report = Run(BeforeTheRun, bytes => ++writes % 10 != 0 ? bytes : kind switch
        {
            "damaged" => [.. bytes.Select((value, i) => i == 5 ? (byte)(value ^ 0x10 | 1) : value)],
            "half" => [.. bytes.Take(bytes.Length / 2), 0],
            _ => [7, 0, 9, 9, 0, .. bytes],
        }, "0.2 s");
        Record simulated = new(1000);
        new SimulatorTarget().Run(Job("0.2 s"), simulated, null, TestContext.Current.CancellationToken);

        Assert.Equal(simulated.Samples, _record.Samples);
        Assert.True(report.Link!.LostFrames >= 18, $"{report.Link}");
    }

    [Fact]
    public void Board_ThatResetsInMidStart_IsSaidSo()
    {
        TargetException error = Assert.Throws<TargetException>(() => Run(BeforeTheRun, bytes =>
        {
            if (_record.Samples.Count == 200) Reset();
            return bytes;
        }));

        Assert.StartsWith("at 0.199 s: exchange: no exchange has been begun", error.Message, StringComparison.Ordinal);
        Assert.Equal(200, _record.Samples.Count);
    }

    [Fact]
    public void Board_OfOtherFirmware_IsRefusedBeforeAnythingRuns()
    {
        PowerOff();
        PowerUp(new BoardIdentity { Name = "old", VersionMajor = 0, VersionMinor = 0, VersionPatch = 9 });

        TargetException error = Assert.Throws<TargetException>(() => Run(int.MaxValue, bytes => bytes));

        Assert.Equal("old, version 0.0.9: its firmware cannot exchange readings; allowed: 0.1.0", error.Message);
        Assert.Empty(_record.Samples);
    }

    [Fact]
    public void Port_WithNobodyThere_IsTriedAgainOnlyWhenAskedFor()
    {
        int tries = 0;
        Task<Stream> Open(CancellationToken cancellation)
        {
            tries++;
            return tries < 3 ? throw new Link.LinkException("nobody there") : Task.FromResult(_line.Desk);
        }

        TargetException error = Assert.Throws<TargetException>(() => new LinkTarget("board", Open, ExchangePace.Lockstep, Patient, retriesConnect: false).Run(Job("0.1 s"), _record, null, TestContext.Current.CancellationToken));
        Assert.Equal(("nobody there", 1), (error.Message, tries));

        new LinkTarget("board", Open, ExchangePace.Lockstep, Patient, retriesConnect: true).Run(Job("0.1 s"), _record, null, TestContext.Current.CancellationToken);
        Assert.Equal((3, 102), (tries, _record.Samples.Count));
    }

    [Theory]
    [InlineData(3, 1, 0.012, true)]
    [InlineData(2, 1, 0.012, false)]
    [InlineData(3, 0, 0.012, false)]
    [InlineData(3, 1, 0.011, false)]
    public void Limits_OfTheLink_CanFailATrial(long missed, long lost, double latency, bool passes)
    {
        LinkFigures figures = new(1000, 3, 1, 0.001, 0.002, 0.005, 0.012);
        LinkLimits limits = new() { MostMissedDeadlines = missed, MostLostFrames = lost, MostLatencySeconds = latency };

        Assert.Equal(passes, limits.Judge(figures).All(outcome => outcome.Passed));
        Assert.Equal(3, limits.Judge(figures).Count());
        Assert.Empty(limits.Judge(null));
    }

    private TargetReport Run(int soundWrites, Func<byte[], byte[]?> spoil, string? duration = null, TargetTiming? timing = null) =>
        new LinkTarget("board", _ => Task.FromResult<Stream>(new TroubledStream(_line.Desk, soundWrites, spoil)), ExchangePace.Lockstep, timing ?? Patient, retriesConnect: false)
            .Run(duration == null ? new TargetJob(_run, _case.Sha256) : Job(duration), _record, null, TestContext.Current.CancellationToken);

    private TargetJob Job(string duration)
    {
        string text = Repository.Text("sim/cases/bench-rig.toml");
        text = string.Join('\n', text[..text.IndexOf("[[event]]", StringComparison.Ordinal)].Split('\n').Where(line => !line.StartsWith("duration = ", StringComparison.Ordinal)));
        return new TargetJob(CaseRunner.Prepare(CaseFile.Parse("bench-rig.toml", text.Replace("[run]", $"[run]\nduration = \"{duration}\"", StringComparison.Ordinal))), _case.Sha256);
    }

    private void AssertSafe() => Assert.False(_board.IsAnyCoilOn);

    private void PowerUp(BoardIdentity? identity = null)
    {
        _line = new WireLine();
        if (identity == null) Begin();
        else _running = OldBoard.Run(_line, identity, Memory(), _off.Token);
    }

    private void Begin()
    {
        _board = new DeskBoard(_run, _line, Memory(), isPermitted: false);
        DeskBoard board = _board;
        CancellationToken off = _off.Token;
        _running = Task.Factory.StartNew(() => board.Run(off, 1), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    private BoardMemory Memory()
    {
        BoardMemory memory = new(new MemoryInRam(), ResetCause.PowerUp);
        memory.FillBlank(_run.Settings, SettingsChecksum.Of(_run.Settings), CaseHash.Of(_case.Sha256));
        return memory;
    }

    private void PowerOff()
    {
        _off.Cancel();
        _running.Wait(TestContext.Current.CancellationToken);
        _off.Dispose();
        _off = new CancellationTokenSource();
    }

    // The line stays; what was in the board's mind is gone.
    private void Reset()
    {
        PowerOff();
        Begin();
    }
}
