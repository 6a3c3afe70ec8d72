using System;
using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Bundles;

namespace StarterCtl.App.Verbs;

/// <summary>Feeds a record to the core again.</summary>
internal static class ReplayVerb
{
    private const int MostSettingsBytes = 1 << 20;

    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        Option<bool> verify = new("--verify") { Description = "RECORD is a bundle of a trial: check its hashes, replay its record and judge it again by its limits." };
        Argument<string> recordPath = new("RECORD") { Description = "Record of every control period: CSV or Parquet, as starterctl run CASE --every-period writes it, or a bundle of a trial." };
        Option<string?> with = new("--with")
        {
            Description = "Other settings, to see what they would have decided: a settings file, or a case (.toml).",
            HelpName = "SETTINGS",
        };
        VerbOptions options = new();
        Command command = new("replay", "Feed the readings of a record to the control code again and compare every decision, bit for bit.\n\nExample:\n  starterctl replay out/bench-rig.record.csv\n  starterctl replay out/bench-rig.record.csv --with changed.toml")
        {
            recordPath, options.Json, with, verify,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
            parsed.GetValue(verify)
                ? Verify(terminal, parsed.GetRequiredValue(recordPath), parsed.GetValue(options.Json), cancellation)
                : Do(terminal, parsed.GetRequiredValue(recordPath), parsed.GetValue(with), parsed.GetValue(options.Json), cancellation)));
        command.Validators.Add(result =>
        {
            if (result.GetValue(verify) && result.GetValue(with) != null) result.AddError("--with: found it beside --verify; allowed: one of the two, for a bundle is checked with its own settings");
        });
        return command;
    }

    private static int Do(Terminal terminal, string path, string? with, bool asJson, CancellationToken cancellation)
    {
        Settings? settings = with == null ? null : SettingsOf(with);
        using RecordReader reader = BundleArchive.OpenRecord(path);
        ReplayResult result = terminal.Work("replay", progress => Replay.Of(reader.Header, reader.Samples(progress), settings, cancellation));
        if (result.Ticks == 0) throw new RecordException(path, reader.Break?.ToString() ?? "no row", "a record with rows");

        List<string> warnings = [];
        if (result.Warning is string warning) warnings.Add(warning);
        if (reader.Break is RecordBreak stopped) warnings.Add(stopped.ToString());
        string verdict = result.Verdict + (reader.Break == null ? "" : ", as far as the record can be read");
        if (asJson) terminal.Data.WriteLine(JsonText.Of(ReplayJson.Of(reader.Header, result, reader.Break, verdict, warnings)));
        else ReplayTable.Show(terminal.Results, path, reader.Header, result, verdict);
        foreach (string text in warnings) terminal.Warn(text);
        return result.IsSame || result.IsWithOtherSettings ? ExitCode.Ok : ExitCode.Failed;
    }

    private static int Verify(Terminal terminal, string path, bool asJson, CancellationToken cancellation)
    {
        (BundleManifest manifest, Verdict verdict) = terminal.Work("verify", progress => BundleCheck.Of(path, progress, cancellation));
        if (asJson) terminal.Data.WriteLine(JsonText.Of(new BundleJson(verdict.Word, verdict.Checks, manifest)));
        else BundleTable.Show(terminal.Results, manifest, verdict);
        return verdict.Passed ? ExitCode.Ok : ExitCode.Failed;
    }

    private static Settings SettingsOf(string path)
    {
        if (string.Equals(Path.GetExtension(path), ".toml", StringComparison.OrdinalIgnoreCase)) return CaseRunner.Prepare(CaseFile.Read(path)).Settings;
        const string allowed = "settings as starterctl run writes them, or a case (.toml)";
        try
        {
            if (new FileInfo(path).Length > MostSettingsBytes) throw new RecordException(path, "more than 1 MiB", allowed);
            return SettingsText.Read(File.ReadAllText(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or FormatException)
        {
            throw new RecordException(path, error is FormatException ? $"settings that cannot be used ({error.Message})" : $"a file that cannot be read ({error.Message})", allowed);
        }
    }
}
