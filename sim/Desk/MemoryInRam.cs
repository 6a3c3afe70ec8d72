using System;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>A board's memory that is gone with the program, for boards that live no longer than one trial.</summary>
public sealed class MemoryInRam : INonVolatile
{
    private const int Size = 8192;
    private const int Page = 256;
    private const byte Erased = 0xFF;

    private readonly byte[] _bytes = new byte[Size];

    /// <summary>Begins erased.</summary>
    public MemoryInRam()
    {
        Array.Fill(_bytes, Erased);
    }

    /// <inheritdoc/>
    public int SizeBytes => Size;

    /// <inheritdoc/>
    public int PageBytes => Page;

    /// <inheritdoc/>
    public int Read(int address) => _bytes[address];

    /// <inheritdoc/>
    public void Write(int address, int number) => _bytes[address] = (byte)number;

    /// <inheritdoc/>
    public void ErasePage(int pageAddress) => Array.Fill(_bytes, Erased, pageAddress, Page);
}
