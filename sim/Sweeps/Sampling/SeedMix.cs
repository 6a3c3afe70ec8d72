using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>Numbers that follow from a seed and a place, the same on every machine.</summary>
internal static class SeedMix
{
    /// <summary>64 bits of a seed and two numbers.</summary>
    public static ulong Bits(int seed, ulong first, ulong second = 0)
    {
        ulong bits = new RandomNumbers((ulong)seed).Next();
        bits = new RandomNumbers(bits ^ first).Next();
        return new RandomNumbers(bits ^ second).Next();
    }
}
