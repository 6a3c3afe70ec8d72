namespace StarterCtl.Firmware;

/// <summary>Makes of a message what goes over the line, and numbers what it makes.</summary>
public sealed class FrameWriter
{
    private int _sequence;

    /// <summary>The frame as it goes over the line, the zero at its end included; <see cref="Length"/> bytes of it.</summary>
    public readonly byte[] Line = new byte[Frame.MostLineBytes];

    /// <summary>How many bytes the frame has.</summary>
    public int Length;

    /// <summary>Numbers a message, adds its check and stuffs it.</summary>
    public void Write(Frame frame)
    {
        frame.Number(_sequence);
        _sequence = (_sequence + 1) & 255;
        int count = Frame.HeadBytes + frame.BodyLength;
        int check = Crc16.Start;
        for (int i = 0; i < count; i++) check = Crc16.Add(check, frame.Bytes[i]);
        frame.Bytes[count] = (byte)(check >> 8);
        frame.Bytes[count + 1] = (byte)(check & 255);
        Length = Cobs.Encode(frame.Bytes, count + Frame.CheckBytes, Line);
        Line[Length] = 0;
        Length++;
    }
}
