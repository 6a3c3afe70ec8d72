using System;

namespace StarterCtl.Firmware;

/// <summary>Contacts, buttons and marks of simulated readings, as bits.</summary>
[Flags]
public enum ExchangeSwitches
{
    /// <summary>Everything off.</summary>
    None = 0,

    /// <summary>Line contact.</summary>
    LineClosed = 1,

    /// <summary>Brake contact.</summary>
    BrakeClosed = 2,

    /// <summary>Field contact.</summary>
    FieldClosed = 4,

    /// <summary>The speed is known.</summary>
    SpeedValid = 8,

    /// <summary>Start is pressed.</summary>
    StartPressed = 16,

    /// <summary>Stop is pressed.</summary>
    StopPressed = 32,

    /// <summary>Reset is pressed.</summary>
    ResetPressed = 64,

    /// <summary>The stop chain is open.</summary>
    EmergencyStop = 128,

    /// <summary>The readings are of an earlier period.</summary>
    Stale = 256,
}
