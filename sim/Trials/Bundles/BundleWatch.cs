using System;
using System.Collections.Concurrent;
using System.IO;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Bundles;

/// <summary>Records every tick of every attempt and makes a bundle of it as soon as the attempt has ended, however it did.</summary>
/// <param name="folder">Where the bundles go; it is there.</param>
/// <param name="header">Header of the run.</param>
public sealed class BundleWatch(string folder, RunHeader header) : IDisposable
{
    private readonly ConcurrentDictionary<string, (string RecordPath, RecordWriter Writer)> _open = new();

    /// <summary>Where the record of an attempt is while it runs, and stays when its bundle cannot be made.</summary>
    public string RecordPathOf(Trial trial, int attempt) => Path.Combine(folder, $"{BundleFile.NameOf(trial, attempt)}.{Environment.ProcessId}.record.csv");

    /// <summary>Opens the record of an attempt.</summary>
    /// <exception cref="IOException">It cannot be made.</exception>
    public ISampleSink Started(Trial trial, int attempt)
    {
        string name = BundleFile.NameOf(trial, attempt), path = RecordPathOf(trial, attempt);
        RecordHeader record = RecordHeader.Of(trial.Case, trial.Job.Run.Setup, trial.Job.Run.Settings, trial.Job.Run.Setup.PeriodMicroseconds) with { ByTheClock = header.ByTheClock };
        RecordWriter writer = RecordFormats.Open(RecordFormat.Csv, path, record);
        _open[name] = (path, writer);
        return writer;
    }

    /// <summary>Makes the bundle.</summary>
    /// <exception cref="IOException">It cannot be written; the record so far stays.</exception>
    public void Ended(Trial trial, int number, TrialAttempt attempt)
    {
        string name = BundleFile.NameOf(trial, number);
        if (!_open.TryRemove(name, out (string RecordPath, RecordWriter Writer) open)) return;
        using (open.Writer) open.Writer.Complete();
        string place = Path.Combine(folder, name), beside = place + ".partial";
        try
        {
            BundleFile.Write(beside, BundleManifest.Of(header, trial, number, attempt), trial, open.RecordPath);
            File.Move(beside, place, true);
        }
        catch
        {
            // A ZIP without its end is no use, and may leave room for the rest.
            File.Delete(beside);
            throw;
        }

        File.Delete(open.RecordPath);
        File.Delete(Path.ChangeExtension(open.RecordPath, ".json"));
    }

    /// <summary>Frees the records of attempts that never ended; what they hold stays.</summary>
    public void Dispose()
    {
        foreach ((_, RecordWriter writer) in _open.Values) writer.Dispose();
    }
}
