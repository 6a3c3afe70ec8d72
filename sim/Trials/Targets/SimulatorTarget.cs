using System;
using System.Threading;
using StarterCtl.Engine;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Trials.Targets;

/// <summary>The simulator, in lockstep and as fast as it goes. Each run is a machine of its own, so nothing has to be made safe.</summary>
public sealed class SimulatorTarget : ITrialTarget
{
    /// <inheritdoc/>
    public string Name => "simulator";

    /// <inheritdoc/>
    public bool IsHardware => false;

    /// <inheritdoc/>
    public bool IsByTheClock => false;

    /// <inheritdoc/>
    public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation)
    {
        StartSimulation.Run(job.Run.Setup, job.Run.Settings, samples, null, progress, cancellation);
        return new TargetReport(CoreIdentity.Version, SettingsText.Checksum(job.Run.Settings));
    }
}
