namespace StarterCtl.Firmware;

/// <summary>The steps of a calibration that can be asked for. Numbers are published and never reused.</summary>
public enum CalibrationStep
{
    /// <summary>None: only says how the channel stands.</summary>
    Read = 0,

    /// <summary>Begins with the channel.</summary>
    Begin = 1,

    /// <summary>Takes the zero.</summary>
    TakeZero = 2,

    /// <summary>Takes the second point.</summary>
    TakeSpan = 3,

    /// <summary>Saves both points, reads them back and puts them in force.</summary>
    Save = 4,

    /// <summary>Puts the former offset and gain in force.</summary>
    Undo = 5,

    /// <summary>Drops what was taken.</summary>
    Abort = 6,
}
