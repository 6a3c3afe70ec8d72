using System.Collections.Generic;
using System.CommandLine;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Bundles;

namespace StarterCtl.App.Verbs;

/// <summary>Writes a record, such as that of a trial, in other formats.</summary>
internal static class ExportRecordVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        Argument<string> recordPath = new("RECORD") { Description = "A bundle of a trial, or a record: CSV or Parquet." };
        RecordOptions record = new();
        VerbOptions options = new();
        Command command = new("record", "Write the record of a trial, or any other, in the formats of other programs.\n\nExample:\n  starterctl export record out/overload.crane-running.bundle.zip --format comtrade,parquet")
        {
            recordPath, record.Format, options.Out,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
            Do(terminal, parsed.GetRequiredValue(recordPath), record.FormatsOf(parsed), parsed.GetValue(options.Out), cancellation)));
        return command;
    }

    private static int Do(Terminal terminal, string path, IReadOnlyList<RecordFormat> formats, string? place, CancellationToken cancellation)
    {
        using RecordReader reader = BundleArchive.OpenRecord(path);
        using OutputFiles files = new(path);
        using RecordOutput output = new(files, OutputPlace.OfStem(place, BundleArchive.StemOf(path)), formats);
        long rows = terminal.Work("export", progress =>
        {
            long count = 0;
            ISampleSink sink = output.Open(reader.Header);
            foreach (Sample sample in reader.Samples(progress))
            {
                if (count++ % RecordReader.RowsBetweenLooks == 0) cancellation.ThrowIfCancellationRequested();
                sink.Add(sample);
            }

            output.Complete();
            return count;
        });
        if (rows == 0) throw new RecordException(path, reader.Break?.ToString() ?? "no row", "a record with rows");
        files.Commit();
        if (reader.Break is RecordBreak stopped) terminal.Warn(stopped.ToString());
        files.Report(terminal);
        return ExitCode.Ok;
    }
}
