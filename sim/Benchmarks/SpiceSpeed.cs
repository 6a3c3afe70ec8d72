using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Export;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Ngspice;

namespace StarterCtl.Benchmarks;

/// <summary>
/// The reference start on our solver and on ngspice, both within <see cref="AllowedError"/> of a much tighter run of ngspice: of each
/// the fastest setting that is. The error is the worst of all peaks, after each cutout and of the whole run.
/// </summary>
internal static class SpiceSpeed
{
    private const double AllowedError = 5e-4;
    private const int Rounds = 3;
    private const int FewRuns = 1;
    private const int ManyRuns = 11;

    private static readonly int[] Periods = [1000, 500, 200, 100, 50, 20];
    private static readonly double[] Tolerances = [1e-3, 1e-4, 1e-5];
    private static readonly double[] Steps = [5e-3, 1e-3, 2e-4];
    private static readonly SpiceOptions Tight = new() { RelativeTolerance = 1e-7, LongestStepSeconds = 10e-6 };

    /// <summary>Measures and prints, or says why not.</summary>
    public static void Print()
    {
        if (NgspiceProgram.Path == null)
        {
            Console.WriteLine($"ngspice and ours side by side: left out, {NgspiceProgram.WhyNot}");
            return;
        }

        Console.WriteLine("ngspice and ours side by side, one core, both within 0.05 % of a tight run of ngspice in every peak:");
        PrintGivenTimes();
        PrintIdealSwitching();
    }

    // The same contacts at the same times. ngspice is told when they close: the like of it is our solver told the same, while the
    // whole simulation also senses and decides every millisecond.
    private static void PrintGivenTimes()
    {
        RunSetup setup = ReferenceStart.Setup;
        RunResult own = StartSimulation.Run(setup, ReferenceStart.Settings);
        SpiceScene scene = Scene(setup, ReferenceStart.Settings, setup.Contactors.ClosingSeconds);
        double[] closing = [.. own.Cutouts.Select(cutout => cutout.Seconds)];
        Dictionary<string, double> tight = NgspiceProgram.Solve(SpiceNetlist.Of(scene, Tight with { ClosingSeconds = closing }));
        Console.WriteLine("  reference start, contacts at the same times");
        Own[] ours =
        [
            new("solver alone", WorstError(SolverPeaks(setup, closing), tight), Rate(() => SolverPeaks(setup, closing))),
            new("with its controller every 1 ms", WorstError(Peaks(own), tight), Rate(() => StartSimulation.Run(setup, ReferenceStart.Settings))),
        ];
        Compare(ours, scene, closing, tight);
    }

    // Every peak of the start by the solver without a controller.
    private static Dictionary<string, double> SolverPeaks(RunSetup setup, double[] closing)
    {
        PlantSolver plant = new(new PlantConditions(setup.Machine, setup.Load, setup.Supply, setup.SectionOhms, true, 0), 0);
        Dictionary<string, double> peaks = [];
        double now = setup.Contactors.ClosingSeconds, highest = 0;
        for (int stage = 0; stage <= closing.Length; stage++)
        {
            double end = stage < closing.Length ? closing[stage] : setup.DurationSeconds;
            plant.RestartPeak();
            plant.Advance(end - now);
            highest = Math.Max(highest, plant.PeakAmps);
            if (stage > 0) peaks[$"peak_after_{stage}_amps"] = plant.PeakAmps;
            if (stage < closing.Length) plant.Change(plant.Conditions with { StagesClosed = (1 << (stage + 1)) - 1 });
            now = end;
        }

        peaks["peak_amps"] = highest;
        return peaks;
    }

    // Each decides its cutouts itself: ours on a tick, so that its period is what its accuracy hangs on.
    private static void PrintIdealSwitching()
    {
        RunSetup ideal = ReferenceStart.Setup with { Contactors = new Contactors(0, 0) };
        Settings settings = ReferenceStart.SettingsWithoutConfirmTime();
        SpiceScene scene = Scene(ideal, settings, 0);
        Dictionary<string, double> tight = NgspiceProgram.Solve(SpiceNetlist.Of(scene, Tight));
        foreach (int period in Periods)
        {
            RunSetup setup = ideal with { PeriodMicroseconds = period };
            double error = WorstError(Peaks(StartSimulation.Run(setup, settings)), tight);
            if (error > AllowedError) continue;
            Console.WriteLine("  the same machine, ideal switching that each decides itself");
            Compare([new($"with its controller every {period} us", error, Rate(() => StartSimulation.Run(setup, settings)))], scene, null, tight);
            return;
        }

        Console.WriteLine("  ideal switching: no control period keeps our peaks within the error");
    }

