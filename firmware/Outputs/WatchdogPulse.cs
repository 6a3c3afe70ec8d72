namespace StarterCtl.Firmware;

/// <summary>
/// Tells a watchdog outside the processor that the loop lives: its output changes once in every control period that began in time
/// and was finished, and stands still in any other. The watchdog must drop the coils when it sees no change for a few periods.
/// </summary>
public sealed class WatchdogPulse
{
    private readonly IDigitalOutput _output;
    private bool _isHigh;

    /// <summary>Builds it on an output that is low.</summary>
    public WatchdogPulse(IDigitalOutput output)
    {
        _output = output;
    }

    /// <summary>Called at the end of each period.</summary>
    /// <param name="isOnTime">True if it began in time and is finished.</param>
    public void Finish(bool isOnTime)
    {
        if (!isOnTime) return;
        _isHigh = !_isHigh;
        _output.Write(_isHigh);
    }
}
