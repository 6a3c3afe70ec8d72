using System;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;

namespace StarterCtl.Trials.Targets;

/// <summary>A board on the desk for each trial: the whole firmware in this program, reached over its link as any other board.</summary>
/// <param name="pace">Who keeps the time.</param>
/// <param name="timing">How long it may take for what.</param>
public sealed class DeskTarget(ExchangePace pace, TargetTiming timing) : ITrialTarget
{
    /// <inheritdoc/>
    public string Name => pace.IsRealTime ? "board on the desk, real time" : "board on the desk";

    /// <inheritdoc/>
    public bool IsHardware => true;

    /// <inheritdoc/>
    public bool IsByTheClock => pace.IsRealTime;

    /// <inheritdoc/>
    public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation)
    {
        using WireLine line = new();
        BoardMemory memory = new(new MemoryInRam(), ResetCause.PowerUp);
        memory.FillBlank(job.Run.Settings, SettingsChecksum.Of(job.Run.Settings), CaseHash.Of(job.CaseSha256));
        DeskBoard board = new(job.Run, line, memory, isPermitted: false);
        using CancellationTokenSource off = new();
        Task running = Task.Factory.StartNew(() => board.Run(off.Token, timing.MakeSafe.TotalSeconds), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            return new LinkTarget(Name, _ => Task.FromResult(line.Desk), pace, timing, retriesConnect: false).Run(job, samples, progress, cancellation);
        }
        finally
        {
            off.Cancel();
            running.Wait(CancellationToken.None);
        }
    }
}
