using System;
using System.CommandLine;
using System.IO;
using System.Text;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Bundles;
using StarterCtl.Trials.Files;

namespace StarterCtl.App.Verbs;

/// <summary>Makes a trial of a record.</summary>
internal static class ExportTrialVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        Argument<string> recordPath = new("RECORD") { Description = "Record of a start: CSV, Parquet or a bundle of a trial." };
        Option<string> casePath = new("--case") { Description = "Case (TOML) of the machine that was recorded.", HelpName = "CASE", Required = true };
        VerbOptions options = new();
        Command command = new("trial", "Write a record as a trial: what the inputs showed as events, the fault and the cutouts that were seen as expectations.\n\nExample:\n  starterctl export trial out/bench-rig.record.csv --case sim/cases/bench-rig.toml --out rig.trial.toml")
        {
            recordPath, casePath, options.Out,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
            Do(terminal, parsed.GetRequiredValue(recordPath), parsed.GetRequiredValue(casePath), parsed.GetValue(options.Out), cancellation)));
        return command;
    }

    private static int Do(Terminal terminal, string recordPath, string casePath, string? place, CancellationToken cancellation)
    {
        CaseFile file = CaseFile.Read(casePath);
        string path = OutputPlace.OfStem(place, BundleArchive.StemOf(recordPath)).PathOf("trial.toml");
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string fromFolder = Path.GetRelativePath(folder, Path.GetFullPath(casePath)).Replace('\\', '/');
        using RecordReader reader = BundleArchive.OpenRecord(recordPath);
        string text = terminal.Work("export", progress => RecordedTrial.Of(Path.GetFileName(recordPath), reader.Header, reader.Samples(progress), fromFolder));
        cancellation.ThrowIfCancellationRequested();
        // Whatever is wrong between record and case is said now and not when the trial is run.
        TrialFile.Read(path, Encoding.UTF8.GetBytes(text), _ => File.ReadAllBytes(casePath));

        using OutputFiles files = new(casePath);
        files.Add("the trial", path, writer => writer.Write(text));
        files.Commit();
        if (reader.Break is RecordBreak stopped) terminal.Warn(stopped.ToString());
        if (!string.Equals(reader.Header.CaseSha256, file.Sha256, StringComparison.OrdinalIgnoreCase)) terminal.Warn($"The record was made with another case, {reader.Header.Case}, or with one that has been changed since.");
        files.Report(terminal);
        return ExitCode.Ok;
    }
}
