using System;
using System.Globalization;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace StarterCtl.Benchmarks;

/// <summary>Prints every figure that the page beside this project quotes.</summary>
public static class Program
{
    /// <summary>Runs all benchmarks.</summary>
    /// <param name="args"><c>spice</c> runs the comparison with ngspice alone, <c>scaling</c> the growth of a start's cost alone, <c>record</c> the size of a record alone, <c>trials</c> a thousand trials alone, <c>sweep</c> sweeps alone, <c>replay</c> the replay of ten minutes alone, <c>ticks</c> ends behind the ticks.</param>
    public static void Main(string[] args)
    {
        if (args is ["spice"])
        {
            SpiceSpeed.Print();
            return;
        }

        if (args is ["record"])
        {
            RecordSize.Print();
            return;
        }

        if (args is ["trials"])
        {
            TrialSpeed.Print();
            return;
        }

        if (args is ["sweep"])
        {
            SweepSpeed.Print();
            return;
        }

        if (args is ["sweep", string name, string rows])
        {
            SweepSpeed.PrintOne(name, int.Parse(rows, CultureInfo.InvariantCulture));
            return;
        }

        if (args is ["replay"])
        {
            ReplayTime.Print();
            return;
        }

        if (args is ["scaling"])
        {
            Scaling.Print();
            return;
        }

        Console.WriteLine($"starts per second, constant flux, one core:     {Throughput.StartsPerSecond(ReferenceStart.Setup, ReferenceStart.Settings, 1):F0}");
        Console.WriteLine($"starts per second, constant flux, two cores:    {Throughput.StartsPerSecond(ReferenceStart.Setup, ReferenceStart.Settings, 2):F0}");
        // The ticks are timed behind many whole starts of the plain starter, for which the code has then been optimised.
        BenchmarkRunner.Run<TickBenchmarks>(ManualConfig.Create(DefaultConfig.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)));
        if (args is ["ticks"]) return;
        Console.WriteLine($"starts per second, saturating shunt, one core:  {Throughput.StartsPerSecond(ReferenceStart.ShuntSetup, ReferenceStart.ShuntSettings, 1):F0}");
        Console.WriteLine($"starts per second, saturating shunt, two cores: {Throughput.StartsPerSecond(ReferenceStart.ShuntSetup, ReferenceStart.ShuntSettings, 2):F0}");
        Console.WriteLine($"demo, whole process: {DemoTime.Seconds():F2} s");
        Scaling.Print();
        RecordSize.Print();
        TrialSpeed.Print();
        SweepSpeed.Print();
        ReplayTime.Print();
        SpiceSpeed.Print();
    }
}
