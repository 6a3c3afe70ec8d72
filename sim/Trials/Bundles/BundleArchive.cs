using System;
using System.IO;
using System.IO.Compression;
using System.Text;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Bundles;

/// <summary>What is in a bundle, read from where it is.</summary>
public sealed class BundleArchive : IDisposable
{
    private const long MostRecordBytes = 1L << 33;
    private const int MostOtherBytes = 1 << 26;
    private const string Allowed = "a bundle as starterctl trial --bundle writes it";

    private readonly string _path;
    private readonly ZipArchive _archive;

    private BundleArchive(string path, ZipArchive archive)
    {
        _path = path;
        _archive = archive;
    }

    /// <summary>Opens a bundle.</summary>
    /// <param name="path">The ZIP file.</param>
    /// <exception cref="RecordException">It is none.</exception>
    public static BundleArchive Open(string path)
    {
        try
        {
            return new BundleArchive(path, ZipFile.OpenRead(path));
        }
        catch (Exception error) when (error is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            throw new RecordException(path, $"no bundle ({error.Message})", Allowed);
        }
    }

    /// <summary>Opens a record: that of a bundle (.zip), or one of its own (CSV, Parquet).</summary>
    /// <param name="path">The file, or the folder of a Parquet record that was never finished.</param>
    /// <exception cref="RecordException">It is not there, or no record.</exception>
    public static RecordReader OpenRecord(string path) => IsBundle(path) ? new BundleRecordReader(Open(path)) : RecordReader.Open(path);

    /// <summary>What a record is called, without what says that it is one: "bench-rig" of "bench-rig.record.csv".</summary>
    public static string StemOf(string path)
    {
        string name = Path.GetFileName(Path.TrimEndingDirectorySeparator(path));
        if (IsBundle(path)) return name.EndsWith(BundleFile.Extension, StringComparison.OrdinalIgnoreCase) ? name[..^BundleFile.Extension.Length] : Path.GetFileNameWithoutExtension(name);
        string stem = Path.GetFileNameWithoutExtension(name);
        const string record = ".record";
        return stem.EndsWith(record, StringComparison.OrdinalIgnoreCase) ? stem[..^record.Length] : stem;
    }

    /// <summary>Its manifest.</summary>
    /// <exception cref="RecordException">It has none that can be read.</exception>
    public BundleManifest Manifest() => BundleManifest.Read($"{_path}: {BundleFile.ManifestName}", Encoding.UTF8.GetString(Bytes(BundleFile.ManifestName)));

    /// <summary>The bytes of a part.</summary>
    /// <exception cref="RecordException">It is not there, or cannot be unpacked.</exception>
    internal byte[] Bytes(string name)
    {
        ZipArchiveEntry entry = EntryOf(name, MostOtherBytes);
        try
        {
            using Stream stream = entry.Open();
            byte[] bytes = new byte[entry.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
        catch (Exception error) when (error is InvalidDataException or IOException)
        {
            throw new RecordException($"{_path}: {name}", $"a part that cannot be unpacked ({error.Message})", Allowed);
        }
    }

    /// <summary>Its record, which must be disposed of before the bundle.</summary>
    /// <exception cref="RecordException">It is not there, or no record.</exception>
    internal RecordReader Record()
    {
        string place = $"{_path}: {BundleFile.RecordHeaderName}";
        RecordHeader header = RecordHeader.Read(place, Encoding.UTF8.GetString(Bytes(BundleFile.RecordHeaderName)));
        ZipArchiveEntry entry = EntryOf(BundleFile.RecordName, MostRecordBytes);
        try
        {
            return RecordReader.OfCsv($"{_path}: {BundleFile.RecordName}", header, entry.Open(), entry.Length);
        }
        catch (Exception error) when (error is InvalidDataException or IOException)
        {
            throw new RecordException($"{_path}: {BundleFile.RecordName}", $"a part that cannot be unpacked ({error.Message})", Allowed);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _archive.Dispose();

    private static bool IsBundle(string path) => string.Equals(Path.GetExtension(path), ".zip", StringComparison.OrdinalIgnoreCase);

    private ZipArchiveEntry EntryOf(string name, long mostBytes)
    {
        ZipArchiveEntry entry = _archive.GetEntry(name) ?? throw new RecordException(_path, $"no {name} in it", Allowed);
        return entry.Length <= mostBytes ? entry : throw new RecordException($"{_path}: {name}", $"{entry.Length} bytes", $"up to {mostBytes} bytes");
    }
}
