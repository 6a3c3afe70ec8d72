using System;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Calibration;
using StarterCtl.Firmware.Tests.Memory;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>
/// A board with a link, the three-stage starter of CHK-01 around it and a desk at the other end of the line. Contacts follow
/// their coils by the next reading. Allocates nothing once built.
/// </summary>
internal sealed class LinkRig : IBoard, ISerialLine, ISettingsTarget, ILocalPermit
{
    internal const int PeriodMicroseconds = 1000;
    private const int MostSteps = 200;

    private readonly byte[] _toBoard = new byte[1024];
    private readonly FrameWriter _desk = new();
    private readonly FrameReader _deskReader = new();
    private readonly ControlLoop _loop;
    private int _toBoardFirst;
    private int _toBoardEnd;
    private int _counter;
    private readonly Frame _lastAnswer = new();
    private bool _isAnswerIn;

    internal LinkRig(Action<Settings>? change = null)
    {
        Kept = FakeBoard.Chk01(change);
        Checksum = SettingsChecksum.Of(Kept);
        Bench = new CalibrationBench(this, new MemoryChip());
        Port = new LinkPort(this, this, this, Identity(), Bench.Port);
        _loop = new ControlLoop(new LinkedBoard(Bench.Lock, Port), Kept);
        Port.Serve(_loop.Controller);
    }

    internal LinkPort Port { get; }

    internal CalibrationBench Bench { get; }

    internal Controller Controller => _loop.Controller;

    internal Frame Request { get; } = new();

    /// <summary>The last frame, a sample or an answer.</summary>
    internal Frame Answer { get; } = new();

    public Settings Kept { get; private set; }

    public int Checksum { get; private set; }

    public int CaseHash { get; private set; } = 0x01020304;

    internal bool KeepFails { get; set; }

    /// <summary>What goes wrong with a set between taking it and keeping it.</summary>
    internal Action<Settings> SpoilKept { get; set; } = _ => { };

    internal bool PermitGiven { get; set; }

    internal bool ReadFails { get; set; }

    internal bool StartHeld { get; set; }

    internal float SpeedRadPerSec { get; set; }

    internal int RoomBytes { get; set; } = 16;

    /// <summary>Receives every byte that the board sends, beside the rig's own desk.</summary>
    internal Action<byte>? Wire { get; set; }

    internal bool CloseLine { get; private set; }

    internal int CloseStages { get; private set; }

    /// <summary>Control periods on which any coil was on.</summary>
    internal long LivePeriods { get; private set; }

    internal int TelemetryFrames { get; private set; }

    internal int AnswerFrames { get; private set; }

    internal static BoardIdentity Identity() => new()
    {
        Name = "bench board 1",
        VersionMajor = 0,
        VersionMinor = 1,
        VersionPatch = 2,
        BootCheckHash = BootCheck.Expected,
        ResetCause = ResetCause.Watchdog,
    };

    internal void Step(int steps = 1)
    {
        for (int i = 0; i < steps; i++)
        {
            _counter = unchecked(_counter + PeriodMicroseconds);
            _loop.Step();
        }
    }

    /// <summary>Sends a message without a body.</summary>
    internal Frame Ask(MessageId id)
    {
        Request.Begin(id, 0);
        return Ask();
    }

    /// <summary>Sends what stands in <see cref="Request"/> and steps until an answer is there.</summary>
    internal Frame Ask()
    {
        _desk.Write(Request);
        return SendAgain();
    }

    /// <summary>Sends the last request again, byte for byte.</summary>
    internal Frame SendAgain()
    {
        Put(_desk.Line, _desk.Length);
        _isAnswerIn = false;
        for (int i = 0; i < MostSteps && !_isAnswerIn; i++) Step();
        if (!_isAnswerIn) throw new InvalidOperationException("no answer");
        return _lastAnswer;
    }

    internal LinkReason Reason(Frame answer)
    {
        AckAnswer ack = new();
        if (answer.Id != MessageId.Ack) throw new InvalidOperationException($"{answer.Id} is no acknowledgement");
        ack.Read(answer);
        if (ack.Request != Request.Id || ack.RequestSequence != Request.Sequence) throw new InvalidOperationException("answers another request");
        return ack.Reason;
    }

    /// <summary>Puts bytes on the line to the board; what does not fit is lost, as on a real one.</summary>
    internal void Put(byte[] bytes, int count)
    {
        if (_toBoardFirst == _toBoardEnd) _toBoardFirst = _toBoardEnd = 0;
        for (int i = 0; i < count && _toBoardEnd < _toBoard.Length; i++) _toBoard[_toBoardEnd++] = bytes[i];
    }

    internal bool LineIsEmpty => _toBoardFirst == _toBoardEnd;

    int IBoard.MicrosecondCounter() => _counter;

    bool IBoard.TryRead(Readings readings)
    {
        Bench.Next();
        readings.SupplyVolts = 250f;
        readings.ArmatureAmps = 0f;
        readings.SpeedRadPerSec = SpeedRadPerSec;
        readings.SpeedValid = true;
        readings.StartPressed = StartHeld;
        readings.ResetPressed = false;
        readings.StopPressed = false;
        readings.LineClosed = CloseLine;
        readings.StagesClosed = CloseStages;
        return !ReadFails;
    }

    void IBoard.Write(Outputs outputs)
    {
        CloseLine = outputs.CloseLine;
        CloseStages = outputs.CloseStages;
        if (outputs.CloseLine || outputs.CloseStages != 0 || outputs.CloseBrake || outputs.CloseField) LivePeriods++;
    }

    int ISerialLine.Read(byte[] target, int most)
    {
        int count = Math.Min(most, _toBoardEnd - _toBoardFirst);
        Array.Copy(_toBoard, _toBoardFirst, target, 0, count);
        _toBoardFirst += count;
        return count;
    }

    int ISerialLine.Room() => RoomBytes;

    void ISerialLine.Write(byte[] source, int first, int count)
    {
        for (int i = first; i < first + count; i++)
        {
            Wire?.Invoke(source[i]);
            if (!_deskReader.Take(source[i])) continue;
            // The reader's own holds it until the next byte only.
            Copy(_deskReader.Frame, Answer);
            if (Answer.Id != MessageId.Telemetry) Copy(Answer, _lastAnswer);
            if (Answer.Id == MessageId.Telemetry) TelemetryFrames++;
            else AnswerFrames++;
            _isAnswerIn |= Answer.Id != MessageId.Telemetry;
        }
    }

    bool ISettingsTarget.TryKeep(Settings settings, int checksum, int caseHash)
    {
        if (KeepFails) return false;
        // The running controller stays on its own set: what the board does behind the period is not the link's.
        SpoilKept(settings);
        Kept = settings;
        Checksum = checksum;
        CaseHash = caseHash;
        return true;
    }

    bool ILocalPermit.IsGiven() => PermitGiven;

    private static void Copy(Frame from, Frame to)
    {
        from.Bytes.CopyTo(to.Bytes, 0);
        to.BodyLength = from.BodyLength;
    }
}
