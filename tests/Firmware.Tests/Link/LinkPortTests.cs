using System.Linq;
using System.Text;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>What the board answers, and what reaches the controller.</summary>
public sealed class LinkPortTests
{
    private readonly LinkRig _rig = new();

    [Fact]
    public void AskHello_AnyTime_SaysWhoIsThere()
    {
        _rig.Step();
        HelloAnswer hello = new();

        Frame answer = _rig.Ask(MessageId.AskHello);

        Assert.Equal(MessageId.Hello, answer.Id);
        hello.Read(answer);
        Assert.Equal((1, Phase.Ready, ResetCause.Watchdog), (hello.ProtocolVersion, hello.Phase, hello.ResetCause));
        Assert.Equal((SettingTable.Version, SettingsChecksum.Of(_rig.Kept), 0x01020304), (hello.SettingsVersion, hello.SettingsSum, hello.CaseHash));
        Assert.Equal((BootCheck.Expected, 0, 1, 2), (hello.BootCheckHash, hello.VersionMajor, hello.VersionMinor, hello.VersionPatch));
        Assert.Equal((LinkCapabilities)31, hello.Capabilities);
        Assert.False(hello.LocalPermit);
        Assert.Equal("bench board 1", Encoding.ASCII.GetString(hello.BoardName).TrimEnd('\0'));
        Assert.Equal(_rig.Request.Sequence, hello.RequestSequence);
    }

    [Fact]
    public void AskHello_NameOf30LettersNotAllAscii_IsCutAt24AndMarked()
    {
        BoardIdentity identity = new() { Name = "é23456789012345678901234567890" };
        Frame request = new();
        request.Begin(MessageId.AskHello, 0);
        LinkAnswers answers = new(identity, false, false);
        HelloAnswer hello = new();

        answers.Hello(request, _rig.Controller, _rig, true);

        hello.Read(answers.Frame);
        Assert.Equal("?23456789012345678901234", Encoding.ASCII.GetString(hello.BoardName));
        Assert.True(hello.LocalPermit);
    }

    [Fact]
    public void AskHello_SentAgain_SaysWhatIsNow()
    {
        _rig.Step();
        HelloAnswer hello = new();
        _rig.Ask(MessageId.AskHello);
        _rig.ReadFails = true;
        _rig.Step();

        hello.Read(_rig.SendAgain());

        Assert.Equal(Phase.Tripped, hello.Phase);
    }

    [Fact]
    public void AskHello_OfANewSession_BeginsTheCountOfLostFramesAnew()
    {
        _rig.Ask(MessageId.AskHello);
        FrameWriter session = new();
        for (int sequence = 0; sequence < 50; sequence++) session.Write(_rig.Request);
        _rig.Put(session.Line, session.Length);
        new PingRequest().Write(_rig.Request);
        session.Write(_rig.Request);
        _rig.Put(session.Line, session.Length);
        _rig.Step(20);

        PongAnswer pong = new();
        pong.Read(_rig.Answer);
        Assert.Equal((MessageId.Pong, 50, 0), (_rig.Answer.Id, pong.RequestSequence, pong.LostFrames));
    }

    [Fact]
    public void Ping_ANumber_ComesBackWithTheBoardsCounts()
    {
        _rig.Ask(MessageId.AskHello);
        _rig.Put([9, 9, 0, 3, 1, 1, 0, 5, 1, 1, 1, 1, 0, .. Enumerable.Repeat((byte)1, 80), 0], 94);
        _rig.Step(20);
        // Two requests that the line swallowed.
        FrameWriter lost = new();
        PingRequest ping = new() { Echo = -123_456_789 };
        ping.Write(_rig.Request);
        for (int i = 0; i < 3; i++) lost.Write(_rig.Request);
        lost.Write(_rig.Request);
        _rig.Put(lost.Line, lost.Length);
        _rig.Step(20);

        PongAnswer pong = new();
        pong.Read(_rig.Answer);
        Assert.Equal((MessageId.Pong, -123_456_789, 3), (_rig.Answer.Id, pong.Echo, pong.RequestSequence));
        Assert.Equal((2, 1, 1, 2), (pong.BrokenFrames, pong.WrongChecks, pong.OverlongFrames, pong.LostFrames));
    }

