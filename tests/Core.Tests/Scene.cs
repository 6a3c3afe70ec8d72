namespace StarterCtl.Core.Tests;

/// <summary>Where a bench with everything fitted can be. A phase that behaves differently in its parts has a scene for each.</summary>
internal enum Scene
{
    /// <summary>Shaft at rest.</summary>
    Ready,

    /// <summary>Start was pressed on the last tick; the field builds for 900 ms.</summary>
    FieldBuilding,

    /// <summary>Stage 1 is commanded before the line for a shaft at 150 V; contacts take 90 ms.</summary>
    Presetting,

    /// <summary>The line was commanded on the last tick; shaft at rest.</summary>
    LineClosing,

    /// <summary>Stage 2 has been in effect for 50 ms at 150 V, below its threshold.</summary>
    Accelerating,

    /// <summary>Everything has been out for 50 ms at 230 V.</summary>
    Running,

    /// <summary>Stop was pressed on the last tick; contacts still closed.</summary>
    Stopping,

    /// <summary>Everything is open and the brake waits for its delay of 600 ms.</summary>
    BrakeDelay,

    /// <summary>The brake contact has just closed.</summary>
    Braking,

    /// <summary>Tripped while running by an emergency stop that is released again.</summary>
    Tripped,
}
