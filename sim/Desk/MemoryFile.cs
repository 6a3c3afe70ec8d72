using System;
using System.IO;
using Microsoft.Win32.SafeHandles;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>
/// A board's memory in a file. Every byte goes to the file before the next one is written, in the firmware's own order, so that a process
/// that is killed at any moment leaves what a board leaves that loses its power.
/// </summary>
public sealed class MemoryFile : INonVolatile, IDisposable
{
    /// <summary>Length of the file, bytes.</summary>
    public const int Size = 65536;

    private const int Page = 1024;
    private const byte Erased = 0xFF;

    private readonly SafeFileHandle _file;
    private readonly byte[] _bytes = new byte[Size];

    private MemoryFile(SafeFileHandle file)
    {
        _file = file;
    }

    /// <inheritdoc/>
    public int SizeBytes => Size;

    /// <inheritdoc/>
    public int PageBytes => Page;

    /// <summary>Opens a board's memory; a file that is not there begins erased, and is there only once it is whole.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="DeskException">It cannot be opened, another board has it, or it is not a board's memory.</exception>
    public static MemoryFile Open(string path)
    {
        SafeFileHandle? file = null;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            if (!File.Exists(path)) Begin(path);
            file = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            long length = RandomAccess.GetLength(file);
            if (length != Size) throw new DeskException($"{path}: {length} bytes; allowed: a board's memory of {Size} bytes, or a file that is not there yet");
            MemoryFile memory = new(file);
            for (int read = 0; read < Size;) read += RandomAccess.Read(file, memory._bytes.AsSpan(read), read) is > 0 and int count ? count : throw new EndOfStreamException("it ends early");
            return memory;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            file?.Dispose();
            throw new DeskException($"{path}: the board's memory cannot be opened: {refused.Message}", refused);
        }
        catch
        {
            file?.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public int Read(int address) => _bytes[address];

    /// <inheritdoc/>
    public void Write(int address, int number) => Write(address, [(byte)number]);

    /// <inheritdoc/>
    public void ErasePage(int pageAddress) => Write(pageAddress, NewBytes().AsSpan(0, Page));

    /// <summary>Closes the file.</summary>
    public void Dispose() => _file.Dispose();

    // What the file did not take is not there: the firmware reads back what it wrote and finds out.
    private void Write(int address, ReadOnlySpan<byte> bytes)
    {
        try
        {
            RandomAccess.Write(_file, bytes, address);
            bytes.CopyTo(_bytes.AsSpan(address));
        }
        catch (IOException)
        {
            // A full disk, say.
        }
    }

    // Beside its place and renamed when whole: a process that is killed meanwhile leaves no short memory, which would be refused.
    private static void Begin(string path)
    {
        string beside = $"{path}.new";
        using (SafeFileHandle file = File.OpenHandle(beside, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            RandomAccess.Write(file, NewBytes(), 0);
            RandomAccess.FlushToDisk(file);
        }

        File.Move(beside, path);
    }

    private static byte[] NewBytes()
    {
        byte[] bytes = new byte[Size];
        Array.Fill(bytes, Erased);
        return bytes;
    }
}
