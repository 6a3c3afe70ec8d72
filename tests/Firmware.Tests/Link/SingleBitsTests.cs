using System;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>Bits of a number by arithmetic, held against the runtime's own.</summary>
public sealed class SingleBitsTests
{
    [Theory]
    [InlineData(0f, 0x00000000)]
    [InlineData(1f, 0x3F800000)]
    [InlineData(-2.5f, unchecked((int)0xC0200000))]
    [InlineData(250f, 0x437A0000)]
    [InlineData(float.Epsilon, 0x00000001)]
    [InlineData(-1.17549421e-38f, unchecked((int)0x807FFFFF))]
    [InlineData(1.17549435e-38f, 0x00800000)]
    [InlineData(float.MaxValue, 0x7F7FFFFF)]
    [InlineData(float.PositiveInfinity, 0x7F800000)]
    [InlineData(float.NegativeInfinity, unchecked((int)0xFF800000))]
    [InlineData(float.NaN, 0x7FC00000)]
    public void Of_ANumber_IsItsBits(float number, int bits)
    {
        Assert.Equal(bits, SingleBits.Of(number));
        Assert.Equal(number, SingleBits.ToNumber(bits));
    }

    [Fact]
    public void Of_AnyBits_GoBothWays_ExceptNaNAndMinusZero() =>
        Gen.Int.Sample(
            bits =>
            {
                float number = BitConverter.Int32BitsToSingle(bits);
                float back = SingleBits.ToNumber(bits);
                if (float.IsNaN(number)) return float.IsNaN(back) && SingleBits.Of(number) == 0x7FC00000;
                return BitConverter.SingleToInt32Bits(back) == bits && SingleBits.Of(number) == (number == 0f ? 0 : bits);
            },
            iter: 20_000);

    [Fact]
    public void Of_EveryExponent_GoesBothWays()
    {
        for (int exponent = 0; exponent < 255; exponent++)
        {
            foreach (int fraction in new[] { 0, 1, 0x2AAAAA, 0x7FFFFF })
            {
                int bits = (exponent << 23) | fraction;
                float number = BitConverter.Int32BitsToSingle(bits);
                Assert.Equal((bits, number), (SingleBits.Of(number), SingleBits.ToNumber(bits)));
            }
        }
    }

    [Fact]
    public void Of_MinusZero_IsZero() => Assert.Equal(0, SingleBits.Of(-0f));
}
