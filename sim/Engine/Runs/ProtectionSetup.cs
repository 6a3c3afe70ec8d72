using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What trips the starter beyond overcurrent, stage time and contacts. Null is off; times in microseconds.</summary>
public sealed record ProtectionSetup
{
    /// <summary>Time for which overspeed, reverse rotation, a lost field or a lost permissive must last.</summary>
    public int TripConfirmMicroseconds { get; init; }

    /// <summary>Supply below which a dip begins, V.</summary>
    public double? SupplyLowVolts { get; init; }

    /// <summary>Longest dip that is ridden through.</summary>
    public int DipMicroseconds { get; init; }

    /// <summary>What a dip does to the stages.</summary>
    public DipAction DipAction { get; init; }

    /// <summary>Supply above which no start happens, V.</summary>
    public double? SupplyHighVolts { get; init; }

    /// <summary>Time for which the supply may be high.</summary>
    public int SupplyHighMicroseconds { get; init; }

    /// <summary>Current setting of the overload, A.</summary>
    public double? OverloadAmps { get; init; }

    /// <summary>Time constant of the motor's thermal image, s.</summary>
    public double OverloadSeconds { get; init; } = 290;

    /// <summary>Level of the image below which an overload may be reset.</summary>
    public double OverloadResetRatio { get; init; } = 0.8;

    /// <summary>Energy that the starting resistor may hold, J.</summary>
    public double? ResistorJoules { get; init; }

    /// <summary>Cooling time constant of the starting resistor, s.</summary>
    public double ResistorSeconds { get; init; } = 600;

    /// <summary>Part of the resistor's energy up to which a start is permitted.</summary>
    public double ResistorStartRatio { get; init; } = 0.5;

    /// <summary>Temperature of the starting resistor that trips, degC; null: no sensor.</summary>
    public double? ResistorCelsius { get; init; }

    /// <summary>Starts permitted in any hour; 0 is any number.</summary>
    public int StartsPerHour { get; init; }

    /// <summary>Longest time from the line's command to full supply.</summary>
    public int? MaximumStartMicroseconds { get; init; }

    /// <summary>Current above which a standing shaft is stalled, A.</summary>
    public double? StallAmps { get; init; }

    /// <summary>Time for which it may stand.</summary>
    public int StallMicroseconds { get; init; } = 1_000_000;

    /// <summary>Speed of either direction that trips, rad/s.</summary>
    public double? OverspeedRadPerSec { get; init; }

    /// <summary>Speed against the start that trips, rad/s.</summary>
    public double? ReverseRadPerSec { get; init; }

    /// <summary>Difference of the two back-EMFs that trips, V.</summary>
    public double? DisagreementVolts { get; init; }

    /// <summary>Time for which they may differ.</summary>
    public int DisagreementMicroseconds { get; init; } = 500_000;

    /// <summary>Longest time between two decisions.</summary>
    public int? MaximumTickMicroseconds { get; init; }

    /// <summary>Permissive inputs that must be given, counted from the first.</summary>
    public int Permissives { get; init; }
}
