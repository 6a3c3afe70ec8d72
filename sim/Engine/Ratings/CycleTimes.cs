namespace StarterCtl.Engine.Ratings;

/// <summary>One cycle of a duty: start and run, then rest.</summary>
/// <param name="RunSeconds">From the press of start to the stop, s, above 0.</param>
/// <param name="RestSeconds">From the stop to the next start, s, 0 or more.</param>
public sealed record CycleTimes(double RunSeconds, double RestSeconds)
{
    private const double SecondsPerHour = 3600;

    /// <summary>Length of the cycle, s.</summary>
    public double Seconds => RunSeconds + RestSeconds;

    /// <summary>Starts in an hour.</summary>
    public double StartsPerHour => SecondsPerHour / Seconds;

    /// <summary>Part of the cycle in which current flows: the cyclic duration factor.</summary>
    public double DurationFactor => RunSeconds / Seconds;

    /// <summary>A cycle of as many starts in an hour, evenly spread.</summary>
    public static CycleTimes Evenly(double runSeconds, int startsPerHour) => new(runSeconds, SecondsPerHour / startsPerHour - runSeconds);

    /// <summary>As many starts as an hour has room for.</summary>
    public static int MostStarts(double runSeconds) => (int)(SecondsPerHour / runSeconds);
}
