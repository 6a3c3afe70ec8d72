using System.Collections.Generic;
using System.CommandLine;
using System.Threading.Tasks;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.App.Verbs;

/// <summary>
/// Brings a channel of a board to what another instrument shows, one step in each call. The board keeps what was taken between two calls, so
/// that a person has time to go to the instrument and a script has nothing to answer.
/// </summary>
internal static class CalibrateVerb
{
    private const string Names = "volts, amps, field-amps or speed";
    private const string Span = "span";
    private const string Example = "link calibrate speed zero tcp:127.0.0.1:7000\nlink calibrate speed span tcp:127.0.0.1:7000 --true \"3050 rpm\"\nlink calibrate speed save tcp:127.0.0.1:7000";

    private static readonly Dictionary<string, (CalibrationStep Step, string Next)> Steps = new()
    {
        ["show"] = (CalibrationStep.Read, ""),
        ["zero"] = (CalibrationStep.TakeZero, "next: make the quantity as large as it safely can be, let it stand still, read the other instrument, then: span with --true and what it shows"),
        [Span] = (CalibrationStep.TakeSpan, "next: compare new with in force; a change of more than a few per cent wants a reason. Once everything has been off for 1 s: save, or drop"),
        ["save"] = (CalibrationStep.Save, "saved, read back by the board and in force. Next: look at a third value between the two; if it is wrong: undo"),
        ["undo"] = (CalibrationStep.Undo, "the former pair is in force and kept; undo again undoes that"),
        ["drop"] = (CalibrationStep.Abort, "what was taken is dropped; what was in force still is"),
    };

    /// <summary>The verb with its arguments.</summary>
    public static Command Build(Terminal terminal)
    {
        Argument<string> channel = new("CHANNEL") { Description = $"{Names}." };
        Argument<string> step = new("STEP") { Description = "show; zero; span; save; undo, which puts the former pair in force; or drop, which forgets what was taken." };
        Option<string?> shown = new("--true") { Description = "What another instrument shows, with its unit; for span, and only there.", HelpName = "QUANTITY" };
        Command command = LinkVerb.Asking(
            terminal, "calibrate", "Calibrate a channel in two points, a step in each call: its zero with every output off, a second point whose true value you have measured, then save.", Example,
            (call, parsed) => Do(call, BoardChannel.Find(parsed.GetRequiredValue(channel))!, parsed.GetRequiredValue(step), parsed.GetValue(shown)), channel, step, shown);
        command.Validators.Add(result =>
        {
            if (Problem(result.GetValue(channel), result.GetValue(step), result.GetValue(shown)) is string problem) result.AddError(problem);
        });
        return command;
    }

    // All three at once: what is allowed for the true value depends on the others. What is missing is said by the parser.
    private static string? Problem(string? name, string? step, string? shown)
    {
        if (name == null || step == null) return null;
        if (BoardChannel.Find(name) is not BoardChannel channel) return $"CHANNEL: found \"{name}\"; allowed: {Names}";
        if (!Steps.ContainsKey(step)) return $"STEP: found \"{step}\"; allowed: show, zero, span, save, undo or drop";
        if (step != Span) return shown == null ? null : $"--true: found \"{shown}\" with {step}; allowed: with {Span} only";
        string found = "nothing";
        return shown != null && Units.TryParse(shown, channel.Dimension, out _, out found) ? null : $"--true: found {found}; allowed: {Units.Allowed(channel.Dimension)}";
    }

    private static async Task<int> Do(LinkCall call, BoardChannel channel, string word, string? shown)
    {
        (CalibrationStep step, string next) = Steps[word];
        float trueUnits = shown == null ? 0f : (float)Units.Parse(shown, channel.Dimension);
        await using BoardClient client = await call.ConnectAsync();
        if (step == CalibrationStep.TakeZero) await client.CalibrateAsync(channel.Channel, CalibrationStep.Begin, cancellation: call.Cancellation);
        BoardCalibration found = await client.CalibrateAsync(channel.Channel, step, trueUnits, call.Cancellation);
        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(found));
        else ChannelTable.Show(call.Terminal.Data, channel, found);
        if (next.Length > 0) call.Terminal.Notes.MarkupLineInterpolated($"{next}");
        return ExitCode.Ok;
    }
}
