using System.Collections.Generic;
using System.IO;
using StarterCtl.App.Verbs;
using StarterCtl.Engine;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.App.Tables;

/// <summary>What a board says of an analogue channel, in lines.</summary>
internal static class ChannelTable
{
    /// <summary>Shows how a channel's calibration stands.</summary>
    public static void Show(TextWriter writer, BoardChannel channel, BoardCalibration found)
    {
        writer.WriteLine($"channel     {channel.Words}, 0 to {found.FullScaleCounts} counts");
        writer.WriteLine($"state       {State(found.State)}");
        if (found.Reason != CalibrationReason.Done) writer.WriteLine($"refused     {CalibrationText.Of(found)}");
        if (found.MeanCounts != 0) writer.WriteLine($"last point  mean of {Text.Number(found.MeanCounts)} counts, spread of {found.SpreadCounts}");
        if (found.New != null) writer.WriteLine($"new         {Pair(found.New, channel)}");
        writer.WriteLine($"in force    {Pair(found.InForce, channel)}");
        writer.WriteLine($"former      {Pair(found.Former, channel)}");
        writer.WriteLine($"nominal     {Pair(found.Nominal, channel)}");
    }

    /// <summary>Shows what was recorded of a channel's noise, what it usually means and what to do.</summary>
    public static void Show(TextWriter writer, BoardChannel channel, ChannelNoise noise, IReadOnlyList<NoiseFinding> findings)
    {
        writer.WriteLine($"{channel.Words}, 0 to {noise.FullScaleCounts} counts");
        Show(writer, "at rest", noise.Rest);
        Show(writer, "coils on", noise.CoilsOn);
        Show(writer, "at a release", noise.Release);
        foreach (NoiseFinding finding in findings)
        {
            writer.WriteLine($"  {finding.Pattern}: {finding.Found}");
            writer.WriteLine($"    usually: {finding.Meaning}");
            writer.WriteLine($"    do:      {finding.Remedy}");
        }

        if (findings.Count == 0) writer.WriteLine("  nothing stands out");
    }

    private static void Show(TextWriter writer, string situation, NoiseSamples samples) => writer.WriteLine(samples.Count == 0
        ? $"  {situation,-12}  no samples"
        : $"  {situation,-12}  {samples.Count} samples of {samples.Lowest} to {samples.Highest}, mean {Text.Number(samples.Mean)}, deviation {Text.Number(samples.Deviation)}, largest step {samples.LargestStep}");

    private static string Pair(OffsetAndGain pair, BoardChannel channel) => $"(counts - {Text.Number(pair.OffsetCounts)}) x {Text.Number(pair.UnitsPerCount)} {channel.Unit}";

    private static string State(CalibrationState state) => state switch
    {
        CalibrationState.Idle => "no calibration is going on",
        CalibrationState.Begun => "begun; the zero is to be taken",
        CalibrationState.ZeroTaken => "the zero is there; the second point is to be taken",
        CalibrationState.Complete => "both points are there; nothing is in force before save",
        _ => "samples are being taken",
    };
}
