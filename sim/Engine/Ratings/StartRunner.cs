using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>Simulates starts of a case from standstill at temperatures that are asked for, without the case's events.</summary>
internal sealed class StartRunner
{
    // Twice the start's own time behind it everything has settled that a start sets moving.
    private const double SettledRatio = 3;
    private const double JustBehindRatio = 1.1;
    private const double FirstGuess = 1.5;
    private const int MostDoublings = 6;

    private readonly RunSetup _setup;
    private readonly Settings _settings;
    private readonly CancellationToken _cancellation;

    /// <summary>Prepares a case: one start, pressed at 0.</summary>
    public StartRunner(PreparedRun prepared, CancellationToken cancellation)
    {
        _settings = prepared.Settings;
        _setup = prepared.Setup with { Events = [], InitialSpeedRadPerSec = 0 };
        _cancellation = cancellation;
        if (prepared.Setup.Heat is ThermalSetup heat) Cold = new BodyCelsius(heat.AmbientCelsius, heat.AmbientCelsius, [.. heat.Sections.Select(_ => heat.AmbientCelsius)]);
    }

    /// <summary>Everything at the temperature of its surroundings; null where nothing warms up.</summary>
    public BodyCelsius? Cold { get; }

    /// <summary>The start from cold, as long as it takes until the machine has settled.</summary>
    /// <param name="expectedSeconds">About how long it takes to the full supply, s; null: nobody knows.</param>
    /// <param name="failure">Why it did not come to the full supply; empty where it did.</param>
    /// <returns>The start, and just its length to behind the full supply, s.</returns>
    public (HeatedStart Start, double AloneSeconds) Settled(double? expectedSeconds, out string failure)
    {
        double seconds = Math.Max(FirstGuess * (expectedSeconds is double known && double.IsFinite(known) ? known : 1), 1);
        HeatedStart start = Run(Cold, seconds);
        for (int i = 0; i < MostDoublings && start.FullSupplySeconds == null && start.Result.Faults.Count == 0; i++) start = Run(Cold, seconds *= 2);
        failure = start.Result.Faults.Count > 0 ? $"the fault {start.Result.Faults[0].Name} after {Text.Number(start.Result.Faults[0].Seconds)} s"
            : start.FullSupplySeconds == null ? $"resistance still in after {Text.Number(seconds)} s" : "";
        if (failure.Length > 0) return (start, seconds);
        double full = start.FullSupplySeconds!.Value;
        return (Run(Cold, OnTicks(SettledRatio * full)), OnTicks(JustBehindRatio * full));
    }

    /// <summary>A start.</summary>
    /// <param name="from">Temperatures at its beginning; null where nothing warms up.</param>
    /// <param name="seconds">Its length, s.</param>
    /// <param name="record">Takes its samples; null: nobody does.</param>
    public HeatedStart Run(BodyCelsius? from, double seconds, ISampleSink? record = null)
    {
        RunSetup setup = _setup with { DurationSeconds = seconds };
        if (from != null) setup = setup with { Heat = setup.Heat! with { Start = from } };
        RunResult result = StartSimulation.Run(setup, _settings, record, cancellation: _cancellation);
        return new HeatedStart(result, seconds, FullSupply(result.Phases));
    }

    /// <summary>A record with a sample about every millisecond of such a start.</summary>
    public Record NewRecord() => new(Math.Max(1, 1000 / _setup.PeriodMicroseconds) * (long)_setup.PeriodMicroseconds);

    private static double? FullSupply(IReadOnlyList<PhaseEntry> phases) => phases.FirstOrDefault(entry => entry.Phase == Phase.Running)?.Seconds;

    private double OnTicks(double seconds)
    {
        double period = _setup.PeriodMicroseconds * 1e-6;
        return Math.Ceiling(seconds / period) * period;
    }
}
