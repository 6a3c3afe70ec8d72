namespace StarterCtl.Core;

/// <summary>What running and accelerating do while the supply is low.</summary>
public sealed class SupplyDip
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly PeakLaw _law;
    private readonly SupplyWatch _supply;
    private readonly EventLog _log;
    private readonly Explanation _why;

    /// <summary>Builds the rule.</summary>
    public SupplyDip(Settings settings, Sequence sequence, PeakLaw law, SupplyWatch supply, EventLog log, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _law = law;
        _supply = supply;
        _log = log;
        _why = why;
    }

    /// <summary>True while the supply is low.</summary>
    public bool IsOn => _supply.IsLow;

    /// <summary>Says that nothing is cut out in a dip.</summary>
    public void Explain(Readings readings) =>
        _why.Set(Reason.SupplyDip, readings.SupplyVolts, _settings.SupplyLowVolts, _supply.DipMicrosecondsLeft);

    /// <summary>Puts back every stage whose peak would be passed now, or once the supply returns, if the settings say so.</summary>
    /// <returns>True if it put one back.</returns>
    public bool PutBack(Readings readings)
    {
        if (_settings.DipAction != DipAction.PutResistanceBack) return false;
        int stages = 0;
        while (stages < StageBits.Run(_sequence.WantStages) && _law.IsKeptOnReturn(stages + 1)) stages++;
        int kept = StageBits.UpTo(stages);
        if (kept == _sequence.WantStages) return false;
        _sequence.WantStages = kept;
        _sequence.BeginStage(stages + 1);
        _log.Add(EventKind.PutBack, stages + 1, readings.SupplyVolts);
        return true;
    }
}
