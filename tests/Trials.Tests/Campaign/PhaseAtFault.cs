using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Tests.Campaign;

/// <summary>Sees the first fault of a run and what the drive was doing on the tick before.</summary>
internal sealed class PhaseAtFault(long periodMicroseconds) : ISampleSink
{
    private Phase _phase;
    private int _stage;
    private bool _hasStarted;

    public long PeriodMicroseconds => periodMicroseconds;

    public FaultId Fault { get; private set; }

    /// <summary>Column of the coverage page.</summary>
    public int Column { get; private set; } = -1;

    public void Add(in Sample sample)
    {
        if (Fault == FaultId.None && sample.Fault != FaultId.None)
        {
            Fault = sample.Fault;
            Column = _phase switch
            {
                Phase.Running => 2,
                Phase.Accelerating when _stage > 1 => 1,
                Phase.Stopping or Phase.Braking => 3,
                Phase.Ready when _hasStarted => 3,
                _ => 0,
            };
        }

        _hasStarted |= sample.Phase == Phase.Accelerating;
        (_phase, _stage) = (sample.Phase, sample.Stage);
    }
}
