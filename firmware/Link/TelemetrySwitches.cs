using System;

namespace StarterCtl.Firmware;

/// <summary>Coils, contacts and marks of one sample, as bits.</summary>
[Flags]
public enum TelemetrySwitches
{
    /// <summary>Everything off.</summary>
    None = 0,

    /// <summary>Line coil.</summary>
    CloseLine = 1,

    /// <summary>Line contact.</summary>
    LineClosed = 2,

    /// <summary>Brake coil.</summary>
    CloseBrake = 4,

    /// <summary>Brake contact.</summary>
    BrakeClosed = 8,

    /// <summary>Field coil.</summary>
    CloseField = 16,

    /// <summary>Field contact.</summary>
    FieldClosed = 32,

    /// <summary>The speed is known.</summary>
    SpeedValid = 64,

    /// <summary>The back-EMF from the voltage equation is valid.</summary>
    ResistiveValid = 128,
}
