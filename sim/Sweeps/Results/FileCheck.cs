using System;
using System.IO;
using System.Security.Cryptography;
using System.Text;

namespace StarterCtl.Sweeps.Results;

/// <summary>
/// SHA-256 of a whole file of results, which stands in its own metadata: Parquet's pages come without checksums, and a byte that changed in one
/// would be another number. The file is hashed with zeros where the check stands.
/// </summary>
internal static class FileCheck
{
    /// <summary>Key of the check in a file's metadata; the last of its keys.</summary>
    public const string Key = "starterctl.sweep.check";

    /// <summary>What stands there until <see cref="Seal"/>.</summary>
    public static readonly string Open = new('0', Digits);

    private const int Digits = 2 * SHA256.HashSizeInBytes;

    private static readonly byte[] Mark = "PAR1"u8.ToArray();

    // Behind the last key stand only the writer's name, the orders of the columns and the footer's end.
    private const int SearchedBytes = 65_536;

    // A string's value behind its key: number and type of the field, then its length.
    private static readonly byte[] Place = [.. Encoding.ASCII.GetBytes(Key), 0x18, Digits];

    /// <summary>Puts the check into a finished file.</summary>
    /// <param name="stream">The file, open for reading and writing.</param>
    /// <exception cref="IOException">It cannot be read or written.</exception>
    public static void Seal(Stream stream)
    {
        long place = PlaceIn(stream) ?? throw new InvalidOperationException($"no {Key} in the file");
        byte[] check = Encoding.ASCII.GetBytes(Of(stream, place));
        stream.Position = place;
        stream.Write(check);
        stream.Flush();
    }

    /// <summary>Whether a file begins and ends as Parquet files do.</summary>
    /// <param name="stream">The file, open for reading.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static bool IsParquet(Stream stream)
    {
        Span<byte> begin = stackalloc byte[Mark.Length], end = stackalloc byte[Mark.Length];
        if (stream.Length < begin.Length + end.Length) return false;
        stream.Position = 0;
        stream.ReadExactly(begin);
        stream.Position = stream.Length - end.Length;
        stream.ReadExactly(end);
        return begin.SequenceEqual(Mark) && end.SequenceEqual(Mark);
    }

    /// <summary>Whether a file is as it was written; null: it has no check.</summary>
    /// <param name="stream">The file, open for reading.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static bool? IsWhole(Stream stream)
    {
        if (PlaceIn(stream) is not long place) return null;
        byte[] check = new byte[Digits];
        stream.Position = place;
        stream.ReadExactly(check);
        return Encoding.ASCII.GetString(check) == Of(stream, place);
    }

    private static long? PlaceIn(Stream stream)
    {
        byte[] end = new byte[Math.Min(stream.Length, SearchedBytes)];
        stream.Position = stream.Length - end.Length;
        stream.ReadExactly(end);
        int found = end.AsSpan().LastIndexOf(Place);
        return found < 0 || found + Place.Length + Digits > end.Length ? null : stream.Length - end.Length + found + Place.Length;
    }

    private static string Of(Stream stream, long place)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        byte[] buffer = new byte[1 << 16];
        stream.Position = 0;
        Append(hash, stream, place, buffer);
        hash.AppendData(Encoding.ASCII.GetBytes(Open));
        stream.Position = place + Digits;
        Append(hash, stream, stream.Length - stream.Position, buffer);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static void Append(IncrementalHash hash, Stream stream, long count, byte[] buffer)
    {
        while (count > 0)
        {
            int part = (int)Math.Min(count, buffer.Length);
            stream.ReadExactly(buffer, 0, part);
            hash.AppendData(buffer, 0, part);
            count -= part;
        }
    }
}
