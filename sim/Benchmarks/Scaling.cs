using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Benchmarks;

/// <summary>How the cost of a start grows: with time constants, with stages, with simulated time, with the control period; and its memory.</summary>
internal static class Scaling
{
    private const int Rounds = 9;
    private const int StartsPerRound = 60;

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        Console.WriteLine("microseconds per start of the saturating shunt machine, by armature inductance:");
        foreach (double henries in new[] { 1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6 })
        {
            RunSetup setup = ReferenceStart.ShuntSetup;
            Show($"{henries:g} H", setup with { Machine = setup.Machine with { ArmatureHenries = henries } }, ReferenceStart.ShuntSettings);
        }

        Console.WriteLine("the same by the field's time constant:");
        foreach (double seconds in new[] { 0.01, 0.1, 1, 10 })
        {
            RunSetup setup = ReferenceStart.ShuntSetup;
            Show($"{seconds:g} s", setup with { Field = setup.Field! with { Henries = seconds * setup.Field.Ohms } }, ReferenceStart.ShuntSettings);
        }

        Console.WriteLine("constant flux, by simulated time:");
        foreach (double seconds in new[] { 2.5, 5, 10, 20, 40 }) Show($"{seconds:g} s", ReferenceStart.Setup with { DurationSeconds = seconds }, ReferenceStart.Settings);
        Console.WriteLine("constant flux, by control period:");
        foreach (int period in new[] { 4000, 2000, 1000, 500, 250 }) Show($"{period} us", ReferenceStart.Setup with { PeriodMicroseconds = period }, ReferenceStart.Settings);
        Console.WriteLine("constant flux, by stages, each graded from 700 A:");
        foreach (int stages in new[] { 2, 3, 4, 6, 8, 12, 16 })
        {
            (RunSetup setup, Settings settings) = ReferenceStart.WithStages(stages);
            Show($"{stages}", setup, settings);
        }
    }

    private static void Show(string what, RunSetup setup, Settings settings)
    {
        StartSimulation.Run(setup, settings);
        long bytesBefore = GC.GetAllocatedBytesForCurrentThread();
        StartSimulation.Run(setup, settings);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - bytesBefore;
        List<double> rounds = [];
        for (int round = 0; round < Rounds; round++)
        {
            long begin = Stopwatch.GetTimestamp();
            for (int i = 0; i < StartsPerRound; i++) StartSimulation.Run(setup, settings);
            rounds.Add(Stopwatch.GetElapsedTime(begin).TotalMicroseconds / StartsPerRound);
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {what,8}  {rounds.Min(),8:F0} us  {bytes,8} bytes allocated"));
    }
}
