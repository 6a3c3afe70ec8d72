namespace StarterCtl.Core;

/// <summary>What the controller makes of its readings on this tick.</summary>
public sealed class Estimate
{
    /// <summary>True while a speed sensor is fitted and its reading is fresh.</summary>
    public bool SpeedKnown;

    /// <summary>Back-EMF from the measured speed at the present flux, E = k w, V; meaningless while the speed is unknown.</summary>
    public float BackEmfVolts;

    /// <summary>Back-EMF from the voltage equation, E = V - Vb - Ia R_j, V; see <see cref="ResistiveValid"/>.</summary>
    public float ResistiveBackEmfVolts;

    /// <summary>True while the line is closed and the current changes slowly enough for the inductance to be left out.</summary>
    public bool ResistiveValid;

    /// <summary>
    /// Back-EMF that would stand at this speed with the flux of the permitted peak, V. The one that decides. With constant flux
    /// the same as the others.
    /// </summary>
    public float DecidingVolts;

    /// <summary>True while there is one: from the speed, or from the voltage equation where the settings allow that.</summary>
    public bool DecidingValid;
}
