using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Ratings;

/// <summary>
/// Cycle after cycle: each start is simulated from the temperatures at which it begins, so that its heat is that of the resistances which
/// they bring; what lies between is <see cref="HeatLaw"/>'s.
/// </summary>
internal sealed class DutyCycles
{
    // The steady cycle is looked for until no body moves by more than this.
    private const double ToleranceKelvin = 1e-3;
    private const int MostIterations = 60;

    // Beyond it nothing that carries current is solid.
    private const double MostCelsius = 3000;

    private readonly StartRunner _runner;
    private readonly HeatLaw _law;
    private readonly double _startSeconds;

    /// <summary>Takes over what is known of the start.</summary>
    /// <param name="runner">Simulates it.</param>
    /// <param name="law">What happens between.</param>
    /// <param name="startSeconds">Longest part of the run that is simulated, s.</param>
    public DutyCycles(StartRunner runner, HeatLaw law, double startSeconds)
    {
        _runner = runner;
        _law = law;
        _startSeconds = startSeconds;
    }

    /// <summary>How many starts were simulated so far.</summary>
    public int Simulated { get; private set; }

    /// <summary>Everything at the temperature of its surroundings, degC.</summary>
    public IReadOnlyList<double> Cold => [.. _law.Bodies.Select(_ => _law.AmbientCelsius)];

    /// <summary>One cycle.</summary>
    /// <param name="from">Temperatures when start is pressed, degC.</param>
    /// <param name="times">Its times.</param>
    public CycleHeat Next(IReadOnlyList<double> from, CycleTimes times)
    {
        double simulated = Math.Min(_startSeconds, times.RunSeconds);
        HeatedStart start = _runner.Run(_law.From(from), simulated);
        Simulated++;
        double[] ended = [.. start.Bodies.Select(body => body.FinalCelsius)], stopped = [.. ended.Select((celsius, i) => Stopped(i, celsius, times))];
        double[] highest = [.. start.Bodies.Select((body, i) => Math.Max(body.HighestCelsius, stopped[i]))];
        string failure = start.Result.Faults.Count > 0 ? $"it trips: {start.Result.Faults[0].Name}" : start.FullSupplySeconds == null ? "it has not come to the full supply when it is stopped" : "";
        return new CycleHeat(from, highest, ended, stopped, [.. stopped.Select((celsius, i) => _law.AfterRest(i, celsius, times.RestSeconds))], failure);
    }

    /// <summary>The cycle that repeats itself for ever.</summary>
    /// <param name="times">Its times.</param>
    /// <returns>Null where the temperatures rise without end, or beyond anything that bears it.</returns>
    /// <remarks>
    /// With the rises d of a start held, a body's temperature from start to start goes as T' = s T + h, so that it ends at h/(1 - s): the sum of the
    /// geometric series d (1 + s + s^2 + ...). The start is simulated from there again until its rises are those of the temperatures.
    /// </remarks>
    public CycleHeat? Steady(CycleTimes times)
    {
        double[] from = [.. Cold];
        for (int i = 0; i < MostIterations; i++)
        {
            CycleHeat cycle = Next([.. from], times);
            if (cycle.Failure.Length > 0) return cycle;
            double moved = 0;
            for (int body = 0; body < from.Length; body++)
            {
                if (EndOfSeries(body, from[body], cycle.StartEndCelsius[body], times) is not double celsius) return null;
                moved = Math.Max(moved, Math.Abs(celsius - from[body]));
                from[body] = celsius;
            }

            if (moved < ToleranceKelvin) return cycle;
        }

        return null;
    }

    /// <summary>Starts in a row, from cold, until one passes a limit.</summary>
    /// <param name="times">Times of a cycle.</param>
    /// <param name="most">Most cycles that are looked at.</param>
    public IEnumerable<CycleHeat> FromCold(CycleTimes times, int most)
    {
        IReadOnlyList<double> from = Cold;
        for (int i = 0; i < most; i++)
        {
            CycleHeat cycle = Next(from, times);
            yield return cycle;
            if (cycle.Failure.Length > 0) yield break;
            from = cycle.EndCelsius;
        }
    }

    /// <summary>Why a cycle is not permitted; empty where it is.</summary>
    public string Excess(CycleHeat? cycle)
    {
        if (cycle == null) return "temperatures rise without end";
        if (cycle.Failure.Length > 0) return "the hot start fails: " + cycle.Failure;
        int worst = Enumerable.Range(0, _law.Bodies.Count).MaxBy(i => cycle.HighestCelsius[i] - (_law.Bodies[i].LimitCelsius ?? double.PositiveInfinity));
        WarmBody body = _law.Bodies[worst];
        if (!body.IsPassedBy(cycle.HighestCelsius[worst])) return "";
        double ambient = _law.AmbientCelsius;
        return $"{body.Name} reaches {Text.Number(body.HotSpot(cycle.HighestCelsius[worst], ambient))} degC of {Text.Number(body.HotSpot(body.LimitCelsius!.Value, ambient))} degC";
    }

    private double Stopped(int body, double celsius, CycleTimes times) =>
        _law.AfterStop(body, _law.AfterRun(body, celsius, times.RunSeconds - Math.Min(_startSeconds, times.RunSeconds)));

    private double? EndOfSeries(int body, double from, double ended, CycleTimes times)
    {
        double kept = Math.Exp(-Math.Min(_startSeconds, times.RunSeconds) / _law.CoolingSeconds[body]), ambient = _law.AmbientCelsius;
        double rise = ended - ambient - (from - ambient) * kept;
        double At(double celsius) => _law.AfterRest(body, Stopped(body, ambient + (celsius - ambient) * kept + rise, times), times.RestSeconds);
        double at = At(from), slope = At(from + 1) - at;
        if (!(slope < 1 - 1e-9)) return Math.Abs(at - from) < ToleranceKelvin ? from : null;
        double celsius = from + (at - from) / (1 - slope);
        return celsius < MostCelsius ? celsius : null;
    }
}
