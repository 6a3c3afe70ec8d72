using System;
using System.Diagnostics;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.Link;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The built program as a board in a process of its own, spoken with over its port and killed like a board that loses its power.</summary>
public sealed class BoardProcessTests : IDisposable
{
    private readonly Cli _cli = new();

    [Fact]
    public async Task Board_FromABlankMemoryToARun_KilledAndStartedAgain_HasItsSettings()
    {
        string kept = CaseFile.Read(RunningBoard.BenchRig).Sha256[..8];
        using (BoardProcess first = await Board("--permit"))
        {
            Assert.Contains("settings: none yet; permit for a start over the link: given", first.Notes, StringComparison.Ordinal);
            Assert.Equal(0, await _cli.Run("link", "upload", RunningBoard.BenchRig, first.Port));
            await Until(first, "\"locked\": null");
            Assert.Equal(0, await _cli.Run("link", "start", first.Port));
            await Until(first, "\"phase\": \"Running\"");
            Assert.Equal(0, await _cli.Run("link", "stop", first.Port));
        }

        using BoardProcess second = await Board();
        Assert.Contains($"settings: kept, of case {kept}; permit for a start over the link: not given", second.Notes, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "hello", second.Port));
        Assert.Contains($"settings    of case {kept}, ", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Board_BehindAPseudoTerminal_IsASerialPort()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the program opens pseudo-terminals as Linux has them");
        using BoardProcess board = await BoardProcess.StartAsync(RunningBoard.BenchRig, "--pty", "--permit", "--memory", MemoryPath);
        Assert.StartsWith("/dev/pts/", board.Port, StringComparison.Ordinal);

        Assert.Equal(0, await _cli.Run("link", "upload", RunningBoard.BenchRig, board.Port));
        await Until(board, "\"locked\": null");
        Assert.Equal(0, await _cli.Run("link", "start", board.Port));
        await Until(board, "\"phase\": \"Running\"");
        // Bytes of every value: nothing on the way takes one for a line end or an echo.
        Assert.Equal(0, await _cli.Run("link", "watch", board.Port, "--seconds", "0.4", "--every", "20"));
        Assert.Equal(21, _cli.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);

        // 54 bytes of ten bits at 115 200 baud are 4.6875 ms.
        Assert.Equal(2, await _cli.Run("link", "watch", board.Port, "--every", "4.6"));
        Assert.Contains("--every: found 4.6 ms; allowed: 4.688 ms or more, which a sample takes at 115200 baud; a faster line takes more (--baud)", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await _cli.Run("link", "stop", board.Port));
    }

