namespace StarterCtl.Firmware;

/// <summary>
/// The check of a frame: CRC-16/IBM-3740, polynomial 1021 hex, start FFFF, nothing reflected, nothing added at the end.
/// </summary>
/// <remarks>Parameters by G. Cook's Catalogue of parametrised CRC algorithms, seen second-hand. Over a frame and its own check, high byte first, it comes to 0.</remarks>
public static class Crc16
{
    /// <summary>The check of no bytes.</summary>
    public const int Start = 0xFFFF;

    /// <summary>Takes one more byte into a check.</summary>
    /// <param name="check">The check so far, 0 to FFFF hex.</param>
    /// <param name="next">The byte, 0 to 255.</param>
    public static int Add(int check, int next)
    {
        // Eight steps of the division at once: of the polynomial's terms x^12, x^5 and 1, the first falls back into the byte itself.
        int quotient = (check >> 8) ^ next;
        quotient ^= quotient >> 4;
        return ((check << 8) ^ (quotient << 12) ^ (quotient << 5) ^ quotient) & 0xFFFF;
    }
}
