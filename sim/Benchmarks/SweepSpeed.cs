using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Summary;

namespace StarterCtl.Benchmarks;

/// <summary>
/// Sweeps as <c>sweep</c> runs them, rows written as Parquet: rows per second against cores and blocks, a hundred thousand of them as a process
/// with its memory, and what a row consists of. Printed as the tables of the page.
/// </summary>
internal static class SweepSpeed
{
    private const int Whole = 100_000;
    private const int Part = 10_000;
    private const int Rounds = 7;
    private const int Seed = 7;

    private static readonly string[] Names = ["constant-flux", "saturating-shunt"];

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        SweepPlan[] plans = Array.ConvertAll(Names, name => PlanOf(name, Whole));
        Head("process of its own");
        foreach (int rows in new[] { Part, Whole, 2 * Whole }) Row($"{rows} rows, {Environment.ProcessorCount} cores", i => InAProcess(Names[i], rows));

        Head("rows per second, written, fastest of the rounds");
        Cost[] one = [.. plans.Select(_ => Cost.Slowest)], two = [.. one];
        List<double>[] ratios = [.. plans.Select(_ => new List<double>())];
        for (int round = 0; round < Rounds; round++)
        {
            for (int i = 0; i < plans.Length; i++)
            {
                Cost alone = Run(plans[i], 1, SweepRunner.BlockRows), both = Run(plans[i], 2, SweepRunner.BlockRows);
                ratios[i].Add(alone.Seconds / both.Seconds);
                one[i] = one[i].Or(alone);
                two[i] = two[i].Or(both);
            }
        }

        Row("one core", i => Shown(one[i]));
        Row("two cores", i => Shown(two[i]));
        // Round by round: the machine's speed may drift from one to the next.
        Row("two cores over one, middle of the rounds", i => Number(ratios[i].Order().ElementAt(Rounds / 2), "F2"));
        Row("the same by processor time", i => Number(2 * one[i].ProcessorSeconds / two[i].ProcessorSeconds, "F2"));
        foreach (int block in new[] { 64, 256, 1024, 4096, 10_000 })
        {
            Row($"two cores, blocks of {block}", i => Shown(Enumerable.Range(0, Rounds).Aggregate(Cost.Slowest, (best, _) => best.Or(Run(plans[i], 2, block)))));
        }

