using StarterCtl.Firmware;

namespace StarterCtl.Desk.Tests;

/// <summary>A serial line with nobody at its other end.</summary>
internal sealed class SilentLine : ISerialLine
{
    public int Read(byte[] target, int most) => 0;

    public int Room() => 0;

    public void Write(byte[] source, int first, int count)
    {
    }
}
