namespace StarterCtl.Firmware;

/// <summary>What the memory holds of the board. Body of <see cref="MessageId.Memory"/>.</summary>
public sealed class MemoryAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 7;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="SettingsState"/>.</summary>
    public const int SettingsStateAt = 1;

    /// <summary>Offset of <see cref="CalibrationState"/>.</summary>
    public const int CalibrationStateAt = 2;

    /// <summary>Offset of <see cref="ResetCause"/>.</summary>
    public const int ResetCauseAt = 3;

    /// <summary>Offset of <see cref="FormerResetCause"/>.</summary>
    public const int FormerResetCauseAt = 4;

    /// <summary>Offset of <see cref="WatchdogResets"/>.</summary>
    public const int WatchdogResetsAt = 5;

    /// <summary>Offset of <see cref="StartLock"/>.</summary>
    public const int StartLockAt = 6;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>What was found of the settings.</summary>
    public StoreState SettingsState;

    /// <summary>What was found of the calibration.</summary>
    public StoreState CalibrationState;

    /// <summary>Why the board began anew.</summary>
    public ResetCause ResetCause;

    /// <summary>Why it did the time before.</summary>
    public ResetCause FormerResetCause;

    /// <summary>Watchdog resets in a row.</summary>
    public int WatchdogResets;

    /// <summary>Why starting is locked out.</summary>
    public StartLockReason StartLock;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Memory, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(SettingsStateAt, (int)SettingsState);
        frame.PutByte(CalibrationStateAt, (int)CalibrationState);
        frame.PutByte(ResetCauseAt, (int)ResetCause);
        frame.PutByte(FormerResetCauseAt, (int)FormerResetCause);
        frame.PutByte(WatchdogResetsAt, WatchdogResets);
        frame.PutByte(StartLockAt, (int)StartLock);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        SettingsState = (StoreState)frame.GetByte(SettingsStateAt);
        CalibrationState = (StoreState)frame.GetByte(CalibrationStateAt);
        ResetCause = (ResetCause)frame.GetByte(ResetCauseAt);
        FormerResetCause = (ResetCause)frame.GetByte(FormerResetCauseAt);
        WatchdogResets = frame.GetByte(WatchdogResetsAt);
        StartLock = (StartLockReason)frame.GetByte(StartLockAt);
    }
}
