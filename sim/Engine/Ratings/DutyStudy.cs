using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>What starts do to sections and windings of a case, and how many of them are permitted.</summary>
public sealed record DutyStudy
{
    /// <summary>What warms up, in the order of every list of temperatures.</summary>
    public required IReadOnlyList<WarmBody> Bodies { get; init; }

    /// <summary>Temperature around everything, degC.</summary>
    public required double AmbientCelsius { get; init; }

    /// <summary>One start from cold, stopped as soon as the full supply is reached.</summary>
    public required CycleHeat FirstStart { get; init; }

    /// <summary>Time of such a start, s.</summary>
    public required double StartSeconds { get; init; }

    /// <summary>Starts from cold without any rest between them until one would pass a limit; null: none of <see cref="MostConsecutive"/> does.</summary>
    public required int? ConsecutiveStarts { get; init; }

    /// <summary>What the next one would pass; empty where none does.</summary>
    public required string ConsecutiveExcess { get; init; }

    /// <summary>Starts in a row that are looked at.</summary>
    public const int MostConsecutive = 200;

    /// <summary>Time from start to stop with which starts in an hour are counted, s.</summary>
    public required double RunSeconds { get; init; }

    /// <summary>Starts in every hour, evenly spread and for ever, that no limit forbids.</summary>
    public required int StartsPerHour { get; init; }

    /// <summary>The steady cycle of so many; null where not even one is permitted.</summary>
    public required CycleHeat? AtStartsPerHour { get; init; }

    /// <summary>What one more would pass; empty where an hour has no room for one more.</summary>
    public required string StartsExcess { get; init; }

    /// <summary>The duty that the case asks for; null: none.</summary>
    public required GivenDuty? Duty { get; init; }

    /// <summary>How many starts were simulated for all this.</summary>
    public required int SimulatedStarts { get; init; }
}
