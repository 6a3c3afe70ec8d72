namespace StarterCtl.Core;

/// <summary>What an entry of the <see cref="EventLog"/> is about. Numbers are published and never reused.</summary>
public enum EventKind
{
    /// <summary>No entry.</summary>
    None = 0,

    /// <summary>A fault appeared. Number: the <see cref="FaultId"/>; value: what was measured.</summary>
    Fault = 1,

    /// <summary>A phase was entered. Number: the <see cref="Phase"/>; value: the phase left.</summary>
    Phase = 2,

    /// <summary>A stage was cut out. Number: the stage; value: back-EMF in volts.</summary>
    Cutout = 3,

    /// <summary>A reset cleared a fault. Number: the <see cref="FaultId"/>.</summary>
    Reset = 4,

    /// <summary>Resistance was put back. Number: the stage in effect from then on; value: supply in volts.</summary>
    PutBack = 5,
}
