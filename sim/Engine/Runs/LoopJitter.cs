namespace StarterCtl.Engine.Runs;

/// <summary>
/// How far the ticks of the controller come late: each by anything from 0 to the most, independent of the others, as a loop does that waits
/// for the next multiple of its period and is held up by other work. The controller is told the time that has really passed.
/// </summary>
/// <param name="MostMicroseconds">Latest that a tick can be, microseconds, above 0 and below the control period.</param>
/// <param name="Seed">Number from which the lateness of every tick follows.</param>
public sealed record LoopJitter(int MostMicroseconds, int Seed)
{
    // Streams 0 to 2 are the sensors'.
    private const ulong Stream = 3;

    /// <summary>The numbers that a run draws its lateness from.</summary>
    internal RandomNumbers Numbers() => new(new RandomNumbers(((ulong)Seed << 8) + Stream).Next());

    /// <summary>How late the next tick is, microseconds.</summary>
    internal int Next(RandomNumbers numbers) => (int)(numbers.Next() % ((ulong)MostMicroseconds + 1));
}
