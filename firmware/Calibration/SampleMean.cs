namespace StarterCtl.Firmware;

/// <summary>Mean and spread of some samples.</summary>
public sealed class SampleMean
{
    private int _first;
    private int _fromFirst;
    private int _lowest;
    private int _highest;

    /// <summary>How many there are.</summary>
    public int Count { get; private set; }

    /// <summary>Largest sample less the smallest, counts.</summary>
    public int Spread => _highest - _lowest;

    /// <summary>Mean, counts; 0 of no samples.</summary>
    public float Mean => Count == 0 ? 0f : _first + _fromFirst / (float)Count;

    /// <summary>Begins anew.</summary>
    public void Restart()
    {
        Count = 0;
        _fromFirst = 0;
        _first = 0;
        _lowest = 0;
        _highest = 0;
    }

    /// <summary>Adds a sample; the sum of their distances from the first must fit a whole number.</summary>
    public void Add(int counts)
    {
        if (Count == 0) _first = _lowest = _highest = counts;
        if (counts < _lowest) _lowest = counts;
        if (counts > _highest) _highest = counts;
        _fromFirst += counts - _first;
        Count++;
    }
}
