using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Boards;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>Why a board does not let its controller begin, asked over the link.</summary>
public sealed class LockTests
{
    private readonly LinkRig _rig = new();

    [Fact]
    public void ReadLock_NoLock_IsNoMessageOfThisBoard() => Assert.Equal(LinkReason.UnknownMessage, _rig.Reason(_rig.Ask(MessageId.ReadLock)));

    [Fact]
    public void ReadLock_CurrentFlows_SaysSoWithTheAmperes()
    {
        PowerUpCheck lockAtPowerUp = Lock(false);
        lockAtPowerUp.Update(1000, new Readings { SupplyVolts = 250f, SpeedValid = true, ArmatureAmps = 37.5f });

        LockAnswer answer = Asked(lockAtPowerUp);

        Assert.Equal((PowerUpProblem.CurrentFlows, 37.5f, BoardProblem.None), (answer.Problem, answer.Value, answer.Wiring));
    }

    [Fact]
    public void ReadLock_TwoRolesOnOnePin_NamesBothAndThePin()
    {
        LockAnswer answer = Asked(Lock(true));

        Assert.Equal((PowerUpProblem.WiringRefused, (float)BoardProblem.PinUsedTwice), (answer.Problem, answer.Value));
        Assert.Equal((BoardProblem.PinUsedTwice, (float)PinRole.LineCoil), (answer.Wiring, answer.WiringValue));
        Assert.Equal([PinRole.LineCoil, PinRole.ReadyLamp], new[] { answer.Role, answer.OtherRole }.Order());
    }

    private LockAnswer Asked(PowerUpCheck lockAtPowerUp)
    {
        _rig.Port.Serve(_rig.Controller, lockAtPowerUp);
        _rig.Ask(MessageId.ReadLock);
        Assert.Equal(MessageId.Lock, _rig.Answer.Id);
        LockAnswer answer = new();
        answer.Read(_rig.Answer);
        return answer;
    }

    private static PowerUpCheck Lock(bool sharesPin)
    {
        Settings settings = FakeBoard.Chk01(changed => changed.ZeroAmps = 5f);
        PinMap map = SoftPins.Wired(settings);
        if (sharesPin) map.Wire(PinRole.ReadyLamp, map.Pin(PinRole.LineCoil), false);
        BoardCheck wiring = new(map, settings);
        return new PowerUpCheck(settings, SettingsChecksum.Of(settings), wiring, new OutputPanel(map, new SoftPins(map).AtRest()), BootCheck.Expected);
    }
}
