using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>A sample of every control period of a start, with the header that its writers are given.</summary>
internal sealed record FullRateRecord(RecordHeader Header, IReadOnlyList<Sample> Samples)
{
    private static readonly Lazy<FullRateRecord> Noisy = new(() => Of("bench-rig.toml", ShippedCase.Text("bench-rig") + NoiseOf(11)));

    /// <summary>The bench rig with noise on current and speed: 6002 samples.</summary>
    public static FullRateRecord BenchRig => Noisy.Value;

    /// <summary>Noise for a case that has no table of sensors.</summary>
    public static string NoiseOf(int seed) => $"\n[sensors]\ncurrent-noise = \"0.3 A\"\nvoltage-noise = \"0.1 V\"\nspeed-noise = \"5 rpm\"\nseed = {seed}\n";

    /// <summary>Runs a case.</summary>
    public static FullRateRecord Of(string name, string text)
    {
        FullRateRecord? record = null;
        CaseRunner.Run(CaseFile.Parse(name, text), new RecordOrder(Open, true), null, TestContext.Current.CancellationToken);
        return record!;

        ISampleSink Open(RecordHeader header)
        {
            Record samples = new(header.RecordPeriodMicroseconds);
            record = new FullRateRecord(header, samples.Samples);
            return samples;
        }
    }

    /// <summary>Writes it to files.</summary>
    /// <param name="format">The format.</param>
    /// <param name="path">The first file.</param>
    /// <param name="isComplete">False leaves it as a run that was killed behind its last flush.</param>
    public void Write(RecordFormat format, string path, bool isComplete = true)
    {
        using RecordWriter writer = RecordFormats.Open(format, path, Header);
        foreach (Sample sample in Samples) writer.Add(sample);
        if (isComplete) writer.Complete();
    }

    /// <summary>The same samples several times over, each pass behind the other.</summary>
    public FullRateRecord Times(int count)
    {
        double pass = Samples[^1].TimeSeconds + Header.ControlPeriodMicroseconds * 1e-6 - Samples[0].TimeSeconds;
        return this with { Samples = [.. Enumerable.Range(0, count).SelectMany(i => Samples.Select(sample => sample with { TimeSeconds = sample.TimeSeconds + i * pass }))] };
    }
}
