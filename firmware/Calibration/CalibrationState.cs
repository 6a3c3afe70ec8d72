namespace StarterCtl.Firmware;

/// <summary>How far a calibration has come. Numbers are published and never reused.</summary>
public enum CalibrationState
{
    /// <summary>None has been begun for this channel.</summary>
    Idle = 0,

    /// <summary>Begun; the zero is to be taken.</summary>
    Begun = 1,

    /// <summary>The zero is being taken.</summary>
    TakingZero = 2,

    /// <summary>The zero is there; the second point is to be taken.</summary>
    ZeroTaken = 3,

    /// <summary>The second point is being taken.</summary>
    TakingSpan = 4,

    /// <summary>Both points are there and allowed; nothing is in force yet.</summary>
    Complete = 5,
}
