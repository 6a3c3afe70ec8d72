using System.Collections.Generic;
using System.Numerics;
using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>What a controller decided over a record, in short.</summary>
public sealed class ReplayCourse
{
    private readonly List<StageCommand> _cutouts = [];
    private readonly List<PhaseEntry> _phases = [];
    private int _closeStages;

    /// <summary>Stages that were commanded out, in the order of time.</summary>
    public IReadOnlyList<StageCommand> Cutouts => _cutouts;

    /// <summary>Phases that were entered, in the order of time.</summary>
    public IReadOnlyList<PhaseEntry> Phases => _phases;

    /// <summary>First fault that was latched; none is <see cref="FaultId.None"/>.</summary>
    public FaultId Fault { get; private set; }

    /// <summary>When it was latched, s.</summary>
    public double FaultSeconds { get; private set; }

    /// <summary>Takes the decisions of a tick.</summary>
    internal void Take(in Sample sample)
    {
        if (_phases.Count == 0 || _phases[^1].Phase != sample.Phase) _phases.Add(new PhaseEntry(sample.Phase, sample.TimeSeconds, sample.Reason));
        for (int added = sample.CloseStages & ~_closeStages; added != 0; added &= added - 1)
        {
            _cutouts.Add(new StageCommand(BitOperations.TrailingZeroCount(added) + 1, sample.TimeSeconds));
        }

        _closeStages = sample.CloseStages;
        if (Fault != FaultId.None || sample.Fault == FaultId.None) return;
        Fault = sample.Fault;
        FaultSeconds = sample.TimeSeconds;
    }
}
