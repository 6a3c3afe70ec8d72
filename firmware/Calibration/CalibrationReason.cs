namespace StarterCtl.Firmware;

/// <summary>What came of a step of a calibration. Numbers are published and never reused.</summary>
public enum CalibrationReason
{
    /// <summary>It was done, or is being done.</summary>
    Done = 0,

    /// <summary>There is no such channel on this board.</summary>
    NoSuchChannel = 1,

    /// <summary>No calibration has been begun.</summary>
    NotBegun = 2,

    /// <summary>Samples are being taken.</summary>
    Busy = 3,

    /// <summary>A coil is on, a contact is not proven open, or that has not lasted for a second.</summary>
    NotAtRest = 4,

    /// <summary>The channel could not be read.</summary>
    NotRead = 5,

    /// <summary>The signal is at an end of the converter's range.</summary>
    AtRail = 6,

    /// <summary>The samples differ by more than 2 % of the range.</summary>
    Noisy = 7,

    /// <summary>The zero comes first.</summary>
    NoZero = 8,

    /// <summary>The second point lies less than 10 % of the range away from the zero.</summary>
    SpanTooSmall = 9,

    /// <summary>The true value is 0 or no number.</summary>
    UnusableValue = 10,

    /// <summary>The offset lies more than 10 % of the range away from the nominal one, that of a tacho more than 1 %.</summary>
    OffsetOutOfRange = 11,

    /// <summary>The gain is less than half or more than twice the nominal one, or of the other sign.</summary>
    GainOutOfRange = 12,

    /// <summary>Both points are needed before anything is saved.</summary>
    NothingToSave = 13,

    /// <summary>The memory did not give back what was written.</summary>
    NotStored = 14,

    /// <summary>The board does not know the step.</summary>
    NoSuchStep = 15,
}
