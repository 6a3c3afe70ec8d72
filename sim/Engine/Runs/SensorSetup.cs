using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller is given to see. Times in microseconds.</summary>
public sealed record SensorSetup
{
    /// <summary>True when the shaft has a speed sensor.</summary>
    public bool HasSpeed { get; init; } = true;

    /// <summary>What happens when the speed is lost.</summary>
    public SpeedLossAction SpeedLoss { get; init; }

    /// <summary>Time for which the speed may be unknown.</summary>
    public int SpeedLossMicroseconds { get; init; }

    /// <summary>Confirm time where voltage and current decide; null: 0.5 s or the confirm time, whichever is longer.</summary>
    public int? ResistiveConfirmMicroseconds { get; init; }

    /// <summary>Speed up to which the shaft counts as standing, rad/s; null: 1 % of the no-load speed.</summary>
    public double? StandstillRadPerSec { get; init; }

    /// <summary>Current that counts as none, A; 0 is off.</summary>
    public double ZeroAmps { get; init; }

    /// <summary>Part by which the current may contradict a resistance; 0 switches the proof by current off.</summary>
    public double StepToleranceRatio { get; init; }

    /// <summary>Time from the step of the current until it is judged.</summary>
    public int StepSettleMicroseconds { get; init; } = 20_000;

    /// <summary>True when the line contactor has an auxiliary contact.</summary>
    public bool HasLineContact { get; init; } = true;

    /// <summary>True when every stage contactor has an auxiliary contact.</summary>
    public bool HasStageContacts { get; init; } = true;
}
