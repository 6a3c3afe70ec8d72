namespace StarterCtl.Firmware;

/// <summary>What a <see cref="TwoCopyStore"/> holds, as bytes. Numbers lie low byte first.</summary>
public sealed class StoredBytes
{
    /// <summary>The bytes.</summary>
    public readonly byte[] Bytes;

    /// <summary>How many of them count, 0 to all.</summary>
    public int Length;

    /// <summary>Makes room.</summary>
    /// <param name="mostBytes">Bytes, 0 or more.</param>
    public StoredBytes(int mostBytes)
    {
        Bytes = new byte[mostBytes];
    }

    /// <summary>Four bytes, as a signed whole number.</summary>
    public int GetInt(int offset) =>
        Bytes[offset] | (Bytes[offset + 1] << 8) | (Bytes[offset + 2] << 16) | (Bytes[offset + 3] << 24);

    /// <summary>Four bytes, as the bits of a single-precision number.</summary>
    public float GetFloat(int offset) => SingleBits.ToNumber(GetInt(offset));

    /// <summary>Writes a whole number.</summary>
    public void PutInt(int offset, int number)
    {
        for (int i = 0; i < 4; i++) Bytes[offset + i] = (byte)((number >> (8 * i)) & 255);
    }

    /// <summary>Writes the bits of a number.</summary>
    public void PutFloat(int offset, float number) => PutInt(offset, SingleBits.Of(number));
}
