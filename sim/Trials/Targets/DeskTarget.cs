using System;
using System.Net;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.Trials.Targets;

/// <summary>A board on the desk for each trial: the whole firmware in this program, behind a port of this computer as any other board.</summary>
/// <param name="pace">Who keeps the time.</param>
/// <param name="timing">How long it may take for what.</param>
public sealed class DeskTarget(ExchangePace pace, TargetTiming timing) : ITrialTarget
{
    /// <inheritdoc/>
    public string Name => pace.IsRealTime ? "board on the desk, real time" : "board on the desk";

    /// <inheritdoc/>
    public bool IsHardware => true;

    /// <inheritdoc/>
    public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation)
    {
        using TcpLine line = new(new IPEndPoint(IPAddress.Loopback, 0));
        BoardMemory memory = new(new MemoryInRam(), ResetCause.PowerUp);
        memory.FillBlank(job.Run.Settings, SettingsChecksum.Of(job.Run.Settings), CaseHash.Of(job.CaseSha256));
        DeskBoard board = new(job.Run, line, memory, isPermitted: false);
        using CancellationTokenSource off = new();
        Task running = Task.Factory.StartNew(() => board.Run(off.Token, timing.MakeSafe.TotalSeconds), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            LinkTarget target = new(Name, token => BoardLine.OpenTcpAsync(line.Place.Address.ToString(), line.Place.Port, token), pace, timing, retriesConnect: false);
            return target.Run(job, samples, progress, cancellation);
        }
        finally
        {
            off.Cancel();
            running.Wait(CancellationToken.None);
        }
    }
}
