using System;
using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>Byte stuffing. Sources: tests/published/SOURCES.md, by the number in each trait.</summary>
public sealed class CobsTests
{
    [Theory]
    [Trait("Source", "CHK-26")]
    [InlineData("", "01")]
    [InlineData("00", "0101")]
    [InlineData("0000", "010101")]
    [InlineData("001100", "01021101")]
    [InlineData("11220033", "0311220233")]
    [InlineData("11223344", "0511223344")]
    [InlineData("11000000", "0211010101")]
    public void Encode_ShortBytes_AreStuffed(string bytes, string stuffed)
    {
        byte[] source = Convert.FromHexString(bytes);

        Assert.Equal(stuffed, Convert.ToHexString(Encoded(source)));
        Assert.Equal(source, Decoded(Convert.FromHexString(stuffed)));
    }

    [Theory]
    [Trait("Source", "CHK-26")]
    [InlineData(253, 0xFE, 254)]
    [InlineData(254, 0xFF, 255)]
    [InlineData(255, 0xFF, 257)]
    public void Encode_LongBytesWithoutZero_StartWithTheirBlock(int count, int code, int stuffedCount)
    {
        byte[] source = [.. Enumerable.Repeat((byte)7, count)];

        byte[] stuffed = Encoded(source);

        Assert.Equal((code, stuffedCount), (stuffed[0], stuffed.Length));
        Assert.Equal(source, Decoded(stuffed));
    }

    [Fact]
    public void Decode_FullBlockWithAnEmptyOneBehind_IsTheSameBytes()
    {
        byte[] source = [.. Enumerable.Repeat((byte)7, 254)];

        Assert.Equal(source, Decoded([.. Encoded(source), 1]));
    }

    [Fact]
    public void Encode_AnyBytes_HoldNoZero_GrowByOneInEvery254_AndComeBack() =>
        Gen.Frequency((3, Gen.Const((byte)0)), (97, Gen.Byte)).Array[0, 700].Sample(
            source =>
            {
                byte[] stuffed = Encoded(source);
                return !stuffed.Contains((byte)0) && stuffed.Length <= source.Length + 1 + (source.Length / 254) && Decoded(stuffed).SequenceEqual(source);
            },
            iter: 2_000);

    private static byte[] Encoded(byte[] source)
    {
        byte[] target = new byte[source.Length + 2 + (source.Length / 254)];
        return target[..Cobs.Encode(source, source.Length, target)];
    }

    private static byte[] Decoded(byte[] stuffed)
    {
        byte[] bytes = new byte[stuffed.Length];
        CobsDecoder decoder = new(bytes);
        foreach (byte next in stuffed) decoder.Take(next);
        Assert.True(decoder.IsWhole);
        return bytes[..decoder.Count];
    }
}
