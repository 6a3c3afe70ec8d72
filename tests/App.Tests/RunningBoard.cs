using System;
using System.IO;
using System.Net;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;

namespace StarterCtl.App.Tests;

/// <summary>What the verb board runs, with the bench rig at its pins, until it is disposed of.</summary>
internal sealed class RunningBoard : IAsyncDisposable
{
    public static readonly string BenchRig = Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml");

    private readonly CancellationTokenSource _end = new();
    private readonly TcpLine _line = new(new IPEndPoint(IPAddress.Loopback, 0));
    private readonly MemoryFile _memory;
    private readonly DeskBoard _board;
    private readonly Task _running;

    /// <param name="memoryPath">Its memory.</param>
    /// <param name="isPermitted">True permits a start over the link.</param>
    /// <param name="isCompiled">True begins a blank memory with the settings of the case.</param>
    public RunningBoard(string memoryPath, bool isPermitted, bool isCompiled = false)
    {
        CaseFile file = CaseFile.Read(BenchRig);
        PreparedRun run = CaseRunner.Prepare(file);
        _memory = MemoryFile.Open(memoryPath);
        BoardMemory memory = new(_memory, ResetCause.PowerUp);
        if (isCompiled) memory.FillBlank(run.Settings, SettingsChecksum.Of(run.Settings), CaseHash.Of(file.Sha256));
        _board = new DeskBoard(run, _line, memory, isPermitted);
        _running = Task.Factory.StartNew(() => _board.Run(_end.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    public IPEndPoint Place => _line.Place;

    public string Port => $"tcp:{_line.Place}";

    public bool IsAnyCoilOn => _board.IsAnyCoilOn;

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _running;
        _line.Dispose();
        _memory.Dispose();
        _end.Dispose();
    }
}
