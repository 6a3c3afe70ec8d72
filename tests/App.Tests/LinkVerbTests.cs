using System;
using System.IO;
using System.Threading.Tasks;
using StarterCtl.Engine.Cases;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The verbs of the link against the whole firmware behind a port of this computer, by its clock.</summary>
public sealed class LinkVerbTests : IDisposable
{
    private static readonly string BenchRig = RunningBoard.BenchRig;

    private readonly Cli _cli = new();

    [Fact]
    public async Task Link_FromABlankMemoryToARunAndAStop()
    {
        await using RunningBoard board = new(MemoryPath, true);
        Assert.Equal(0, await _cli.Run("link", "hello", board.Port));
        Assert.Contains("phase       not set up\nlocked      the setting StageCount failed its check\nsettings    none that can be used", _cli.Output, StringComparison.Ordinal);

        Assert.Equal(0, await _cli.Run("link", "upload", BenchRig, board.Port));
        Assert.Contains($"settings    of case {CaseFile.Read(BenchRig).Sha256[..8]}, checksum ", _cli.Output, StringComparison.Ordinal);
        await Opened(board);

        Assert.Equal(0, await _cli.Run("link", "start", board.Port));
        Assert.Contains("phase       accelerating", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "watch", board.Port, "--seconds", "0.1", "--every", "10"));
        string[] rows = _cli.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith("timeSeconds,supplyVolts,armatureAmps,", rows[0], StringComparison.Ordinal);
        Assert.Equal(11, rows.Length);
        Assert.Equal(0, await _cli.Run("link", "stop", board.Port));
        Assert.Equal(0, await _cli.Run("link", "log", board.Port));
        Assert.Contains("phase accelerating\n", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Link_AnotherProcessOfTheSameMemory_KeepsTheSettings_AndStartsNothingWithoutThePermit()
    {
        await using (RunningBoard first = new(MemoryPath, true)) Assert.Equal(0, await _cli.Run("link", "upload", BenchRig, first.Port));

        await using RunningBoard second = new(MemoryPath, false);
        await Opened(second);
        Assert.Contains("phase       ready\n", _cli.Output, StringComparison.Ordinal);
        Assert.Equal(1, await _cli.Run("link", "start", second.Port));

        Assert.Contains("start: the local permit for a start over the link is not given", _cli.Errors, StringComparison.Ordinal);
        Assert.False(second.IsAnyCoilOn);
    }

    /// <summary>The board proves for half a second behind an upload, and a press within it would be lost.</summary>
    [Fact]
    public async Task Start_RightBehindAnUpload_WaitsForTheLock()
    {
        await using RunningBoard board = new(MemoryPath, true);
        Assert.Equal(0, await _cli.Run("link", "upload", BenchRig, board.Port));

        Assert.Equal(0, await _cli.Run("link", "start", board.Port));

        Assert.Contains("phase       accelerating", _cli.Output, StringComparison.Ordinal);
    }

    /// <summary>Bytes 0 to 1 announce the table's version, 2 to 3 the number of values, 4 to 7 their checksum: hardware-notes/05-serial-link.md.</summary>
    [Theory]
    [InlineData(UploadBegin.SettingsVersionAt, "the board has another version of the table of settings")]
    [InlineData(UploadBegin.ValueCountAt, "not all values arrived")]
    [InlineData(UploadBegin.ChecksumAt, "the values that arrived do not come to the announced checksum")]
    public async Task Upload_AnnouncedWrongly_IsRefusedWithExitCode1_AndTheFormerSettingsStay(int changedByte, string words)
    {
        await using RunningBoard board = new(MemoryPath, false);
        Assert.Equal(0, await _cli.Run("link", "upload", BenchRig, board.Port));
        string kept = Kept();
        await using (FrameTamper line = new(board.Place, request =>
        {
            if (request.Id == MessageId.BeginUpload) request.PutByte(changedByte, request.GetByte(changedByte) + 1);
            return true;
        }))
        {
            Assert.Equal(1, await _cli.Run("link", "upload", Changed(), line.Port));
        }

        Assert.Contains($"{words}\n", _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
        Assert.Equal(0, await _cli.Run("link", "hello", board.Port));
        Assert.Equal(kept, Kept());
    }

    /// <summary>The line is cut in front of the 40th value, and in front of the commit.</summary>
    [Theory]
    [InlineData(MessageId.PutValue, 40)]
    [InlineData(MessageId.CommitUpload, 1)]
    public async Task Upload_CutOff_EndsWithExitCode4_AndTheFormerSettingsStay(MessageId id, int count)
    {
        await using RunningBoard board = new(MemoryPath, false);
        Assert.Equal(0, await _cli.Run("link", "upload", BenchRig, board.Port));
        string kept = Kept();
        await using (FrameTamper line = new(board.Place, request => request.Id != id || --count > 0))
        {
            Assert.Equal(4, await _cli.Run("link", "upload", Changed(), line.Port));
        }

        Assert.Contains("the board closed the line", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "hello", board.Port));
        Assert.Equal(kept, Kept());
    }

    [Theory]
    [InlineData(4, "refused", "tcp:127.0.0.1:1")]
    [InlineData(2, "PORT: found \"tcp:127.0.0.1\"; allowed: tcp:HOST:PORT with a port from 1 to 65535", "tcp:127.0.0.1")]
    [InlineData(4, "no-such-port", "/dev/no-such-port")]
    public async Task Hello_NoBoardThere_SaysSo(int code, string message, string port)
    {
        Assert.Equal(code, await _cli.Run("link", "hello", port));

        Assert.Contains(message, _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
    }

    [Fact]
    public async Task Board_ListeningBeyondThisComputer_IsRefused()
    {
        Assert.Equal(2, await _cli.Run("board", BenchRig, "--listen", "0.0.0.0:7000"));

        Assert.Contains("--listen: found \"0.0.0.0:7000\"; allowed: an address of this computer alone", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Board_AMemoryThatIsSomethingElse_IsRefusedAndLeftAlone()
    {
        string path = _cli.Write("mine.bin", "not a board's memory");

        Assert.NotEqual(0, await _cli.Run("board", BenchRig, "--listen", "127.0.0.1:0", "--memory", path));

        Assert.Contains("mine.bin: 20 bytes; allowed: a board's memory of 65536 bytes", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal("not a board's memory", await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
    }

    public void Dispose() => _cli.Dispose();

    private string MemoryPath => Path.Combine(_cli.Folder, "rig.bin");

    private string Changed() => _cli.Write("changed.toml", File.ReadAllText(BenchRig).Replace("minimum-dwell = \"50 ms\"", "minimum-dwell = \"60 ms\"", StringComparison.Ordinal));

    // The line of a greeting that names case and checksum.
    private string Kept() => Assert.Single(_cli.Output.Split('\n'), line => line.StartsWith("settings    of case ", StringComparison.Ordinal));

    private async Task Opened(RunningBoard board)
    {
        for (int i = 0; i < 2000; i++)
        {
            Assert.Equal(0, await _cli.Run("link", "hello", board.Port));
            if (!_cli.Output.Contains("locked", StringComparison.Ordinal)) return;
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Fail($"still locked:\n{_cli.Output}");
    }
}
