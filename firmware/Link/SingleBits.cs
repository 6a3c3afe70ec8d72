namespace StarterCtl.Firmware;

/// <summary>
/// A single-precision number as its 32 bits and back (IEEE 754, binary32), by exact arithmetic: the board's runtime has no way
/// to them that does not allocate.
/// </summary>
/// <remarks>Every NaN becomes the one quiet NaN, and minus zero is written as zero; all else goes both ways bit by bit.</remarks>
public static class SingleBits
{
    private const int NotANumber = 0x7FC00000;
    private const int Infinity = 0x7F800000;
    private const int HiddenBit = 0x800000;
    // The exponent field of a number whose 24 bits read as a whole number are the number itself.
    private const int WholeExponent = 150;
    private const int Stride = 16;
    private const float StrideUp = 65536f;
    private const float StrideDown = 1f / 65536f;

    /// <summary>The bits of a number.</summary>
    public static int Of(float number)
    {
        if (float.IsNaN(number)) return NotANumber;
        int sign = number < 0f ? int.MinValue : 0;
        float rest = number < 0f ? -number : number;
        if (rest == 0f) return 0;
        if (rest > float.MaxValue) return sign | Infinity;

        // Brought to 24 bits before the point; a number too small for that ends at exponent 1 without its hidden bit.
        int exponent = WholeExponent;
        for (; rest >= HiddenBit * 2f * StrideUp; exponent += Stride) rest *= StrideDown;
        for (; rest >= HiddenBit * 2f; exponent++) rest *= 0.5f;
        for (; rest < HiddenBit * StrideDown && exponent > Stride; exponent -= Stride) rest *= StrideUp;
        for (; rest < HiddenBit && exponent > 1; exponent--) rest *= 2f;
        return sign | (((exponent - 1) << 23) + (int)rest);
    }

    /// <summary>The number of the bits.</summary>
    public static float ToNumber(int bits)
    {
        int exponent = (bits >> 23) & 255;
        int fraction = bits & (HiddenBit - 1);
        if (exponent == 255 && fraction != 0) return float.NaN;
        if (exponent == 255) return bits < 0 ? float.NegativeInfinity : float.PositiveInfinity;

        float number = exponent == 0 ? fraction : fraction + HiddenBit;
        if (exponent == 0) exponent = 1;
        for (; exponent >= WholeExponent + Stride; exponent -= Stride) number *= StrideUp;
        for (; exponent > WholeExponent; exponent--) number *= 2f;
        for (; exponent <= WholeExponent - Stride; exponent += Stride) number *= StrideDown;
        for (; exponent < WholeExponent; exponent++) number *= 0.5f;
        return bits < 0 ? -number : number;
    }
}
