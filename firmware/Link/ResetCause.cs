namespace StarterCtl.Firmware;

/// <summary>Why the board began anew. Numbers are published and never reused.</summary>
public enum ResetCause
{
    /// <summary>The board cannot tell.</summary>
    Unknown = 0,

    /// <summary>Power came on.</summary>
    PowerUp = 1,

    /// <summary>The supply of the board sagged.</summary>
    Brownout = 2,

    /// <summary>The watchdog was not served in time.</summary>
    Watchdog = 3,

    /// <summary>The board's own reset input.</summary>
    ResetInput = 4,

    /// <summary>The firmware asked for it.</summary>
    Firmware = 5,
}
