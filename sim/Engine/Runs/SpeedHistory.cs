namespace StarterCtl.Engine.Runs;

/// <summary>
/// Remembers when the speed first passed each level, in bounded memory: points of a rising envelope, thinned by half
/// whenever they fill up, with the slope at each so that a crossing is found between them.
/// </summary>
internal sealed class SpeedHistory
{
    private const int Capacity = 8192;

    private readonly double[] _seconds = new double[Capacity];
    private readonly double[] _speeds = new double[Capacity];
    private readonly double[] _slopes = new double[Capacity];
    private int _count;
    private int _stride = 1;
    private int _skipped;
    private double _highest = double.NegativeInfinity;

    /// <summary>Notes a point; only a new highest speed is kept.</summary>
    public void Note(double seconds, double speed, double acceleration)
    {
        if (speed <= _highest) return;
        _highest = speed;
        if (++_skipped < _stride) return;
        _skipped = 0;
        if (_count == Capacity) Thin();
        _seconds[_count] = seconds;
        _speeds[_count] = speed;
        _slopes[_count] = acceleration;
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
        for (int i = 1; i < Capacity / 2; i++)
        {
            _seconds[i] = _seconds[2 * i];
            _speeds[i] = _speeds[2 * i];
            _slopes[i] = _slopes[2 * i];
        }

        _count = Capacity / 2;
        _stride *= 2;
    }
}
