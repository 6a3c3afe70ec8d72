using System;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace StarterCtl.Benchmarks;

/// <summary>Prints every figure that the page beside this project quotes.</summary>
public static class Program
{
    /// <summary>Runs all benchmarks.</summary>
    public static void Main()
    {
        Console.WriteLine($"starts per second, one core:  {Throughput.StartsPerSecond(1):F0}");
        Console.WriteLine($"starts per second, two cores: {Throughput.StartsPerSecond(2):F0}");
        Console.WriteLine($"demo, whole process:          {DemoTime.Seconds():F2} s");
        BenchmarkRunner.Run<TickBenchmarks>(ManualConfig.Create(DefaultConfig.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)));
    }
}
