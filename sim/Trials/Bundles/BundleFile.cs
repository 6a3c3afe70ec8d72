using System;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Text;

namespace StarterCtl.Trials.Bundles;

/// <summary>A bundle: the trial, its case, the record of every tick with settings and hashes, and the verdict, in one ZIP file.</summary>
public static class BundleFile
{
    /// <summary>How its name ends.</summary>
    public const string Extension = ".bundle.zip";

    internal const string ManifestName = "manifest.json";
    internal const string TrialName = "trial.toml";
    internal const string CaseName = "case.toml";
    internal const string RecordName = "record.csv";
    internal const string RecordHeaderName = "record.json";

    // The same attempt gives the same bytes, whenever it was made; ZIP knows no earlier year.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Name of the file for an attempt: "overload.crane-running.bundle.zip".</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="attempt">Which attempt, from 1.</param>
    public static string NameOf(Trial trial, int attempt)
    {
        string stem = string.Concat(trial.Name.Replace(" [", ".", StringComparison.Ordinal).TrimEnd(']').Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '.' ? letter : '-'));
        return stem + (attempt > 1 ? $".attempt-{attempt}" : "") + Extension;
    }

    /// <summary>Writes a bundle.</summary>
    /// <param name="path">Its file.</param>
    /// <param name="manifest">What it says of itself.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="recordPath">The record, CSV with its header beside it.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(string path, BundleManifest manifest, Trial trial, string recordPath)
    {
        using FileStream stream = new(path, FileMode.Create, FileAccess.Write);
        using ZipArchive archive = new(stream, ZipArchiveMode.Create);
        Add(archive, ManifestName, Encoding.UTF8.GetBytes(manifest.ToJson()));
        Add(archive, TrialName, trial.FileBytes.Span);
        Add(archive, CaseName, trial.CaseBytes.Span);
        AddFile(archive, RecordHeaderName, Path.ChangeExtension(recordPath, ".json"));
        AddFile(archive, RecordName, recordPath);
    }

    private static void Add(ZipArchive archive, string name, ReadOnlySpan<byte> bytes)
    {
        using Stream entry = Open(archive, name);
        entry.Write(bytes);
    }

    private static void AddFile(ZipArchive archive, string name, string path)
    {
        using FileStream file = File.OpenRead(path);
        using Stream entry = Open(archive, name);
        file.CopyTo(entry);
    }

    private static Stream Open(ZipArchive archive, string name)
    {
        ZipArchiveEntry entry = archive.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = NoTime;
        return entry.Open();
    }
}
