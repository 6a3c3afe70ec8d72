using System;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>Flash as it is: writing only clears bits, an erasure takes a page, and the power may go at any byte of either.</summary>
internal sealed class MemoryChip : INonVolatile
{
    internal const int ForEver = int.MaxValue;

    private readonly Random _bits = new(20261125);

    internal MemoryChip(int sizeBytes = 8192, int pageBytes = 64)
    {
        Bytes = new byte[sizeBytes];
        PageBytes = pageBytes;
        Array.Fill(Bytes, (byte)255);
    }

    internal byte[] Bytes { get; }

    public int SizeBytes => Bytes.Length;

    public int PageBytes { get; }

    /// <summary>Bytes that can be written or erased until the power goes.</summary>
    internal int BytesToCut { get; set; } = ForEver;

    internal TornByte Torn { get; set; }

    /// <summary>An address whose lowest bit reads as set for ever; none below 0.</summary>
    internal int StuckAddress { get; set; } = -1;

    internal int Writes { get; private set; }

    public int Read(int address) => Bytes[address] | (address == StuckAddress ? 1 : 0);

    public void Write(int address, int number)
    {
        if (Bytes[address] != 255) throw new InvalidOperationException($"byte {address} was not erased");
        Writes++;
        if (!IsCut())
        {
            Bytes[address] = (byte)number;
            return;
        }

        if (Torn != TornByte.Old) Bytes[address] = (byte)(Torn == TornByte.New ? number : _bits.Next(256));
        throw new PowerCutException();
    }

    public void ErasePage(int pageAddress)
    {
        if (pageAddress % PageBytes != 0) throw new InvalidOperationException($"no page begins at {pageAddress}");
        for (int i = 0; i < PageBytes; i++)
        {
            if (IsCut())
            {
                Tear(pageAddress + i, PageBytes - i);
                throw new PowerCutException();
            }

            Bytes[pageAddress + i] = 255;
        }
    }

    /// <summary>Does something that the power cut may end.</summary>
    /// <returns>True if it came to its end.</returns>
    internal bool Survives(Action action)
    {
        try
        {
            action();
            return true;
        }
        catch (PowerCutException)
        {
            return false;
        }
        finally
        {
            BytesToCut = ForEver;
        }
    }

    private bool IsCut() => BytesToCut != ForEver && BytesToCut-- <= 0;

    private void Tear(int address, int count)
    {
        if (Torn == TornByte.New) Bytes[address] = 255;
        if (Torn != TornByte.Anything) return;
        for (int i = 0; i < count; i++) Bytes[address + i] = (byte)_bits.Next(256);
    }
}
