using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>The board's reasons in words.</summary>
public static class LinkReasonText
{
    /// <summary>Why a request was not carried out.</summary>
    public static string Of(LinkReason reason) => reason switch
    {
        LinkReason.Done => "done",
        LinkReason.UnknownMessage => "the board does not know this message",
        LinkReason.WrongLength => "the message is not as long as the board expects",
        LinkReason.WrongVersion => "the board has another version of the table of settings",
        LinkReason.UnknownSetting => "the board knows no such setting",
        LinkReason.OutOfOrder => "not the next value of the table, or no value of this index",
        LinkReason.OutOfRange => "out of range",
        LinkReason.ChecksumMismatch => "the values that arrived do not come to the announced checksum",
        LinkReason.Truncated => "not all values arrived",
        LinkReason.NotWhileRunning => "settings change only while the controller is ready or not set up",
        LinkReason.NoUpload => "no upload has been begun, or the board dropped it",
        LinkReason.Contradiction => "a setting contradicts another one",
        LinkReason.NotStored => "the board could not keep the set",
        LinkReason.NoLocalPermit => "the local permit for a start over the link is not given",
        LinkReason.NoSuchEvent => "the log has no such event",
        LinkReason.NotExchanging => "no exchange has been begun, or the board has ended it because nothing came",
        LinkReason.NotWhileExchanging => "not while a simulated machine stands in for the real one",
        _ => $"reason {(int)reason}, which this program does not know",
    };
}
