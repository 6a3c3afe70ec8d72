using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Benchmarks;

/// <summary>How long a record of ten minutes takes to write and to replay.</summary>
internal static class ReplayTime
{
    private const int Rounds = 5;
    private const string CaseText = """
        [supply]
        voltage = "48 V"
        [motor]
        kind = "permanent magnet"
        rated-current = "16 A"
        armature-resistance = "0.28 ohm"
        armature-inductance = "0.8 mH"
        constant = "0.138 V s/rad"
        inertia = "0.004 kg m2"
        [load]
        constant-torque = "1 N m"
        [starter]
        peak-current = "32 A"
        stages = 2
        slack = "raise switching current"
        [contactors]
        closing-time = "12 ms"
        opening-time = "8 ms"
        [sensors]
        current-noise = "0.3 A"
        voltage-noise = "0.1 V"
        speed-noise = "5 rpm"
        [run]
        duration = "600 s"
        """;

    /// <summary>Prints the seconds for each format: the run that writes it, and the median of the replays.</summary>
    public static void Print()
    {
        string folder = Directory.CreateTempSubdirectory("starterctl-replay").FullName;
        try
        {
            foreach (RecordFormat format in Enum.GetValues<RecordFormat>()) Print(format, folder);
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    private static void Print(RecordFormat format, string folder)
    {
        string[] paths = [.. RecordFormats.FilesOf(format).Select(file => Path.Combine(folder, "ten-minutes." + file.Suffix))];
        RecordWriter? writer = null;
        Stopwatch watch = Stopwatch.StartNew();
        CaseRunner.Run(CaseFile.Parse("ten-minutes.toml", CaseText), new RecordOrder(header => writer = RecordFormats.Open(format, paths[0], header), true), null, default);
        writer!.Complete();
        writer.Dispose();
        double written = watch.Elapsed.TotalSeconds, megabytes = paths.Sum(path => new FileInfo(path).Length) / 1e6;
        string replayed = format is RecordFormat.Csv or RecordFormat.Parquet
            ? $", replayed in {Enumerable.Range(0, Rounds).Select(_ => ReplaySeconds(paths[0])).Order().ElementAt(Rounds / 2):F2} s" : "";
        Console.WriteLine($"ten minutes of {writer.Count} samples, {format}: {megabytes:F0} MB, run and written in {written:F2} s{replayed}");
    }

    private static double ReplaySeconds(string path)
    {
        Stopwatch watch = Stopwatch.StartNew();
        using RecordReader reader = RecordReader.Open(path);
        ReplayResult result = Replay.Of(reader.Header, reader.Samples());
        if (!result.IsSame) throw new InvalidOperationException("the replay differs");
        return watch.Elapsed.TotalSeconds;
    }
}
