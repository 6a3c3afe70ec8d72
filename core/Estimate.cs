namespace StarterCtl.Core;

/// <summary>What the controller makes of its readings on this tick.</summary>
public sealed class Estimate
{
    /// <summary>Back-EMF from the measured speed, E = k w, V. The one that decides.</summary>
    public float BackEmfVolts;

    /// <summary>Back-EMF from the voltage equation, E = V - Vb - Ia R_j, V; see <see cref="ResistiveValid"/>.</summary>
    public float ResistiveBackEmfVolts;

    /// <summary>True while the line is closed and the current changes slowly enough for the inductance to be left out.</summary>
    public bool ResistiveValid;
}
