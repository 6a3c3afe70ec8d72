using System;

namespace StarterCtl.Firmware;

/// <summary>Coils, lamps and a mark of an answered exchange, as bits.</summary>
[Flags]
public enum ExchangeOutputs
{
    /// <summary>Everything off.</summary>
    None = 0,

    /// <summary>Line coil.</summary>
    CloseLine = 1,

    /// <summary>Brake coil.</summary>
    CloseBrake = 2,

    /// <summary>Field coil.</summary>
    CloseField = 4,

    /// <summary>Lamp: ready.</summary>
    ReadyLamp = 8,

    /// <summary>Lamp: running.</summary>
    RunningLamp = 16,

    /// <summary>Lamp: tripped.</summary>
    TrippedLamp = 32,

    /// <summary>The back-EMF from the voltage equation is valid.</summary>
    ResistiveValid = 64,
}
