using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Trials against the board as a process of its own: what a tester sees when all goes well, and when it does not.</summary>
public sealed class BoardTrialTests : IDisposable
{
    // However busy the machine is.
    private static readonly string[] Patient = ["--connect-timeout", "120", "--step-timeout", "20"];

    private readonly Cli _cli = new();

    /// <summary>A trial as it is, against the board's end of a serial line: no real port is here, a pseudo-terminal is opened and read in the same way.</summary>
    [Fact]
    public async Task Trial_AgainstABoardBehindAPseudoTerminal_HasTheSimulatorsVerdict()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the program opens pseudo-terminals as Linux has them");
        string trial = Rig("0.2 s");
        Assert.Equal(0, await _cli.Run("trial", trial, "--json", "--out", _cli.OutFolder));
        string simulated = _cli.Json().GetProperty("trials")[0].GetProperty("attempts")[0].GetProperty("expectations").ToString();
        using BoardProcess board = await BoardProcess.StartAsync(RunningBoard.BenchRig, "--pty", "--memory", MemoryPath);

        Assert.Equal(0, await _cli.Run(["trial", trial, "--target", board.Port, "--json", "--out", _cli.OutFolder, .. Patient]));

        JsonElement attempt = _cli.Json().GetProperty("trials")[0].GetProperty("attempts")[0];
        Assert.Equal(simulated, attempt.GetProperty("expectations").ToString());
        Assert.Equal((202, 0), (attempt.GetProperty("link").GetProperty("exchanges").GetInt32(), attempt.GetProperty("link").GetProperty("lostFrames").GetInt32()));
        Assert.Equal("board on the desk, version 0.1.0", attempt.GetProperty("board").GetString());
        // The port is free again, and the board its own machine's.
        Assert.Equal(0, await _cli.Run("link", "hello", board.Port));
        Assert.Equal(0, await _cli.Run("replay", "--verify", Path.Combine(_cli.OutFolder, "rig.bundle.zip")));
    }

    /// <summary>The machine first, then the files: the board is back at its own inputs, and what was recorded proves itself.</summary>
    [Fact]
    public async Task Trial_InterruptedInTheMiddle_LeavesTheBoardFreeAndItsRecordWhole()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "sends a POSIX signal");
        using BoardProcess board = await Board("127.0.0.1:0");
        using RunningProgram trial = await TrialInTheMiddle(board);

        await trial.Interrupt();

        Assert.Equal(5, await trial.ExitCode());
        // A board that still exchanged readings would refuse.
        Assert.Equal(0, await _cli.Run("link", "upload", RunningBoard.BenchRig, board.Port));
        await AssertKept("aborted");
    }

    /// <summary>Power cut at the board: trouble, no failure of the starter.</summary>
    [Fact]
    public async Task Trial_WhoseBoardLosesItsPower_EndsWithTroubleAndKeepsTheRecordSoFar()
    {
        using BoardProcess board = await Board("127.0.0.1:0");
        using RunningProgram trial = await TrialInTheMiddle(board);

        board.Kill();

        Assert.Equal(4, await trial.ExitCode());
        await AssertKept("error");
    }

    /// <summary>The board is switched on after the trial was begun.</summary>
    [Fact]
    public async Task Trial_ThatConnectsAgain_WaitsForItsBoard()
    {
        string place;
        using (TcpListener free = new(IPAddress.Loopback, 0))
        {
            free.Start();
            place = free.LocalEndpoint.ToString()!;
        }

        Task<int> running = _cli.Run(["trial", Rig("0.1 s"), "--target", $"tcp:{place}", "--retry-connect", "--out", _cli.OutFolder, .. Patient]);
        using BoardProcess board = await Board(place);

        Assert.Equal(0, await running);
    }

    public void Dispose() => _cli.Dispose();

    private string MemoryPath => Path.Combine(_cli.Folder, "rig.bin");

    private Task<BoardProcess> Board(string place) => BoardProcess.StartAsync(RunningBoard.BenchRig, "--listen", place, "--memory", MemoryPath);

    private string Rig(string duration) => _cli.Write("rig.trial.toml", $"""
        case = "{RunningBoard.BenchRig}"
        [set]
        run.duration = "{duration}"
        [[expect]]
        name = "peak"
        signal = "armatureAmps"
        at-most = "33 A"
        """);

    // A trial of ten minutes by the clock, some hundred rows of which are recorded.
    private async Task<RunningProgram> TrialInTheMiddle(BoardProcess board)
    {
        RunningProgram trial = RunningProgram.Start(["trial", Rig("600 s"), "--target", board.Port, "--real-time", "--out", _cli.OutFolder, .. Patient]);
        await trial.Until(() => Directory.Exists(_cli.OutFolder) && Directory.GetFiles(_cli.OutFolder, "*.record.csv").Any(file => new FileInfo(file).Length > 40_000));
        return trial;
    }

    private async Task AssertKept(string verdict)
    {
        Assert.Equal(0, await _cli.Run("replay", "--verify", Path.Combine(_cli.OutFolder, "rig.bundle.zip"), "--json"));
        Assert.Equal(verdict, _cli.Json().GetProperty("manifest").GetProperty("verdict").GetString());
        Assert.Contains($"\"verdict\":\"{verdict}\"", await File.ReadAllTextAsync(Path.Combine(_cli.OutFolder, "trials.jsonl"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
