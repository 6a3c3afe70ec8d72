namespace StarterCtl.Firmware;

/// <summary>Why a request was not carried out. Numbers are published and never reused.</summary>
public enum LinkReason
{
    /// <summary>It was carried out.</summary>
    Done = 0,

    /// <summary>The board does not know the message.</summary>
    UnknownMessage = 1,

    /// <summary>The body is not as long as the message's should be.</summary>
    WrongLength = 2,

    /// <summary>The set is of another version of the table of settings.</summary>
    WrongVersion = 3,

    /// <summary>No setting has this id.</summary>
    UnknownSetting = 4,

    /// <summary>The values do not come in the order of the table, or the setting has no value of this index.</summary>
    OutOfOrder = 5,

    /// <summary>The number lies outside its range.</summary>
    OutOfRange = 6,

    /// <summary>The values do not come to the checksum that was announced.</summary>
    ChecksumMismatch = 7,

    /// <summary>The set was to be kept before all of it was there.</summary>
    Truncated = 8,

    /// <summary>Settings change only while the controller is ready or not set up.</summary>
    NotWhileRunning = 9,

    /// <summary>No upload has been begun.</summary>
    NoUpload = 10,

    /// <summary>A setting contradicts another one.</summary>
    Contradiction = 11,

    /// <summary>The board could not keep the set.</summary>
    NotStored = 12,

    /// <summary>The local permit for a start over the link is not given.</summary>
    NoLocalPermit = 13,

    /// <summary>The log has no event of this index.</summary>
    NoSuchEvent = 14,

    /// <summary>No exchange has been begun, or the board has ended it because nothing came.</summary>
    NotExchanging = 15,

    /// <summary>Not while a simulated machine stands in for the real one.</summary>
    NotWhileExchanging = 16,
}
