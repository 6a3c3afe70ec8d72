using System;

namespace StarterCtl.Sweeps.Sampling;

/// <summary>
/// A shuffled order of 0 to n - 1 of which any place is found by itself: a Feistel network over the next even power of two, walked on until it
/// comes back into the range (cycle walking; J. Black and P. Rogaway, "Ciphers with arbitrary finite domains", 2002, from memory).
/// </summary>
internal sealed class IndexPermutation
{
    private const int Rounds = 6;

    private readonly long _count;
    private readonly int _halfBits;
    private readonly ulong _mask;
    private readonly ulong[] _keys = new ulong[Rounds];

    /// <summary>Shuffles.</summary>
    /// <param name="count">n, 1 to 2^62.</param>
    /// <param name="seed">From which the order follows.</param>
    /// <param name="stream">Number of the order among those of one seed.</param>
    public IndexPermutation(long count, int seed, ulong stream)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        _count = count;
        while (_halfBits < 31 && 1L << (2 * _halfBits) < count) _halfBits++;
        _mask = (1UL << _halfBits) - 1;
        for (int round = 0; round < Rounds; round++) _keys[round] = SeedMix.Bits(seed, stream, (ulong)round);
    }

    /// <summary>The number at a place.</summary>
    /// <param name="place">0 to n - 1.</param>
    public long At(long place)
    {
        ulong number = (ulong)place;
        do number = Shuffled(number);
        while (number >= (ulong)_count);
        return (long)number;
    }

    private ulong Shuffled(ulong number)
    {
        ulong left = number >> _halfBits, right = number & _mask;
        foreach (ulong key in _keys)
        {
            ulong mixed = new Engine.Runs.RandomNumbers(right ^ key).Next() & _mask;
            (left, right) = (right, left ^ mixed);
        }

        return (left << _halfBits) | right;
    }
}
