using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>What a contactor must bear, and what rating that takes.</summary>
public sealed record ContactorDemand
{
    /// <summary>"line", "stage 1", "brake".</summary>
    public required string Name { get; init; }

    /// <summary>What it makes and breaks.</summary>
    public required IReadOnlyList<ContactSwitching> Switchings { get; init; }

    /// <summary>Current that it carries while the motor runs, A.</summary>
    public required double CarriedAmps { get; init; }

    /// <summary>Utilisation category that covers it.</summary>
    public required UtilisationCategory Category { get; init; }

    /// <summary>Largest voltage that stands across the contact when or after it breaks, V.</summary>
    public required double PeakVolts { get; init; }

    /// <summary>Rated operational current in that category that it takes at least, A.</summary>
    public required double RatedAmps { get; init; }

    /// <summary>What decides it.</summary>
    public required string Decides { get; init; }

    /// <summary>Rated operational voltage that it takes at least, V.</summary>
    public required double RatedVolts { get; init; }

    /// <summary>Rated operational current of the one at hand, A; null: the case does not say.</summary>
    public required double? GivenAmps { get; init; }

    /// <summary>True when the one at hand is too small.</summary>
    public bool IsExceeded => GivenAmps < RatedAmps;
}
