using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>Which trip class protects the motor without tripping a normal start.</summary>
public sealed record OverloadChoice
{
    /// <summary>Current setting, A.</summary>
    public required double SettingAmps { get; init; }

    /// <summary>Every class, the fastest first.</summary>
    public required IReadOnlyList<OverloadRow> Rows { get; init; }

    /// <summary>The chosen one; null where something speaks against each.</summary>
    public required TripClass? Chosen { get; init; }

    /// <summary>Why.</summary>
    public required string Why { get; init; }

    /// <summary>The class that the case sets; null where it sets no overload current.</summary>
    public required TripClass? Set { get; init; }

    /// <summary>Instantaneous trip of the controller, A.</summary>
    public required double InstantTripAmps { get; init; }

    /// <summary>Current that the bare armature takes when it is switched straight on, A.</summary>
    public required double DirectAmps { get; init; }

    /// <summary>What the armature winding bears; null: the case gives no thermal capacity or no limit.</summary>
    public required CopperBody? Winding { get; init; }

    /// <summary>Its limit, degC.</summary>
    public required double? LimitCelsius { get; init; }

    /// <summary>Its temperature after long running at the setting, degC; null where that passes the limit already.</summary>
    public required double? HotCelsius { get; init; }

    /// <summary>The start's current, time and amperes, from the closing of the line on.</summary>
    public required IReadOnlyList<(double Seconds, double Amps)> Start { get; init; }
}
