namespace StarterCtl.Engine.Runs;

/// <summary>
/// Random numbers that are the same on every machine and runtime: splitmix64 (Steele, Lea and Flood, "Fast splittable pseudorandom
/// number generators", 2014; constants from memory), integers throughout.
/// </summary>
/// <param name="seed">From which all numbers follow.</param>
public sealed class RandomNumbers(ulong seed)
{
    private const int Pieces = 12;
    private const double PieceSize = 65536;

    private ulong _state = seed;

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>
    /// A nearly normal number of mean 0 and standard deviation 1: twelve even numbers between 0 and 1 added up, less 6. It needs no
    /// logarithm, whose last bit depends on the machine, and never passes 6.
    /// </summary>
    public double Normal()
    {
        ulong sum = 0;
        for (int i = 0; i < Pieces / 4; i++)
        {
            ulong bits = Next();
            sum += (bits & 0xFFFF) + ((bits >> 16) & 0xFFFF) + ((bits >> 32) & 0xFFFF) + (bits >> 48);
        }

        // Each piece stands for the middle of its step.
        return (sum + Pieces / 2.0) / PieceSize - Pieces / 2.0;
    }
}
