namespace StarterCtl.Core;

/// <summary>Reasons why a start is refused, as a set of bits. Numbers are published and never reused.</summary>
[System.Flags]
public enum Refusal
{
    /// <summary>A press of start will be accepted.</summary>
    None = 0,

    /// <summary>Stop is pressed.</summary>
    StopPressed = 1,

    /// <summary>The line contactor is not proven open.</summary>
    LineNotOpen = 2,

    /// <summary>A stage contactor is not proven open: the first peak would pass its limit.</summary>
    StageNotOpen = 4,

    /// <summary>Start has been held since before the controller was ready; it must be released first.</summary>
    StartHeld = 8,

    /// <summary>The brake contactor is not proven open.</summary>
    BrakeNotOpen = 16,

    /// <summary>A required permissive input is not given.</summary>
    PermissiveMissing = 32,

    /// <summary>The supply is below its low limit.</summary>
    SupplyLow = 64,

    /// <summary>The supply is above its high limit.</summary>
    SupplyHigh = 128,

    /// <summary>The shaft turns, and a turning shaft may not be started.</summary>
    ShaftTurns = 256,

    /// <summary>The shaft turns backwards: the first peak would pass its limit.</summary>
    ShaftTurnsBackwards = 512,

    /// <summary>The motor has not cooled down to where it may be started.</summary>
    MotorTooHot = 1024,

    /// <summary>The starting resistor has not cooled down to where it bears a start.</summary>
    ResistorTooHot = 2048,

    /// <summary>As many starts as are permitted in an hour have been made.</summary>
    TooManyStarts = 4096,
}
