using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// A contact without its bounces: a new state counts once it has stood without a break for its time. Delay: that time, rounded up to
/// the next reading; 0 takes it over at once.
/// </summary>
public sealed class Debounce
{
    private readonly int _closeMicroseconds;
    private readonly int _openMicroseconds;
    private readonly Persistence _other = new Persistence();

    /// <summary>True while the contact counts as closed.</summary>
    public bool IsClosed;

    /// <summary>Builds it.</summary>
    /// <param name="isClosed">What counts before anything was read.</param>
    /// <param name="closeMicroseconds">Time for which a closed contact must stand, microseconds.</param>
    /// <param name="openMicroseconds">Time for which an open contact must stand, microseconds.</param>
    public Debounce(bool isClosed, int closeMicroseconds, int openMicroseconds)
    {
        IsClosed = isClosed;
        _closeMicroseconds = closeMicroseconds;
        _openMicroseconds = openMicroseconds;
    }

    /// <summary>Takes a reading in.</summary>
    /// <param name="isClosed">As read.</param>
    /// <param name="elapsedMicroseconds">Time since the last reading; negative counts as 0.</param>
    public void Update(bool isClosed, int elapsedMicroseconds)
    {
        int limit = isClosed ? _closeMicroseconds : _openMicroseconds;
        if (!_other.Lasts(isClosed != IsClosed, Elapsed.Clamp(elapsedMicroseconds), limit)) return;
        IsClosed = isClosed;
        // The way back begins at nothing.
        _other.Lasts(false, 0, 0);
    }
}
