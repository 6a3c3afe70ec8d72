using System;
using System.Globalization;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.Running;

/// <summary>
/// A case and the starts to be made of it. A row is found by its number alone: it does not depend on which rows are run where, or in which
/// order. May be used from several threads at once.
/// </summary>
public sealed class SweepPlan
{
    /// <summary>Most starts of one sweep.</summary>
    public const long MostRows = 1_000_000_000;

    // All combinations are run without being asked for up to here.
    private const long MostUnasked = 65_536;

    private const ulong NoiseStream = 1UL << 40;
    private const int Seeds = 1_000_000_000;

    private readonly ISampling _sampling;

    private SweepPlan(CaseFile file, PreparedRun prepared, SweepOrder order, ISampling sampling, long count)
    {
        File = file;
        Prepared = prepared;
        Order = order;
        Count = count;
        _sampling = sampling;
    }

    /// <summary>The case.</summary>
    public CaseFile File { get; }

    /// <summary>The nominal case, read; its variables are what differs.</summary>
    public PreparedRun Prepared { get; }

    /// <summary>What was asked for.</summary>
    public SweepOrder Order { get; }

    /// <summary>Number of rows.</summary>
    public long Count { get; }

    /// <summary>Prepares a sweep.</summary>
    /// <param name="file">A case with tolerances.</param>
    /// <param name="order">Which starts.</param>
    /// <exception cref="CaseException">The case cannot be run, has no tolerances, or the order does not fit it.</exception>
    public static SweepPlan Of(CaseFile file, SweepOrder order)
    {
        PreparedRun prepared = CaseRunner.Prepare(file);
        int dimensions = prepared.Variables.Count;
        if (dimensions == 0) throw Refused(file, "a case without tolerances", "[tolerances] with at least one quantity that may differ");
        if (order.Count is < 1 or > MostRows) throw Refused(file, $"{Number(order.Count.Value)} starts", $"1 to {Number(MostRows)}");
        int mostDimensions = order.Method switch
        {
            SamplingMethod.Sobol => SobolSampling.MostDimensions,
            SamplingMethod.Sensitivity => SensitivitySampling.MostDimensions,
            _ => int.MaxValue,
        };
        if (dimensions > mostDimensions)
        {
            throw Refused(file, $"{Number(dimensions)} quantities that differ", $"up to {Number(mostDimensions)} with this method; the Latin hypercube takes any number");
        }

        long leastRows = (long)SensitivitySampling.LeastPoints * SensitivitySampling.GroupRows(dimensions);
        if (order.Method == SamplingMethod.Sensitivity && order.Count < leastRows)
        {
            throw Refused(file, $"{Number(order.Count.Value)} starts", $"at least {Number(leastRows)} with this method and {Number(dimensions)} quantities");
        }

        if (order.Method is SamplingMethod.Sobol or SamplingMethod.Latin && order.Count is null) throw Refused(file, "no number of starts", "--count with this method");
        if (order.Method is SamplingMethod.Corners or SamplingMethod.Factorial && FactorialSampling.CountOf(dimensions, LevelsOf(order)) is null)
        {
            throw Refused(file, $"{Number(LevelsOf(order))} levels of {Number(dimensions)} quantities", "fewer combinations than 2^62, or another method");
        }

        ISampling sampling = order.Method switch
        {
            SamplingMethod.Sobol => new SobolSampling(dimensions, order.Seed),
            SamplingMethod.Latin => new LatinSampling(dimensions, order.Count!.Value, order.Seed),
            SamplingMethod.Sensitivity => new SensitivitySampling(dimensions, order.Count, order.Seed),
            _ => new FactorialSampling(dimensions, LevelsOf(order), order.Seed),
        };
        if (order.Count is null && sampling.IsOfLevels && sampling.Count > MostUnasked)
        {
            throw Refused(file, $"{Number(sampling.Count.Value)} combinations", $"--count, for up to {Number(MostUnasked)} are run unasked");
        }

        return new SweepPlan(file, prepared, order, sampling, Math.Min(order.Count ?? long.MaxValue, sampling.Count ?? long.MaxValue));
    }

    /// <summary>The values of a row, in the order of the variables, SI.</summary>
    /// <param name="row">Its number, 0 to <see cref="Count"/> - 1.</param>
    /// <param name="values">Receives them; as many as there are variables.</param>
    public void ValuesOf(long row, Span<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            PlantVariable variable = Prepared.Variables[i];
            double part = _sampling.At(row, i);
            values[i] = _sampling.IsOfLevels ? Quantiles.Between(variable, part) : Quantiles.ValueAt(variable, part);
        }
    }

    /// <summary>The seed of a row's noise and jitter, 0 to 999 999 999.</summary>
    public int SeedOf(long row) => (int)(SeedMix.Bits(Order.Seed, NoiseStream, (ulong)_sampling.NoiseOf(row)) % Seeds);

    /// <summary>The case on a row's plant, ready to be run to a full record.</summary>
    /// <param name="row">Its number, 0 to <see cref="Count"/> - 1.</param>
    public PreparedRun RowOf(long row)
    {
        double[] values = new double[Prepared.Variables.Count];
        ValuesOf(row, values);
        return Prepared with { Setup = Prepared.RealSetup(values, SeedOf(row)) };
    }

    private static int LevelsOf(SweepOrder order) => order.Method == SamplingMethod.Corners ? 2 : order.Levels;

    private static CaseException Refused(CaseFile file, string found, string allowed) => new([new CaseProblem(file.FileName, 0, "", found, allowed)]);

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
