using System;
using System.Collections.Generic;
using System.IO;
using System.Text;
using StarterCtl.Engine.Records;
using StarterCtl.Trials;
using StarterCtl.Trials.Bundles;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;

namespace StarterCtl.App.Output;

/// <summary>The files of a run of trials: JSON lines that grow while it runs, JUnit XML at its end.</summary>
internal sealed class TrialProducts : ITrialWatch, IDisposable
{
    private const string LinesName = "trials.jsonl";
    private const string XmlName = "trials.junit.xml";
    private const string RecordIsKept = "; what was recorded so far is kept there";

    private readonly RunHeader _header;
    private readonly string _linesPath;
    private readonly StreamWriter _writer;
    private readonly VerdictLines _lines;
    private readonly OutputFiles _files = new(null);

    private readonly BundleWatch? _bundles;
    private readonly string _folder;

    private TrialProducts(string folder, RunHeader header, StreamWriter writer, bool hasBundles)
    {
        _folder = folder;
        if (hasBundles) _bundles = new BundleWatch(folder, header);
        _header = header;
        _linesPath = Path.Combine(folder, LinesName);
        _writer = writer;
        _lines = new VerdictLines(writer);
        XmlPath = Path.Combine(folder, XmlName);
    }

    private string XmlPath { get; }

    /// <summary>Opens the lines in their place and writes the header: what is done when the run is killed can be read there.</summary>
    /// <exception cref="OutputException">They cannot be written.</exception>
    /// <param name="folder">Where they go; made as needed.</param>
    /// <param name="header">Header of the run.</param>
    /// <param name="hasBundles">True to keep every attempt in a bundle.</param>
    public static TrialProducts Open(string folder, RunHeader header, bool hasBundles)
    {
        string path = Path.Combine(folder, LinesName);
        TrialProducts? products = null;
        Try(path, () =>
        {
            Directory.CreateDirectory(folder);
            products = new TrialProducts(folder, header, new StreamWriter(path, false, new UTF8Encoding(false)), hasBundles);
            products._lines.Begin(header);
        });
        return products!;
    }

    /// <inheritdoc/>
    public ISampleSink? Started(Trial trial, int attempt)
    {
        ISampleSink? record = null;
        if (_bundles != null) Try(_folder, () => record = new SinkOnDisk(_bundles.RecordPathOf(trial, attempt), _bundles.Started(trial, attempt)));
        return record;
    }

    /// <inheritdoc/>
    public void Ended(Trial trial, int attempt, TrialAttempt ended)
    {
        if (_bundles != null) Try(_bundles.RecordPathOf(trial, attempt), () => _bundles.Ended(trial, attempt, ended), RecordIsKept);
    }

    /// <inheritdoc/>
    public void Done(TrialResult result) => Try(_linesPath, () => _lines.Add(result));

    /// <summary>Writes what stands at the end.</summary>
    /// <exception cref="OutputException">It cannot be written.</exception>
    public void Close(IReadOnlyList<TrialResult> results)
    {
        Try(_linesPath, () => _lines.End(VerdictCounts.Of(results)));
        _files.Add("the verdicts for build servers", XmlPath, writer => JUnitXml.Write(_header, results, writer));
        _files.Commit();
    }

    /// <summary>Says what was written where.</summary>
    public void Report(Terminal terminal)
    {
        terminal.Wrote("the verdicts as JSON lines", _linesPath);
        _files.Report(terminal);
        if (_bundles != null) terminal.Wrote("the bundles, one for each attempt", _folder);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _files.Dispose();
        _bundles?.Dispose();
        try
        {
            _writer.Dispose();
        }
        catch (IOException)
        {
            // A line that did not get to a full disk has been reported by the one who wrote it.
            return;
        }
    }

    private static void Try(string path, Action write, string left = "")
    {
        try
        {
            write();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw OutputException.Of(path, error, left);
        }
    }

    // A record that cannot go on ends the run with a word for the disk, not for the target.
    private sealed class SinkOnDisk(string path, ISampleSink record) : ISampleSink
    {
        public long PeriodMicroseconds => record.PeriodMicroseconds;

        public void Add(in Sample sample)
        {
            try
            {
                record.Add(sample);
            }
            catch (IOException error)
            {
                throw OutputException.Of(path, error, RecordIsKept);
            }
        }
    }
}
