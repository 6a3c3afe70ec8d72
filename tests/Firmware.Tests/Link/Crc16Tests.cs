using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>The check of a frame. Sources: tests/published/SOURCES.md, by the number in the trait.</summary>
public sealed class Crc16Tests
{
    [Fact]
    [Trait("Source", "CHK-25")]
    public void Add_TheDigits1To9_Is29B1() => Assert.Equal(0x29B1, Of([.. "123456789"u8]));

    [Fact]
    public void Add_AnyBytes_IsTheDivisionBitByBit() =>
        Gen.Byte.Array[0, 80].Sample(bytes => Of(bytes) == Divided(bytes), iter: 500);

    [Fact]
    public void Add_AnyBytesAndTheirCheck_IsZero() =>
        Gen.Byte.Array[0, 80].Sample(bytes => Of([.. bytes, (byte)(Of(bytes) >> 8), (byte)Of(bytes)]) == 0, iter: 500);

    private static int Of(byte[] bytes) => bytes.Aggregate(Crc16.Start, (check, next) => Crc16.Add(check, next));

    private static int Divided(byte[] bytes)
    {
        int check = 0xFFFF;
        foreach (byte next in bytes)
        {
            check ^= next << 8;
            for (int bit = 0; bit < 8; bit++) check = ((check << 1) ^ ((check & 0x8000) != 0 ? 0x1021 : 0)) & 0xFFFF;
        }

        return check;
    }
}