    [Fact]
    public void Stop_WhileRunning_StopsAsTheButtonDoes()
    {
        Run();

        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.Stop)));

        Assert.False(_rig.CloseLine);
        Assert.NotEqual(Phase.Running, _rig.Controller.Phase);
        Assert.Equal(FaultId.None, _rig.Controller.Fault.Id);
    }

    [Fact]
    public void Stop_SentTwiceWithTheSameNumber_StopsTwice()
    {
        _rig.Ask(MessageId.Stop);
        _rig.Port.Buttons.PressStart();
        _rig.Step(5);
        Assert.True(_rig.CloseLine);

        _rig.SendAgain();

        Assert.False(_rig.CloseLine);
    }

    [Fact]
    public void Start_WithoutThePermit_IsRefusedAndClosesNothing()
    {
        _rig.Step();

        Assert.Equal(LinkReason.NoLocalPermit, _rig.Reason(_rig.Ask(MessageId.Start)));
        _rig.Step(100);

        Assert.Equal((0, Phase.Ready), (_rig.LivePeriods, _rig.Controller.Phase));
    }

    [Fact]
    public void Start_WithThePermit_StartsAsTheButtonDoes()
    {
        _rig.Step();
        _rig.PermitGiven = true;

        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.Start)));

        Assert.True(_rig.CloseLine);
        Assert.Equal(Phase.Accelerating, _rig.Controller.Phase);
    }

    [Fact]
    public void Start_WhileTheBoardsButtonIsStuck_StartsNothing()
    {
        _rig.StartHeld = true;
        _rig.Step(5);
        _rig.PermitGiven = true;

        _rig.Ask(MessageId.Start);
        _rig.Step(100);

        Assert.Equal(0, _rig.LivePeriods);
    }

    [Fact]
    public void Start_AnswerLostAndRequestSentAgain_StartsOnce()
    {
        _rig.Step();
        _rig.PermitGiven = true;
        _rig.Ask(MessageId.Start);
        byte[] again = new byte[Frame.MostLineBytes];
        FrameWriter same = new();
        same.Write(_rig.Request);
        same.Line.CopyTo(again, 0);
        _rig.Put([3, 1, 1, 0], 4);

        // The wired stop came between the two.
        StopAndSettle();
        long livePeriods = _rig.LivePeriods;
        _rig.Put(again, same.Length);
        _rig.Step(100);

        Assert.Equal((livePeriods, Phase.Ready), (_rig.LivePeriods, _rig.Controller.Phase));
    }

    [Fact]
    public void Press_OnAPeriodThatCannotRead_DoesNotWaitForTheNext()
    {
        _rig.Step();
        _rig.Port.Buttons.PressReset();
        _rig.ReadFails = true;
        _rig.Step();
        _rig.ReadFails = false;
        _rig.Step(10);

        Assert.Equal((Phase.Tripped, FaultId.ReadingInvalid, 0), (_rig.Controller.Phase, _rig.Controller.Fault.Id, _rig.LivePeriods));
    }

    [Fact]
    public void Reset_WhileTripped_ResetsAndStartsNothing()
    {
        _rig.Step();
        _rig.ReadFails = true;
        _rig.Step();
        _rig.ReadFails = false;
        _rig.Step();
        Assert.Equal(Phase.Tripped, _rig.Controller.Phase);

        Assert.Equal(LinkReason.Done, _rig.Reason(_rig.Ask(MessageId.Reset)));

        Assert.Equal((Phase.Ready, 0), (_rig.Controller.Phase, _rig.LivePeriods));
    }

    [Theory]
    [InlineData(0x05)]
    [InlineData(0x35)]
    [InlineData(0x3F)]
    [InlineData(0x80)]
    [InlineData(0x90)]
    [InlineData(0xFF)]
    public void Request_NotOneOfTheRequests_IsUnknownOrOfWrongLength(int id)
    {
        LinkReason reason = _rig.Reason(_rig.Ask((MessageId)id));

        Assert.Equal(id is 0x80 or 0x90 ? LinkReason.WrongLength : LinkReason.UnknownMessage, reason);
    }

    [Fact]
    public void Request_OneOfTheBoardsOwnMessages_IsUnknown()
    {
        new AckAnswer { Request = MessageId.Stop }.Write(_rig.Request);

        Assert.Equal(LinkReason.UnknownMessage, _rig.Reason(_rig.Ask()));
    }

    [Fact]
    public void Request_ByteTooMany_IsOfWrongLengthAndNotCarriedOut()
    {
        Run();
        _rig.Request.Begin(MessageId.Stop, 1);

        Assert.Equal(LinkReason.WrongLength, _rig.Reason(_rig.Ask()));
        Assert.True(_rig.CloseLine);
    }

    [Fact]
    public void Port_NotServingAController_NeitherReadsNorSends()
    {
        LinkPort port = new(_rig, _rig, _rig, LinkRig.Identity());
        _rig.Put([1, 0], 2);

        port.Receive();
        port.Send(1000, new Readings(), new Outputs());

        Assert.False(_rig.LineIsEmpty);
    }

    private void Run()
    {
        _rig.Step();
        _rig.PermitGiven = true;
        _rig.Ask(MessageId.Start);
        _rig.SpeedRadPerSec = 96f;
        _rig.Step(20);
        Assert.Equal((Phase.Running, true, 7), (_rig.Controller.Phase, _rig.CloseLine, _rig.CloseStages));
    }

    private void StopAndSettle()
    {
        _rig.Port.Buttons.PressStop();
        _rig.Step(50);
        Assert.Equal(Phase.Ready, _rig.Controller.Phase);
    }
}
