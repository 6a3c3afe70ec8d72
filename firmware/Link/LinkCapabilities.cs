using System;

namespace StarterCtl.Firmware;

/// <summary>What a board's link can do, as bits.</summary>
[Flags]
public enum LinkCapabilities
{
    /// <summary>Nothing but greeting and echo.</summary>
    None = 0,

    /// <summary>Samples.</summary>
    Telemetry = 1,

    /// <summary>Download of the event log.</summary>
    Log = 2,

    /// <summary>Upload of settings and reading them back.</summary>
    Settings = 4,

    /// <summary>Stop, reset and start.</summary>
    Commands = 8,

    /// <summary>Calibration, noise check and the state of the memory.</summary>
    Calibration = 16,

    /// <summary>A simulated machine in the place of inputs and outputs.</summary>
    Exchange = 32,
}
