namespace StarterCtl.Core;

/// <summary>Reasons why a start is refused, as a set of bits; the lowest bit is the most important.</summary>
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
}
