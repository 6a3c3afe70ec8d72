using StarterCtl.Firmware;

namespace StarterCtl.Interpreter;

/// <summary>A serial line on which nobody is.</summary>
public sealed class SilentLine : ISerialLine
{
    public int Read(byte[] target, int most) => 0;

    public int Room() => 16;

    public void Write(byte[] source, int first, int count)
    {
    }
}
