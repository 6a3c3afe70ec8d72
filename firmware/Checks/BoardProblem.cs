namespace StarterCtl.Firmware;

/// <summary>Why a wiring is refused. Numbers are published and never reused.</summary>
public enum BoardProblem
{
    /// <summary>It is not.</summary>
    None = 0,

    /// <summary>Two roles share a pin. Value and limit: the pin.</summary>
    PinUsedTwice = 1,

    /// <summary>A role that the settings ask for has no pin.</summary>
    PinMissing = 2,

    /// <summary>A channel's gain is 0 or not a number. Value: the gain.</summary>
    GainUnusable = 3,

    /// <summary>A channel's least count is not below its largest. Value: the least; limit: the largest.</summary>
    CountsCrossed = 4,

    /// <summary>A channel's median has neither 1 nor 3 nor 5 samples. Value: the samples.</summary>
    MedianUnknown = 5,

    /// <summary>A channel ends below what it must show. Value: its largest quantity; limit: what it must show.</summary>
    RangeTooSmall = 6,

    /// <summary>The current channel ends above the negative trip current. Value: its least current; limit: what it must show.</summary>
    NegativeRangeTooSmall = 7,

    /// <summary>The edges of the fastest shaft come faster than the board counts. Value: edges a second; limit: what it counts.</summary>
    TooManyEdges = 8,

    /// <summary>A number that a speed is worked out with is not above 0. Value: the number.</summary>
    PulsesUnusable = 9,

    /// <summary>Without the current's zero no speed sensor can prove standstill. Value: the setting.</summary>
    NoZeroCurrent = 10,

    /// <summary>Contacts are debounced for as long as the core waits for them. Value and limit in seconds.</summary>
    DebounceTooLong = 11,

    /// <summary>The control period, lateness included, is above the core's longest tick, or not above 0. Value and limit in seconds.</summary>
    PeriodTooLong = 12,

    /// <summary>A debounce, filter or lateness time is negative. Value in seconds.</summary>
    NegativeTime = 13,

    /// <summary>A tacho's least speed is below what a count makes. Value: the least speed, rad/s; limit: one count, rad/s.</summary>
    LeastSpeedTooSmall = 14,
}
