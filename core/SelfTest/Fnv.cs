namespace StarterCtl.Core;

/// <summary>One number that stands for a row of others, the same on the board and on the desk.</summary>
/// <remarks>FNV-1a, 32 bits, over every number's bits, low byte first.</remarks>
public sealed class Fnv
{
    private const int Basis = unchecked((int)2166136261);
    private const int Prime = 16777619;

    /// <summary>The number so far.</summary>
    public int Sum = Basis;

    /// <summary>Adds a whole number.</summary>
    public void Add(int number)
    {
        for (int shift = 0; shift < 32; shift += 8) Sum = unchecked((Sum ^ ((number >> shift) & 255)) * Prime);
    }

    /// <summary>Adds a number by its bits. Allocates: not for the tick.</summary>
    public void Add(float number)
    {
        byte[] bytes = System.BitConverter.GetBytes(number);
        for (int i = 0; i < bytes.Length; i++) Sum = unchecked((Sum ^ bytes[i]) * Prime);
    }
}