        PrintParts(plans);
    }

    /// <summary>Runs, writes and sums up one sweep, and prints what it took.</summary>
    /// <param name="name">Which, by its case's name.</param>
    /// <param name="rows">How many starts.</param>
    public static void PrintOne(string name, int rows)
    {
        SweepPlan plan = PlanOf(name, rows);
        double peak = 0;
        Cost cost = Measured(path =>
        {
            Write(plan, path, Environment.ProcessorCount, SweepRunner.BlockRows, rows);
            peak = PeakMegabytes();
            SweepSummary.Of(SweepTable.Open(path));
        });
        Console.WriteLine($"{Number(cost.Seconds, "F1")} s with {Number(cost.Processors, "F2")} processors, peak {Number(peak, "F0")} MB, {Number(PeakMegabytes(), "F0")} MB with the summary");
    }

    // One thing more in each line, on one core.
    private static void PrintParts(SweepPlan[] plans)
    {
        RunSetup[] reference = [ReferenceStart.Setup, ReferenceStart.ShuntSetup];
        Settings[] settings = [ReferenceStart.Settings, ReferenceStart.ShuntSettings];
        Head("microseconds of a row, one core, least of the rounds");
        Row("its values and its seed", i =>
        {
            double[] values = new double[plans[i].Prepared.Variables.Count];
            return Micros(row =>
            {
                plans[i].ValuesOf(row, values);
                plans[i].SeedOf(row);
            });
        });
        Row("the same and its plant", i => Micros(row => plans[i].RowOf(row)));
        Row("the same, run, judged and summed up", i => Micros(row => SweepRunner.Run(plans[i], row)));
        Row("its writing, beside the runs", i => WritingMicros(plans[i]));
        Row("a start of the nominal plant", i => Micros(_ => StartSimulation.Run(plans[i].Prepared.Setup, plans[i].Prepared.Settings)));
        Row("the start of the first table of the page", i => Micros(_ => StartSimulation.Run(reference[i], settings[i])));
        Row("bytes allocated by a row, not written", i => Number(AllocatedBytes(plans[i]), "F0"));
        Row("bytes of a row in the file", i => InFile(path =>
        {
            Write(plans[i], path, Environment.ProcessorCount, SweepRunner.BlockRows, Part);
            return Number(new FileInfo(path).Length / (double)Part, "F0");
        }));
    }

    private static SweepPlan PlanOf(string name, int rows) =>
        SweepPlan.Of(name == Names[0] ? ReferenceSweep.ConstantFlux : ReferenceSweep.SaturatingShunt, new SweepOrder(SamplingMethod.Sobol, rows, Seed));

    private static string InAProcess(string name, int rows)
    {
        using Process process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, ["sweep", name, rows.ToString(CultureInfo.InvariantCulture)]) { RedirectStandardOutput = true })!;
        string printed = process.StandardOutput.ReadToEnd().Trim();
        process.WaitForExit();
        return process.ExitCode == 0 ? printed : throw new InvalidOperationException($"the sweep ended with {process.ExitCode}");
    }

    private static Cost Run(SweepPlan plan, int cores, int block) => Measured(path => Write(plan, path, cores, block, Part));

    private static void Write(SweepPlan plan, string path, int cores, int block, long rows)
    {
        using SweepWriter writer = new(path, SweepHeader.Of(plan));
        SweepRunner.Run(plan, 0, rows, taken => writer.Add(Started(taken)), cores, blockRows: block);
        writer.Complete();
    }

    // A start that trips is a short one, and would be no measure.
    private static ReadOnlyMemory<SweepRow> Started(ReadOnlyMemory<SweepRow> rows)
    {
        foreach (SweepRow row in rows.Span)
        {
            if (row.FirstFault.Length > 0 || row.StagesCutOut != ReferenceStart.Setup.SectionOhms.Count) throw new InvalidOperationException($"row {row.Row} does not start");
        }

        return rows;
    }

    private static Cost Measured(Action<string> work) => InFile(path =>
    {
        using Process process = Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        long began = Stopwatch.GetTimestamp();
        work(path);
        double seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        process.Refresh();
        return new Cost(seconds, (process.TotalProcessorTime - before).TotalSeconds);
    });

    private static T InFile<T>(Func<string, T> use)
    {
        string folder = Directory.CreateTempSubdirectory("starterctl-sweep").FullName;
        try
        {
            return use(Path.Combine(folder, "rows.parquet"));
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static string Micros(Action<int> once)
    {
        const int Calls = 1000;
        return Number(Enumerable.Range(0, Rounds).Min(_ =>
        {
            long began = Stopwatch.GetTimestamp();
            for (int row = 0; row < Calls; row++) once(row);
            return Stopwatch.GetElapsedTime(began).TotalMicroseconds / Calls;
        }), "F1");
    }

    private static string WritingMicros(SweepPlan plan) => InFile(path =>
    {
        SweepRow[] rows = [.. Enumerable.Range(0, SweepRunner.BlockRows).Select(row => SweepRunner.Run(plan, row))];
        using SweepWriter writer = new(path, SweepHeader.Of(plan));
        double least = Enumerable.Range(0, Rounds).Min(_ =>
        {
            long began = Stopwatch.GetTimestamp();
            writer.Add(rows);
            return Stopwatch.GetElapsedTime(began).TotalMicroseconds / rows.Length;
        });
        writer.Complete();
        return Number(least, "F1");
    });

    private static double AllocatedBytes(SweepPlan plan)
    {
        const int Calls = 1000;
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int row = 0; row < Calls; row++) SweepRunner.Run(plan, row);
        return (GC.GetAllocatedBytesForCurrentThread() - before) / (double)Calls;
    }

    private static double PeakMegabytes()
    {
        using Process process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64 / 1e6;
    }

    private static void Head(string what)
    {
        Console.WriteLine();
        Console.WriteLine($"| {what} | constant flux | saturating shunt |");
        Console.WriteLine("|---|---|---|");
    }

    private static void Row(string what, Func<int, string> show) => Console.WriteLine($"| {what} | {string.Join(" | ", Enumerable.Range(0, Names.Length).Select(show))} |");

    private static string Shown(Cost cost) => $"{Number(Part / cost.Seconds, "F0")} with {Number(cost.Processors, "F2")} processors";

    private static string Number(double number, string format) => number.ToString(format, CultureInfo.InvariantCulture);

    // Processors tells how much of the machine the work got: others may use it too.
    private readonly record struct Cost(double Seconds, double ProcessorSeconds)
    {
        public static readonly Cost Slowest = new(double.PositiveInfinity, 0);

        public double Processors => ProcessorSeconds / Seconds;

        public Cost Or(Cost other) => other.Seconds < Seconds ? other : this;
    }
}
