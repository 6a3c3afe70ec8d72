using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Keeps some bytes in two copies, so that a power cut at any moment of a save leaves what was kept before or what is kept now,
/// never a mixture. A save goes over the older copy; the newest whole one counts. Each copy is a head (sequence number,
/// 4 bytes; version, 2; length, 2), the content, and a checksum over both that is written last: FNV-1a, 32 bits, which sees
/// every change of a single byte and misses one of 4 thousand million others.
/// </summary>
/// <remarks>The newest copy alone decides: if its version or content is refused, the older one does not come back in its place.</remarks>
public sealed class TwoCopyStore
{
    /// <summary>Bytes ahead of the content.</summary>
    public const int HeadBytes = 8;

    /// <summary>Bytes behind the content.</summary>
    public const int CheckBytes = 4;

    private const int VersionAt = 4;
    private const int LengthAt = 6;
    private const int Erased = 255;
    private const int NoCopy = -1;

    private readonly INonVolatile _memory;
    private readonly int _address;
    private readonly int _copyBytes;
    private readonly int _version;
    private readonly Fnv _sum = new Fnv();
    private readonly int _emptySum;
    private int _newest = NoCopy;
    private int _sequence;

    /// <summary>The content: what was found, and what is to be saved.</summary>
    public readonly StoredBytes Content;

    /// <summary>Looks for what was kept, and reads it into <see cref="Content"/> if its version is the right one.</summary>
    /// <param name="memory">The memory.</param>
    /// <param name="address">First byte of the two copies, which begins a page.</param>
    /// <param name="mostBytes">Longest content, 0 to 65534 bytes.</param>
    /// <param name="version">Version of the content, 0 to 65535.</param>
    public TwoCopyStore(INonVolatile memory, int address, int mostBytes, int version)
    {
        _memory = memory;
        _address = address;
        _version = version;
        _emptySum = _sum.Sum;
        Content = new StoredBytes(mostBytes);
        _copyBytes = BytesNeeded(memory, mostBytes) / 2;
        State = Find();
    }

    /// <summary>What was found, or <see cref="StoreState.Sound"/> once something was saved.</summary>
    public StoreState State { get; private set; }

    /// <summary>Bytes that two copies take, in whole pages; 0 for a memory without pages.</summary>
    public static int BytesNeeded(INonVolatile memory, int mostBytes)
    {
        int page = memory.PageBytes;
        if (page < 1) return 0;
        return 2 * page * ((HeadBytes + mostBytes + CheckBytes + page - 1) / page);
    }

    /// <summary>Saves the content and reads it back. Takes two copies' worth of reads and writes, and the erasure of one.</summary>
    /// <returns>False if it cannot be read back as it was written: then what was kept before still counts.</returns>
    public bool TrySave()
    {
        if (State == StoreState.NoRoom || Content.Length < 0 || Content.Length > Content.Bytes.Length) return false;
        int copy = _newest == 0 ? 1 : 0;
        int sequence = unchecked(_sequence + 1);
        int first = _address + copy * _copyBytes;
        EraseCopy(first);
        int end = WriteHead(first, sequence);
        for (int i = 0; i < Content.Length; i++) _memory.Write(end + i, Content.Bytes[i]);
        end += Content.Length;
        int sum = SumOf(first, end);
        if (!IsReadBack(first, sequence))
        {
            EraseCopy(first);
            return false;
        }

        // From the last byte of the checksum on, the new copy counts.
        for (int i = 0; i < CheckBytes; i++) _memory.Write(end + i, (sum >> (8 * i)) & 255);
        if (!IsWhole(copy))
        {
            EraseCopy(first);
            return false;
        }

        _newest = copy;
        _sequence = sequence;
        State = StoreState.Sound;
        return true;
    }

    private StoreState Find()
    {
        if (!HasRoom()) return StoreState.NoRoom;
        bool isFirstWhole = IsWhole(0);
        bool isSecondWhole = IsWhole(1);
        if (!isFirstWhole && !isSecondWhole) return IsBlank() ? StoreState.Blank : StoreState.Lost;
        // By their difference, so that the number may go on behind the largest.
        bool isSecondNewer = isSecondWhole && (!isFirstWhole || unchecked(Number(_address + _copyBytes, 4) - Number(_address, 4)) > 0);
        _newest = isSecondNewer ? 1 : 0;
        int first = _address + _newest * _copyBytes;
        _sequence = Number(first, 4);
        if (Number(first + VersionAt, 2) != _version) return StoreState.OtherVersion;
        Content.Length = Number(first + LengthAt, 2);
        for (int i = 0; i < Content.Length; i++) Content.Bytes[i] = (byte)_memory.Read(first + HeadBytes + i);
        return StoreState.Sound;
    }

    private bool HasRoom()
    {
        int page = _memory.PageBytes;
        return page > 0 && _address >= 0 && _address % page == 0 && _address <= _memory.SizeBytes - 2 * _copyBytes;
    }

    private bool IsWhole(int copy)
    {
        int first = _address + copy * _copyBytes;
        int length = Number(first + LengthAt, 2);
        if (length > Content.Bytes.Length) return false;
        int end = first + HeadBytes + length;
        return SumOf(first, end) == Number(end, CheckBytes);
    }

    private bool IsBlank()
    {
        for (int i = 0; i < 2 * _copyBytes; i++)
        {
            if (_memory.Read(_address + i) != Erased) return false;
        }

        return true;
    }

    private void EraseCopy(int first)
    {
        for (int offset = 0; offset < _copyBytes; offset += _memory.PageBytes) _memory.ErasePage(first + offset);
    }

    private int WriteHead(int first, int sequence)
    {
        for (int i = 0; i < VersionAt; i++) _memory.Write(first + i, (sequence >> (8 * i)) & 255);
        WriteShort(first + VersionAt, _version);
        WriteShort(first + LengthAt, Content.Length);
        return first + HeadBytes;
    }

    private void WriteShort(int address, int number)
    {
        _memory.Write(address, number & 255);
        _memory.Write(address + 1, (number >> 8) & 255);
    }

    private bool IsReadBack(int first, int sequence)
    {
        if (Number(first, VersionAt) != sequence || Number(first + VersionAt, 2) != _version || Number(first + LengthAt, 2) != Content.Length) return false;
        for (int i = 0; i < Content.Length; i++)
        {
            if (_memory.Read(first + HeadBytes + i) != Content.Bytes[i]) return false;
        }

        return true;
    }

    private int SumOf(int first, int end)
    {
        _sum.Sum = _emptySum;
        for (int address = first; address < end; address++) _sum.Add(_memory.Read(address));
        return _sum.Sum;
    }

    private int Number(int address, int count)
    {
        int number = 0;
        for (int i = count - 1; i >= 0; i--) number = (number << 8) | (_memory.Read(address + i) & 255);
        return number;
    }
}
