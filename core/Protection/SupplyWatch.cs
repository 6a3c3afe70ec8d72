namespace StarterCtl.Core;

/// <summary>Times how long the supply is low or high.</summary>
public sealed class SupplyWatch
{
    private readonly Settings _settings;
    private readonly Persistence _low = new Persistence();
    private readonly Persistence _high = new Persistence();

    /// <summary>True if the settings ask for either limit.</summary>
    public readonly bool IsUsed;

    /// <summary>True while the supply is below its low limit.</summary>
    public bool IsLow;

    /// <summary>True while the supply is above its high limit.</summary>
    public bool IsHigh;

    /// <summary>True once a dip has lasted for longer than it may while the line was commanded or about to be.</summary>
    public bool IsLowTooLong;

    /// <summary>True once the supply has been high for longer than it may while the line was commanded or about to be.</summary>
    public bool IsHighTooLong;

    /// <summary>Builds the watch on checked settings.</summary>
    public SupplyWatch(Settings settings)
    {
        _settings = settings;
        IsUsed = settings.SupplyLowVolts > 0f || settings.SupplyHighVolts < Settings.Largest;
    }

    /// <summary>Time left until the line opens for a dip, microseconds.</summary>
    public int DipMicrosecondsLeft => _low.MicrosecondsLeft(_settings.DipMicroseconds);

    /// <summary>Looks at this tick's supply.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="isStarted">True while the line is commanded, or waits for stages that are closed before it.</param>
    public void Update(int elapsedMicroseconds, Readings readings, bool isStarted)
    {
        IsLow = readings.SupplyVolts < _settings.SupplyLowVolts && _settings.SupplyLowVolts > 0f;
        IsHigh = readings.SupplyVolts > _settings.SupplyHighVolts;
        IsLowTooLong = _low.Lasts(IsLow && isStarted, elapsedMicroseconds, _settings.DipMicroseconds);
        IsHighTooLong = _high.Lasts(IsHigh && isStarted, elapsedMicroseconds, _settings.SupplyHighMicroseconds);
    }
}
