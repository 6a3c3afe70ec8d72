using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>VCD as other readers see it. Source: IEEE 1364, value change dump files, from memory; and the wave viewer GTKWave's own tools.</summary>
public sealed class VcdRecordTests : IDisposable
{
    private const string WhyNot = "vcd2fst and fst2vcd are not on this machine (Debian: apt-get install gtkwave)";

    private readonly Folder _folder = new();

    [Fact]
    public void File_OfAStart_DeclaresEverySignalAndGivesItAtEverySample()
    {
        FullRateRecord.BenchRig.Write(RecordFormat.Vcd, _folder["start.record.vcd"]);

        VcdFile file = VcdFile.Read(_folder["start.record.vcd"]);

        Assert.Equal(("1us", 6_001_000), (file.Timescale, file.LastTime));
        Assert.Equal(("real 64", "wire 1", "wire 16", "integer 32"), (file.Types["armatureAmps"], file.Types["closeLine"], file.Types["stagesClosed"], file.Types["phase"]));
        Assert.Contains("phase: 0 NotSetUp, 1 Ready, 2 Accelerating, 3 Running, 4 Stopping, 5 Tripped, 6 FieldBuilding, 7 Braking", file.Comments);
        Assert.Contains("time 0 is -0.001 s of the case", file.Comments);
        AssertSame(FullRateRecord.BenchRig.Samples, file);
    }

    // Through another program's format and back: what it could not read it could not write.
    [Fact]
    public void File_OfAStart_IsReadByGtkwavesTools()
    {
        Assert.SkipWhen(!IsThere("vcd2fst") || !IsThere("fst2vcd"), WhyNot);
        FullRateRecord.BenchRig.Write(RecordFormat.Vcd, _folder["start.record.vcd"]);

        Run("vcd2fst", _folder["start.record.vcd"], _folder["start.fst"]);
        Run("fst2vcd", "-f", _folder["start.fst"], "-o", _folder["back.vcd"]);
        VcdFile back = VcdFile.Read(_folder["back.vcd"]);

        Assert.Equal(SignalTable.All.Skip(1).Select(signal => signal.Name), back.Types.Keys);
        AssertSame(FullRateRecord.BenchRig.Samples, back);
    }

    [Fact]
    public void File_OfARunThatWasKilled_EndsAtItsLastFlush()
    {
        FullRateRecord start = FullRateRecord.BenchRig.Times(4);
        start.Write(RecordFormat.Vcd, _folder["killed.record.vcd"], isComplete: false);

        string text = File.ReadAllText(_folder["killed.record.vcd"]);
        File.WriteAllText(_folder["killed.record.vcd"], text[..(text.LastIndexOf("\n#", StringComparison.Ordinal) + 1)]);

        AssertSame(start.Samples.Take(19_999), VcdFile.Read(_folder["killed.record.vcd"]));
    }

    // Nothing is written where nothing changes, but the end is.
    [Fact]
    public void File_OfAMachineAtRest_HasItsFirstSampleAndItsEnd()
    {
        Sample rest = FullRateRecord.BenchRig.Samples[0];
        FullRateRecord still = FullRateRecord.BenchRig with { Samples = [.. Enumerable.Range(0, 1000).Select(i => rest with { TimeSeconds = (i - 1) * 0.001 })] };
        still.Write(RecordFormat.Vcd, _folder["still.record.vcd"]);

        Assert.Equal(["#0", "#999000"], File.ReadAllLines(_folder["still.record.vcd"]).Where(line => line[0] == '#'));
    }

    public void Dispose() => _folder.Dispose();

    private static void AssertSame(IEnumerable<Sample> expected, VcdFile file)
    {
        Sample[] samples = [.. expected];
        long[] times = [.. samples.Select(sample => (long)Math.Round((sample.TimeSeconds - samples[0].TimeSeconds) * 1e6))];
        foreach (Signal signal in SignalTable.All.Where(signal => signal.Role != SignalRole.Time))
        {
            double[] read = [.. file.At(signal.Name, times)];
            for (int row = 0; row < samples.Length; row++)
            {
                double wanted = signal.Number(samples[row]);
                bool isSame = signal.Kind switch
                {
                    SignalKind.Bits => ((int)wanted & 0xFFFF) == read[row],
                    SignalKind.LongReal => Math.Abs(wanted - read[row]) <= 1e-8 * Math.Abs(wanted),
                    SignalKind.Real => ((float)wanted).Equals((float)read[row]),
                    _ => wanted == read[row],
                };
                if (!isSame) Assert.Fail(FormattableString.Invariant($"row {row + 1}, {signal.Name}: {wanted:R} came back as {read[row]:R}"));
            }
        }
    }

    private static bool IsThere(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    private static void Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, errors);
    }
}
