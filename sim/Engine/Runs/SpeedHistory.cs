namespace StarterCtl.Engine.Runs;

/// <summary>
/// Remembers when the speed first passed each level, in bounded memory: points of a rising envelope, thinned by half
/// whenever they fill up, with the slope at each so that a crossing is found between them.
/// </summary>
internal sealed class SpeedHistory
{
    private const int Capacity = 128;

    private readonly double[] _seconds = new double[Capacity];
    private readonly double[] _speeds = new double[Capacity];
    private readonly double[] _slopes = new double[Capacity];
    private readonly bool[] _pinned = new bool[Capacity];
    private int _count;
    private int _stride = 1;
    private int _skipped;
    private double _highest = double.NegativeInfinity;

    /// <summary>Takes a new highest speed in; true when this point is one to keep with <see cref="Keep"/>.</summary>
    public bool IsDue(double speed)
    {
        if (speed <= _highest) return false;
        _highest = speed;
        if (++_skipped < _stride) return false;
        _skipped = 0;
        return true;
    }

    /// <summary>Keeps a point, unless the speed was higher before.</summary>
    /// <param name="seconds">Time, s.</param>
    /// <param name="speed">Speed, rad/s.</param>
    /// <param name="acceleration">Slope, rad/s2.</param>
    /// <param name="isKink">True where the slope jumps: such points survive thinning, one for each side.</param>
    public void Keep(double seconds, double speed, double acceleration, bool isKink)
    {
        if (speed < _highest) return;
        _highest = speed;
        if (_count == Capacity) Thin();
        _seconds[_count] = seconds;
        _speeds[_count] = speed;
        _slopes[_count] = acceleration;
        _pinned[_count] = isKink;
        _count++;
    }

    /// <summary>When the speed first reached a level, s; null when it never did.</summary>
    public double? FirstReached(double speed)
    {
        if (_count == 0 || speed > _highest) return null;
        int after = 0;
        while (after < _count && _speeds[after] < speed) after++;
        if (after == 0) return _seconds[0];
        if (after == _count) return _seconds[_count - 1];
        return Inverse(after - 1, after, speed);
    }

    // Cubic Hermite between two points, inverted by bisection.
    private double Inverse(int from, int to, double speed)
    {
        double span = _seconds[to] - _seconds[from], low = 0, high = 1;
        for (int i = 0; i < 60; i++)
        {
            double u = (low + high) / 2, v = 1 - u;
            double value = v * v * ((1 + 2 * u) * _speeds[from] + u * span * _slopes[from])
                + u * u * ((1 + 2 * v) * _speeds[to] - v * span * _slopes[to]);
            if (value < speed) low = u;
            else high = u;
        }

        return _seconds[from] + high * span;
    }

    private void Thin()
    {
        int kept = 0;
        bool drop = false;
        for (int i = 0; i < Capacity; i++)
        {
            bool isEnd = i == 0 || i == Capacity - 1 || (_pinned[i] && kept < Capacity / 2);
            drop = !drop;
            if (drop && !isEnd) continue;
            _seconds[kept] = _seconds[i];
            _speeds[kept] = _speeds[i];
            _slopes[kept] = _slopes[i];
            _pinned[kept] = _pinned[i];
            kept++;
        }

        _count = kept;
        _stride *= 2;
    }
}
