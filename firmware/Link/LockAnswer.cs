namespace StarterCtl.Firmware;

/// <summary>Why the board does not let the controller begin. Body of <see cref="MessageId.Lock"/>.</summary>
public sealed class LockAnswer
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 17;

    /// <summary>Offset of <see cref="RequestSequence"/>.</summary>
    public const int RequestSequenceAt = 0;

    /// <summary>Offset of <see cref="Problem"/>.</summary>
    public const int ProblemAt = 1;

    /// <summary>Offset of <see cref="Value"/>.</summary>
    public const int ValueAt = 2;

    /// <summary>Offset of <see cref="Wiring"/>.</summary>
    public const int WiringAt = 6;

    /// <summary>Offset of <see cref="Role"/>.</summary>
    public const int RoleAt = 7;

    /// <summary>Offset of <see cref="OtherRole"/>.</summary>
    public const int OtherRoleAt = 8;

    /// <summary>Offset of <see cref="WiringValue"/>.</summary>
    public const int WiringValueAt = 9;

    /// <summary>Offset of <see cref="WiringLimit"/>.</summary>
    public const int WiringLimitAt = 13;

    /// <summary>Sequence number of the request.</summary>
    public int RequestSequence;

    /// <summary>Why it is locked; none once it is open.</summary>
    public PowerUpProblem Problem;

    /// <summary>What was found, in the problem's unit.</summary>
    public float Value;

    /// <summary>Why the wiring is refused.</summary>
    public BoardProblem Wiring;

    /// <summary>The role that it is about.</summary>
    public PinRole Role;

    /// <summary>The other role on the same pin.</summary>
    public PinRole OtherRole;

    /// <summary>What was found of the wiring.</summary>
    public float WiringValue;

    /// <summary>What it is held against.</summary>
    public float WiringLimit;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.Lock, BodyBytes);
        frame.PutByte(RequestSequenceAt, RequestSequence);
        frame.PutByte(ProblemAt, (int)Problem);
        frame.PutFloat(ValueAt, Value);
        frame.PutByte(WiringAt, (int)Wiring);
        frame.PutByte(RoleAt, (int)Role);
        frame.PutByte(OtherRoleAt, (int)OtherRole);
        frame.PutFloat(WiringValueAt, WiringValue);
        frame.PutFloat(WiringLimitAt, WiringLimit);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        RequestSequence = frame.GetByte(RequestSequenceAt);
        Problem = (PowerUpProblem)frame.GetByte(ProblemAt);
        Value = frame.GetFloat(ValueAt);
        Wiring = (BoardProblem)frame.GetByte(WiringAt);
        Role = (PinRole)frame.GetByte(RoleAt);
        OtherRole = (PinRole)frame.GetByte(OtherRoleAt);
        WiringValue = frame.GetFloat(WiringValueAt);
        WiringLimit = frame.GetFloat(WiringLimitAt);
    }
}
