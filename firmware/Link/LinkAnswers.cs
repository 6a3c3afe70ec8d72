using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Makes the board's answers, each into one frame that keeps the last of them for a request that is repeated.</summary>
public sealed class LinkAnswers
{
    private const int LargestAscii = 127;

    private readonly AckAnswer _ack = new AckAnswer();
    private readonly HelloAnswer _hello = new HelloAnswer();
    private readonly PongAnswer _pong = new PongAnswer();
    private readonly LogAnswer _event = new LogAnswer();
    private readonly SettingAnswer _setting = new SettingAnswer();
    private readonly LockAnswer _lock = new LockAnswer();
    private readonly LogCopy _log = new LogCopy();
    private readonly PingRequest _ping = new PingRequest();
    private readonly LogRequest _logRequest = new LogRequest();
    private readonly SettingRequest _settingRequest = new SettingRequest();

    /// <summary>The last answer.</summary>
    public readonly Frame Frame = new Frame();

    /// <summary>Fills what never changes.</summary>
    public LinkAnswers(BoardIdentity identity, bool canCalibrate, bool canExchange)
    {
        _hello.ProtocolVersion = LinkPort.ProtocolVersion;
        _hello.ResetCause = identity.ResetCause;
        _hello.Capabilities = LinkCapabilities.Telemetry | LinkCapabilities.Log | LinkCapabilities.Settings | LinkCapabilities.Commands;
        if (canCalibrate) _hello.Capabilities |= LinkCapabilities.Calibration;
        if (canExchange) _hello.Capabilities |= LinkCapabilities.Exchange;
        _hello.SettingsVersion = SettingTable.Version;
        _hello.BootCheckHash = identity.BootCheckHash;
        _hello.VersionMajor = identity.VersionMajor;
        _hello.VersionMinor = identity.VersionMinor;
        _hello.VersionPatch = identity.VersionPatch;
        for (int i = 0; i < HelloAnswer.NameBytes && i < identity.Name.Length; i++)
        {
            char letter = identity.Name[i];
            _hello.BoardName[i] = (byte)(letter > LargestAscii ? '?' : letter);
        }
    }

    /// <summary>Says whether a request was carried out.</summary>
    public void Ack(Frame request, LinkReason reason, SettingId setting, SettingProblem problem)
    {
        _ack.RequestSequence = request.Sequence;
        _ack.Request = request.Id;
        _ack.Reason = reason;
        _ack.Setting = setting;
        _ack.Problem = problem;
        _ack.Write(Frame);
    }

    /// <summary>Says who is there.</summary>
    public void Hello(Frame request, Controller controller, ISettingsTarget settings, bool localPermit)
    {
        _hello.RequestSequence = request.Sequence;
        _hello.Phase = controller.Phase;
        _hello.SettingsSum = settings.Checksum;
        _hello.CaseHash = settings.CaseHash;
        _hello.LocalPermit = localPermit;
        _hello.Write(Frame);
    }

    /// <summary>Gives the echo.</summary>
    public void Pong(Frame request, FrameReader reader, SequenceWatch watch)
    {
        _ping.Read(request);
        _pong.RequestSequence = request.Sequence;
        _pong.Echo = _ping.Echo;
        _pong.WrongChecks = reader.WrongChecks;
        _pong.OverlongFrames = reader.OverlongFrames;
        _pong.BrokenFrames = reader.BrokenFrames;
        _pong.LostFrames = watch.LostFrames;
        _pong.Write(Frame);
    }

    /// <summary>Says why the controller may not begin.</summary>
    public void Lock(Frame request, PowerUpCheck powerUp)
    {
        _lock.RequestSequence = request.Sequence;
        _lock.Problem = powerUp.Problem;
        _lock.Value = powerUp.Value;
        _lock.Wiring = powerUp.Wiring.Problem;
        _lock.Role = powerUp.Wiring.Role;
        _lock.OtherRole = powerUp.Wiring.OtherRole;
        _lock.WiringValue = powerUp.Wiring.Value;
        _lock.WiringLimit = powerUp.Wiring.Limit;
        _lock.Write(Frame);
    }

    /// <summary>Gives an event of the log, or says that there is none.</summary>
    public void Event(Frame request, EventLog log)
    {
        _logRequest.Read(request);
        if (_logRequest.Index == 0) _log.Take(log);
        if (!_log.TryGet(_logRequest.Index, _event))
        {
            Ack(request, LinkReason.NoSuchEvent, SettingId.None, SettingProblem.None);
            return;
        }

        _event.RequestSequence = request.Sequence;
        _event.Write(Frame);
    }

    /// <summary>Gives a value of the settings, or says that there is none.</summary>
    public void Setting(Frame request, Settings settings)
    {
        _settingRequest.Read(request);
        SettingId id = _settingRequest.Setting;
        bool isKnown = id > SettingId.None && (int)id <= SettingTable.Rows.Length;
        int count = isKnown ? SettingAccess.Count(settings, id) : 0;
        if (_settingRequest.Index >= count)
        {
            Ack(request, isKnown ? LinkReason.OutOfOrder : LinkReason.UnknownSetting, id, SettingProblem.None);
            return;
        }

        bool isWhole = SettingTable.Rows[(int)id - 1].IsWhole;
        _setting.RequestSequence = request.Sequence;
        _setting.Setting = id;
        _setting.Index = _settingRequest.Index;
        _setting.Count = count;
        _setting.Bits = isWhole ? SettingAccess.GetWhole(settings, id) : SingleBits.Of(SettingAccess.Get(settings, id, _settingRequest.Index));
        _setting.Write(Frame);
    }
}
