namespace StarterCtl.Firmware;

/// <summary>
/// Median of the last 3 or 5 counts: (samples - 1) / 2 wrong ones in a row do not show at all. Delays whatever rises or falls
/// steadily by just as many samples: 1 of 3, 2 of 5.
/// </summary>
public sealed class Median
{
    private readonly int _samples;
    private readonly int[] _last;
    private readonly int[] _sorted;
    private int _next;
    private bool _isFilled;

    /// <summary>Builds the filter.</summary>
    /// <param name="samples">1, 3 or 5; <see cref="BoardCheck"/> refuses any other number.</param>
    public Median(int samples)
    {
        _samples = samples < 1 ? 1 : samples;
        _last = new int[_samples];
        _sorted = new int[_samples];
    }

    /// <summary>Takes a sample in. The first one after <see cref="Restart"/> counts for all before it.</summary>
    /// <returns>The median.</returns>
    public int Next(int counts)
    {
        if (_samples == 1) return counts;
        for (int i = 0; !_isFilled && i < _samples; i++) _last[i] = counts;
        _isFilled = true;
        _last[_next] = counts;
        _next = _next + 1 == _samples ? 0 : _next + 1;
        Sort();
        return _sorted[_samples / 2];
    }

    /// <summary>Forgets what was.</summary>
    public void Restart() => _isFilled = false;

    private void Sort()
    {
        for (int i = 0; i < _samples; i++)
        {
            int counts = _last[i];
            int place = i;
            for (; place > 0 && _sorted[place - 1] > counts; place--) _sorted[place] = _sorted[place - 1];
            _sorted[place] = counts;
        }
    }
}