    private static void Compare(Own[] ours, SpiceScene scene, double[]? closing, Dictionary<string, double> tight)
    {
        (SpiceOptions Options, double Error, double Seconds) best = Candidates(closing)
            .Select(options => (Options: options, Error: WorstError(NgspiceProgram.Solve(SpiceNetlist.Of(scene, options)), tight)))
            .Where(tried => tried.Error <= AllowedError)
            .Select(tried => (tried.Options, tried.Error, Seconds: SecondsPerRun(scene, tried.Options)))
            .MinBy(tried => tried.Seconds);
        double process = Median(() => Seconds(() => NgspiceProgram.Solve(SpiceNetlist.Of(scene, best.Options))));
        Line($"    ngspice, reltol {best.Options.RelativeTolerance}, trtol {best.Options.StepErrorFactor}, steps up to {best.Options.LongestStepSeconds * 1e3} ms: {1 / best.Seconds:F1} starts per second, error {100 * best.Error:F4} %");
        foreach (Own own in ours)
        {
            Line($"    ours, {own.What}: {own.Rate:F0} starts per second, error {100 * own.Error:F4} %; {own.Rate * best.Seconds:F0} times ngspice, {own.Rate * process:F0} times with a process for each of its starts");
        }
    }

    private static IEnumerable<SpiceOptions> Candidates(double[]? closing) =>
        from tolerance in Tolerances
        from step in Steps
        from factor in (double[])[7, 1]
        select new SpiceOptions { RelativeTolerance = tolerance, LongestStepSeconds = step, StepErrorFactor = factor, ClosingSeconds = closing };

    private static SpiceScene Scene(RunSetup setup, Settings settings, double lineSeconds) => new()
    {
        Title = "reference start",
        CaseName = "the benchmark's own case",
        CaseSha256 = "none",
        Setup = setup,
        Settings = settings,
        StartSeconds = lineSeconds,
        Own = StartSimulation.Run(setup, settings),
        LeftOut = [],
    };

    private static Dictionary<string, double> Peaks(RunResult run) => SpiceFigure.Of(run).ToDictionary(figure => figure.Name, figure => figure.Own);

    private static double WorstError(Dictionary<string, double> figures, Dictionary<string, double> tight) =>
        tight.Where(figure => figure.Key.StartsWith("peak_", StringComparison.Ordinal))
            .Max(figure => figures.TryGetValue(figure.Key, out double value) ? Math.Abs(value / figure.Value - 1) : double.PositiveInfinity);

    private static double Rate(Action start)
    {
        const double RoundSeconds = 1;
        start();
        return Median(() =>
        {
            long begin = Stopwatch.GetTimestamp();
            int starts = 0;
            for (; Stopwatch.GetElapsedTime(begin).TotalSeconds < RoundSeconds; starts++) start();
            return starts / Stopwatch.GetElapsedTime(begin).TotalSeconds;
        });
    }

    // Many runs in one process less few, so that starting the program and reading the netlist do not count.
    private static double SecondsPerRun(SpiceScene scene, SpiceOptions options) => Median(() =>
    {
        double few = Seconds(() => NgspiceProgram.Solve(SpiceNetlist.Of(scene, options with { Runs = FewRuns })));
        double many = Seconds(() => NgspiceProgram.Solve(SpiceNetlist.Of(scene, options with { Runs = ManyRuns })));
        return (many - few) / (ManyRuns - FewRuns);
    });

    private static double Seconds(Action work)
    {
        long begin = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }

    private static double Median(Func<double> measure) => Enumerable.Range(0, Rounds).Select(_ => measure()).Order().ElementAt(Rounds / 2);

    private static void Line(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private sealed record Own(string What, double Error, double Rate);
}
