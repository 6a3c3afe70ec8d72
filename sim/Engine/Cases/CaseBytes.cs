using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Cases;

/// <summary>Gets the text of a case or of another file of text, with a word for everything that can be wrong with the file itself.</summary>
internal static class CaseBytes
{
    /// <summary>What stands in a file that is not empty.</summary>
    internal const string Beginning = "a case, which begins with a title or a [table]";

    private const int MostBytes = 1024 * 1024;

    private static readonly UTF8Encoding StrictUtf8 = new(false, true);

    /// <summary>Reads all bytes of a case file.</summary>
    internal static byte[] Read(string path) => Read(path, "a case file", "*.toml");

    /// <summary>Reads all bytes of a file.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="what">What it should be, for messages: "a case file".</param>
    /// <param name="pattern">Names of files of its kind, for a hint: "*.toml".</param>
    internal static byte[] Read(string path, string what, string pattern)
    {
        if (Directory.Exists(path)) throw Unusable(path, "a folder", $"{what} in it" + NearestIn(path, "", pattern));
        if (!File.Exists(path))
        {
            string? folder = Path.GetDirectoryName(path);
            string nearest = NearestIn(string.IsNullOrEmpty(folder) ? "." : folder, Path.GetFileName(path), pattern);
            throw Unusable(path, "no such file", $"{what} that exists" + nearest);
        }

        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            if (stream.CanSeek && stream.Length > MostBytes) throw TooLarge(path, stream.Length);
            // One byte more than allowed, for what grows while it is read or has no length, such as a device.
            byte[] bytes = new byte[MostBytes + 1];
            int count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return bytes[..count];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw Unusable(path, $"a file that cannot be read ({Words.Safe(fault.Message)})", "a readable file");
        }
    }

    /// <summary>Turns the bytes into text without a byte order mark.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="beginning">What stands in such a file that is not empty.</param>
    internal static string Decode(string file, byte[] bytes, string beginning = Beginning)
    {
        if (bytes.Length > MostBytes) throw TooLarge(file, bytes.Length);
        if (bytes.Length == 0) throw Unusable(file, "an empty file", beginning);
        if (bytes.Contains((byte)0))
            throw Unusable(file, "bytes of value 0, as in a binary or UTF-16 file", "UTF-8 text");

        try
        {
            return StrictUtf8.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException fault)
        {
            string found = string.Create(CultureInfo.InvariantCulture, $"no UTF-8 text (byte {fault.Index + 1})");
            throw Unusable(file, found, "UTF-8 text");
        }
    }

    internal static CaseException Unusable(string file, string found, string allowed) =>
        new([new CaseProblem(file, 0, "", found, allowed)]);

    private static CaseException TooLarge(string file, long bytes)
    {
        string found = string.Create(CultureInfo.InvariantCulture, $"a file of {bytes} bytes");
        return Unusable(file, found, "up to 1 MiB (1048576 bytes)");
    }

    private static string NearestIn(string folder, string name, string pattern)
    {
        try
        {
            string? nearest = Directory.EnumerateFiles(folder, pattern).Take(1000)
                .Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)
                .MinBy(known => Words.Edits(name, known));
            return nearest is null ? "" : $"; nearest in that folder: {Words.Safe(nearest)}";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return "";
        }
    }
}
