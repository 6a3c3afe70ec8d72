using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using System.Threading.Tasks;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.App.Verbs;

/// <summary>Lets a board record the noise of its analogue channels, and says what the pattern usually means.</summary>
internal static class NoiseVerb
{
    private const double LongestSeconds = 3600;

    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        Option<double> seconds = LinkVerb.Bounded("--seconds", "How long the board records, s. It commands nothing: start and stop meanwhile.", 10, 0.1, LongestSeconds);
        return LinkVerb.Asking(
            terminal, "noise", "Record the noise of every analogue channel at rest, with coils on and at the release of a coil. Exit code 1: something was found.",
            "link noise tcp:127.0.0.1:7000 --seconds 20", (call, parsed) => Do(call, parsed.GetValue(seconds)), seconds);
    }

    private static async Task<int> Do(LinkCall call, double seconds)
    {
        // The board records by itself: the line is free meanwhile for whoever starts and stops.
        await using (BoardClient client = await call.ConnectAsync()) await client.BeginNoiseAsync(call.Cancellation);
        call.Terminal.Notes.MarkupLineInterpolated($"recording for {seconds} s; start and stop the motor meanwhile, at the machine or from another terminal");
        call.Terminal.Notes.MarkupLineInterpolated($"what is said below holds with the power circuit isolated: with it live, the quantities themselves change with the coils");
        await Task.Delay(TimeSpan.FromSeconds(seconds), call.Cancellation);

        List<(BoardChannel Channel, ChannelNoise Noise)> found = [];
        await using (BoardClient client = await call.ConnectAsync())
        {
            await client.EndNoiseAsync(call.Cancellation);
            foreach (BoardChannel channel in BoardChannel.All)
            {
                if (await ReadAsync(call, client, channel) is ChannelNoise noise) found.Add((channel, noise));
            }
        }

        ChannelNoiseJson[] channels = [.. found.Select(one => new ChannelNoiseJson(one.Noise, NoiseRules.Judge(one.Noise)))];
        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(channels));
        else for (int i = 0; i < channels.Length; i++) ChannelTable.Show(call.Terminal.Data, found[i].Channel, channels[i].Noise, channels[i].Findings);
        return channels.Any(channel => channel.Findings.Count > 0) ? ExitCode.Failed : ExitCode.Ok;
    }

    // A channel that the board has not is no failure.
    private static async Task<ChannelNoise?> ReadAsync(LinkCall call, BoardClient client, BoardChannel channel)
    {
        try
        {
            return await client.ReadNoiseAsync(channel.Channel, call.Cancellation);
        }
        catch (LinkException refused) when (refused.Reason == LinkReason.OutOfRange)
        {
            return null;
        }
    }
}
