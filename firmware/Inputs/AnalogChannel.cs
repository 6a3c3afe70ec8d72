namespace StarterCtl.Firmware;

/// <summary>
/// One measured quantity: counts, their median, the sensor's limits, units, first-order filter. What cannot be believed is NaN and
/// never a number made up for it: the core trips on NaN by its own rule.
/// </summary>
/// <remarks>
/// Error by the converter: half a count, so half the gain in units. Delay of what changes steadily: (median samples - 1) / 2 control
/// periods and the filter's time constant. A wire that breaks shows after (median samples + 1) / 2 samples.
/// </remarks>
public sealed class AnalogChannel
{
    private readonly IAnalogInput _input;
    private readonly AnalogSetup _setup;
    private readonly Median _median;
    private readonly FirstOrder _filter;

    /// <summary>The quantity in its unit; NaN while <see cref="Fault"/> says why.</summary>
    public float Units = float.NaN;

    /// <summary>Counts as last converted, before any filter: for calibration and noise.</summary>
    public int Counts;

    /// <summary>Why there is no number.</summary>
    public AnalogFault Fault = AnalogFault.NotRead;

    /// <summary>Builds the channel.</summary>
    public AnalogChannel(IAnalogInput input, AnalogSetup setup)
    {
        _input = input;
        _setup = setup;
        _median = new Median(setup.MedianSamples);
        _filter = new FirstOrder(setup.FilterMicroseconds);
    }

    /// <summary>Largest count that the converter can show.</summary>
    public int FullScaleCounts => _input.FullScale;

    /// <summary>Reads the input once.</summary>
    /// <param name="elapsedMicroseconds">Time since the last reading.</param>
    public void Update(int elapsedMicroseconds)
    {
        Counts = _input.Read();
        if (Counts < 0 || Counts > _input.FullScale)
        {
            _median.Restart();
            Fail(AnalogFault.NotRead);
            return;
        }

        // The limits look at the median: a single wrong sample is no broken wire.
        int counts = _median.Next(Counts);
        if (counts < _setup.LowestCounts)
        {
            Fail(AnalogFault.TooFewCounts);
            return;
        }

        if (counts > _setup.HighestCounts)
        {
            Fail(AnalogFault.TooManyCounts);
            return;
        }

        Fault = AnalogFault.None;
        Units = _filter.Next(_setup.Calibration.ToUnits(counts), elapsedMicroseconds);
    }

    private void Fail(AnalogFault fault)
    {
        Fault = fault;
        Units = float.NaN;
        _filter.Restart();
    }
}
