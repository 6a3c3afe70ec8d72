using System;
using System.IO;
using System.Runtime.CompilerServices;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Benchmarks;

/// <summary>What a record costs in memory and as a file.</summary>
internal static class RecordSize
{
    /// <summary>Prints bytes per sample and per simulated second, for a record of every control period.</summary>
    public static void Print()
    {
        RunSetup setup = ReferenceStart.Setup;
        long before = GC.GetAllocatedBytesForCurrentThread();
        StartSimulation.Run(setup, ReferenceStart.Settings);
        long without = GC.GetAllocatedBytesForCurrentThread() - before;
        Record record = new(setup.PeriodMicroseconds);
        StartSimulation.Run(setup, ReferenceStart.Settings, record);
        long with = GC.GetAllocatedBytesForCurrentThread() - before - without;
        using StringWriter text = new();
        CsvRecord.Write(record, text);
        double csv = text.GetStringBuilder().Length, samples = record.Samples.Count, perSecond = 1e6 / setup.PeriodMicroseconds;
        Console.WriteLine($"record: {Unsafe.SizeOf<Sample>()} bytes a sample kept, {(with - without) / samples:F0} allocated, {csv / samples:F0} as CSV;"
            + $" {perSecond:F0} samples a simulated second: {Unsafe.SizeOf<Sample>() * perSecond / 1000:F0} kB kept, {csv / samples * perSecond / 1000:F0} kB as CSV");
    }
}