    [Theory]
    [InlineData("4 ms", true)]
    [InlineData("6 ms", false)]
    public async Task Board_WaitsForContactsNoLongerThanTheyAreDebounced_SaysThatItStartsNothing(string contactTime, bool isWarned)
    {
        string rig = File.ReadAllText(RunningBoard.BenchRig).Replace("closing-time = \"12 ms\"", "closing-time = \"1 ms\"", StringComparison.Ordinal).Replace("opening-time = \"6 ms\"", "opening-time = \"1 ms\"", StringComparison.Ordinal);
        string path = _cli.Write("quick.toml", rig.Replace("[control]", $"[control]\ncontact-time = \"{contactTime}\"", StringComparison.Ordinal));

        using BoardProcess board = await BoardProcess.StartAsync(path, "--listen", "127.0.0.1:0", "--memory", MemoryPath);

        const string warning = "warning: The board starts nothing with the settings of this case: the wiring is refused: contacts are debounced for 0.005 s and the controller waits 0.004 s for them.";
        Assert.Equal(isWarned, board.Notes.Contains(warning, StringComparison.Ordinal));
        Assert.Equal(isWarned, board.Notes.Contains("starts nothing", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Board_BehindBothLines_IsRefused()
    {
        Assert.Equal(2, await _cli.Run("board", RunningBoard.BenchRig, "--pty", "--listen", "127.0.0.1:0"));

        Assert.Contains("--pty: found together with --listen; allowed: one of them", _cli.Errors, StringComparison.Ordinal);
    }

    /// <summary>
    /// Three kills at random moments, three as soon as a save has begun. Two cases that differ in their dwell alone: a mixture of both
    /// would have neither's checksum.
    /// </summary>
    [Fact]
    public async Task Board_KilledWhileUploadsGoOn_KeepsOneOfThemWhole()
    {
        Upload even = new(File.ReadAllText(RunningBoard.BenchRig));
        Upload odd = new(even.Text.Replace("minimum-dwell = \"50 ms\"", "minimum-dwell = \"60 ms\"", StringComparison.Ordinal));
        Assert.NotEqual(even.Checksum, odd.Checksum);
        int seed = Environment.TickCount;
        Random random = new(seed);
        for (int kill = 0; kill < 6; kill++)
        {
            using BoardProcess board = await Board("--compiled");
            Task uploading = UploadAsync(board.Port, even, odd);
            if (kill % 2 == 0) await Task.Delay(random.Next(20, 400), TestContext.Current.CancellationToken);
            else WaitForAWrite(random.Next(1000));
            board.Kill();
            await uploading;

            using MemoryFile memory = MemoryFile.Open(MemoryPath);
            SettingsStore settings = new BoardMemory(memory, ResetCause.PowerUp).Settings;
            Assert.True(settings.State == StoreState.Sound, $"{settings.State} after kill {kill} of seed {seed}");
            Assert.Contains((settings.CaseHash, settings.Checksum, SettingsChecksum.Of(settings.Kept)), new[] { even.Kept, odd.Kept });
        }
    }

    /// <summary>The shell lets the process write no file longer than 16 kB, and the system kills it at that byte: in the middle of the first fill.</summary>
    [Fact]
    public async Task Board_KilledWhileItsMemoryIsMade_StartsTheNextTime()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a shell that bounds the length of files");
        // Without the variable, the runtime itself writes a longer file.
        string limited = $"ulimit -c 0 -f 16; DOTNET_EnableWriteXorExecute=0 exec dotnet \"{BoardProcess.Program}\" board \"{RunningBoard.BenchRig}\" --listen 127.0.0.1:0 --memory \"{MemoryPath}\"";
        using (Process killed = Process.Start(new ProcessStartInfo("bash", ["-c", limited]) { RedirectStandardOutput = true, RedirectStandardError = true })!)
        {
            await killed.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(128 + 25, killed.ExitCode);
        }

        using BoardProcess next = await Board();

        Assert.Contains("settings: none yet", next.Notes, StringComparison.Ordinal);
        Assert.Equal([MemoryPath], Directory.GetFiles(_cli.Folder));
    }

    public void Dispose() => _cli.Dispose();

    private string MemoryPath => Path.Combine(_cli.Folder, "rig.bin");

    private Task<BoardProcess> Board(params string[] more) =>
        BoardProcess.StartAsync([RunningBoard.BenchRig, "--listen", "127.0.0.1:0", "--memory", MemoryPath, .. more]);

    private async Task Until(BoardProcess board, string said)
    {
        for (int i = 0; i < 3000; i++)
        {
            Assert.Equal(0, await _cli.Run("link", "hello", board.Port, "--json"));
            if (_cli.Output.Contains(said, StringComparison.Ordinal)) return;
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        Assert.Fail($"not {said}:\n{_cli.Output}");
    }

    // One after the other, until the board is gone.
    private static async Task UploadAsync(string port, Upload even, Upload odd)
    {
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        try
        {
            string[] place = port.Split(':');
            await using BoardClient client = await BoardClient.ConnectAsync(
                await BoardLine.OpenTcpAsync(place[1], int.Parse(place[2], System.Globalization.CultureInfo.InvariantCulture), cancellation), null, cancellation);
            for (int i = 0; i < 1000; i++)
            {
                Upload next = i % 2 == 0 ? even : odd;
                await client.UploadAsync(next.Settings, next.CaseHash, cancellation);
            }
        }
        catch (LinkException)
        {
            // Killed.
        }
    }

    // The board writes a few times when it begins, then only when it saves.
    private void WaitForAWrite(int thenMicroseconds)
    {
        DateTime before = File.GetLastWriteTimeUtc(MemoryPath);
        Stopwatch watch = Stopwatch.StartNew();
        while (File.GetLastWriteTimeUtc(MemoryPath) == before && watch.Elapsed < TimeSpan.FromSeconds(5)) Thread.SpinWait(10);
        for (watch.Restart(); watch.Elapsed < TimeSpan.FromMicroseconds(thenMicroseconds);) Thread.SpinWait(10);
    }

    private sealed class Upload
    {
        public Upload(string text)
        {
            CaseFile file = CaseFile.Parse("case.toml", text);
            Text = text;
            Settings = CaseRunner.Prepare(file).Settings;
            CaseHash = Engine.Cases.CaseHash.Of(file.Sha256);
            Checksum = SettingsChecksum.Of(Settings);
        }

        public string Text { get; }

        public Settings Settings { get; }

        public int CaseHash { get; }

        public int Checksum { get; }

        public (int CaseHash, int Checksum, int OfKept) Kept => (CaseHash, Checksum, Checksum);
    }
}
