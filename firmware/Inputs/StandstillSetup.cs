namespace StarterCtl.Firmware;

/// <summary>When a shaft of which a sensor shows nothing more stands, and when its speed is unknown. Filled once, not changed afterwards.</summary>
public sealed class StandstillSetup
{
    /// <summary>
    /// Magnitude up to which a tacho generator's reading cannot be told from that of a standing shaft, rad/s: what offset, ripple and a count
    /// can make of it. At least one count; a pick-up or an encoder needs none.
    /// </summary>
    public float LeastRadPerSec;

    /// <summary>Time in which nothing is shown after which the speed is unknown, microseconds; above 0.</summary>
    public int TimeOutMicroseconds = 1000000;

    /// <summary>Time in which nothing is shown and no current flows after which the shaft counts as standing, microseconds; above 0.</summary>
    public int StandstillMicroseconds = 2000000;

    /// <summary>Magnitude of the armature current up to which none flows, A; the core's own <c>ZeroAmps</c>.</summary>
    public float ZeroAmps;
}
