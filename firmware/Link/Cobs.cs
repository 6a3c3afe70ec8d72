namespace StarterCtl.Firmware;

/// <summary>
/// Consistent overhead byte stuffing: bytes made free of zeros, so that a zero ends every frame and a reader finds the next
/// one behind any rubbish.
/// </summary>
/// <remarks>S. Cheshire and M. Baker, Consistent Overhead Byte Stuffing, IEEE/ACM Transactions on Networking 7(2), 1999.</remarks>
public static class Cobs
{
    /// <summary>The code of a block of 254 bytes behind which no zero is left out.</summary>
    public const int FullBlock = 255;

    /// <summary>Stuffs bytes. The end of the frame, a zero, is not written.</summary>
    /// <param name="source">The bytes.</param>
    /// <param name="count">How many of them.</param>
    /// <param name="target">Receives the stuffed bytes; room for one more than <paramref name="count"/>, and one for every 254.</param>
    /// <returns>How many were written.</returns>
    public static int Encode(byte[] source, int count, byte[] target)
    {
        int codeAt = 0;
        int next = 1;
        for (int i = 0; i < count; i++)
        {
            if (source[i] != 0) target[next++] = source[i];
            if (source[i] != 0 && next - codeAt < FullBlock) continue;
            // A full block that is also the last one needs no block behind it.
            if (source[i] != 0 && i == count - 1) break;
            target[codeAt] = (byte)(next - codeAt);
            codeAt = next++;
        }

        target[codeAt] = (byte)(next - codeAt);
        return next;
    }
}
