namespace StarterCtl.Firmware;

/// <summary>What the samples of one channel in one situation come to, in counts.</summary>
/// <remarks>Mean and sum of squares go on sample by sample (B. P. Welford, Technometrics 4, 1962; from memory), which single precision bears.</remarks>
public sealed class NoiseFigures
{
    /// <summary>Samples that are taken at most; 10 s at a control period of 1 ms.</summary>
    public const int MostSamples = 10000;

    private float _squares;

    /// <summary>How many samples.</summary>
    public int Count;

    /// <summary>Smallest sample.</summary>
    public int Lowest;

    /// <summary>Largest sample.</summary>
    public int Highest;

    /// <summary>Mean.</summary>
    public float Mean;

    /// <summary>Largest change from one control period to the next.</summary>
    public int LargestStep;

    /// <summary>Square of the standard deviation; 0 of fewer than two samples.</summary>
    public float Variance => Count < 2 ? 0f : _squares / (Count - 1);

    /// <summary>Forgets everything.</summary>
    public void Restart()
    {
        Count = 0;
        Lowest = 0;
        Highest = 0;
        Mean = 0f;
        LargestStep = 0;
        _squares = 0f;
    }

    /// <summary>Adds a sample.</summary>
    /// <param name="counts">The sample.</param>
    /// <param name="step">Its change from the control period before, 0 or more.</param>
    public void Add(int counts, int step)
    {
        if (Count >= MostSamples) return;
        if (Count == 0 || counts < Lowest) Lowest = counts;
        if (Count == 0 || counts > Highest) Highest = counts;
        if (step > LargestStep) LargestStep = step;
        Count++;
        float distance = counts - Mean;
        Mean += distance / Count;
        _squares += distance * (counts - Mean);
    }
}
