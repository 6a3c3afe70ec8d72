namespace StarterCtl.Firmware;

/// <summary>
/// One message as bytes: its id, its sequence number, its body, and room for the check. Numbers in the body lie low byte first,
/// at offsets counted from the body's start.
/// </summary>
public sealed class Frame
{
    /// <summary>Longest body, bytes.</summary>
    public const int MostBodyBytes = 64;

    /// <summary>Bytes ahead of the body: id and sequence number.</summary>
    public const int HeadBytes = 2;

    /// <summary>Bytes behind the body: the check, high byte first.</summary>
    public const int CheckBytes = 2;

    /// <summary>Longest frame as it goes over the line: stuffed, one byte more, and the zero that ends it.</summary>
    public const int MostLineBytes = HeadBytes + MostBodyBytes + CheckBytes + 2;

    /// <summary>Id, sequence number, body and check.</summary>
    public readonly byte[] Bytes = new byte[HeadBytes + MostBodyBytes + CheckBytes];

    /// <summary>Length of the body, bytes, 0 to <see cref="MostBodyBytes"/>.</summary>
    public int BodyLength;

    /// <summary>What the message is.</summary>
    public MessageId Id => (MessageId)Bytes[0];

    /// <summary>Its number, 0 to 255; the sender counts up and goes on at 0.</summary>
    public int Sequence => Bytes[1];

    /// <summary>Begins a message; every byte of its body must then be written.</summary>
    public void Begin(MessageId id, int bodyLength)
    {
        Bytes[0] = (byte)id;
        BodyLength = bodyLength;
    }

    /// <summary>Gives it its number.</summary>
    public void Number(int sequence) => Bytes[1] = (byte)sequence;

    /// <summary>A byte, 0 to 255.</summary>
    public int GetByte(int offset) => Bytes[HeadBytes + offset];

    /// <summary>Two bytes, 0 to 65535.</summary>
    public int GetShort(int offset) => GetByte(offset) | (GetByte(offset + 1) << 8);

    /// <summary>Four bytes, as a signed whole number.</summary>
    public int GetInt(int offset) => GetShort(offset) | (GetShort(offset + 2) << 16);

    /// <summary>Four bytes, as the bits of a single-precision number.</summary>
    public float GetFloat(int offset) => SingleBits.ToNumber(GetInt(offset));

    /// <summary>Writes the lowest eight bits.</summary>
    public void PutByte(int offset, int number) => Bytes[HeadBytes + offset] = (byte)(number & 255);

    /// <summary>Writes the lowest sixteen bits.</summary>
    public void PutShort(int offset, int number)
    {
        PutByte(offset, number);
        PutByte(offset + 1, number >> 8);
    }

    /// <summary>Writes a whole number.</summary>
    public void PutInt(int offset, int number)
    {
        PutShort(offset, number);
        PutShort(offset + 2, number >> 16);
    }

    /// <summary>Writes the bits of a number.</summary>
    public void PutFloat(int offset, float number) => PutInt(offset, SingleBits.Of(number));
}
