using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>A number shown by a lamp: as many flashes, a pause, and again.</summary>
public sealed class FlashCode
{
    /// <summary>Time for which the lamp is lit, and then dark, in each flash, microseconds.</summary>
    public const int FlashMicroseconds = 250000;

    /// <summary>Dark time between two rows of flashes, microseconds.</summary>
    public const int PauseMicroseconds = 1500000;

    private int _microseconds;
    private int _flashes;

    /// <summary>Goes on.</summary>
    /// <param name="number">Number to show; a new one is begun behind the pause of the old.</param>
    /// <param name="elapsedMicroseconds">Clamped time since the last call.</param>
    /// <returns>True while the lamp is lit.</returns>
    public bool IsLit(int number, int elapsedMicroseconds)
    {
        _microseconds = Elapsed.Add(_microseconds, elapsedMicroseconds);
        int row = 2 * _flashes * FlashMicroseconds;
        if (_microseconds >= row + PauseMicroseconds || _flashes == 0)
        {
            _microseconds = 0;
            _flashes = number;
        }

        return _microseconds < 2 * _flashes * FlashMicroseconds && _microseconds / FlashMicroseconds % 2 == 0;
    }
}
