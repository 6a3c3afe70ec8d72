using System.Collections.Generic;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>The event log over the link.</summary>
public sealed class LogDownloadTests
{
    private readonly LinkRig _rig = new();
    private readonly LogAnswer _event = new();

    [Fact]
    public void ReadLog_EmptyLog_IsOneEventOfKindNone()
    {
        LogCopy copy = new();
        copy.Take(new EventLog(new Uptime()));

        Assert.True(copy.TryGet(0, _event));
        Assert.Equal((0, EventKind.None), (_event.Count, _event.Kind));
        Assert.False(copy.TryGet(1, _event));
    }

    [Fact]
    public void ReadLog_WholeLog_IsTheControllersOwn()
    {
        _rig.Step();
        _rig.Port.Buttons.PressStart();
        _rig.SpeedRadPerSec = 96f;
        _rig.Step(1500);
        _rig.ReadFails = true;
        _rig.Step();
        EventLog log = _rig.Controller.Log;
        int count = log.Count;

        List<(EventKind, int, float, int)> expected = [];
        List<(EventKind, int, float, int)> read = [];
        for (int i = 0; i < count; i++)
        {
            expected.Add((log.KindAt(i), log.NumberAt(i), log.ValueAt(i), log.SecondsAt(i)));
            Assert.Equal(MessageId.LogEntry, Ask(i).Id);
            Assert.Equal((i, count), (_event.Index, _event.Count));
            read.Add((_event.Kind, _event.Number, _event.Value, _event.Seconds));
        }

        Assert.Equal(expected, read);
        Assert.Contains((EventKind.Fault, (int)FaultId.ReadingInvalid), read.ConvertAll(row => (row.Item1, row.Item2)));
        Assert.Equal(LinkReason.NoSuchEvent, _rig.Reason(Ask(count)));
    }

    [Fact]
    public void ReadLog_EventComesInBetween_IsInTheNextCopyOnly()
    {
        _rig.Step();
        _rig.Port.Buttons.PressStart();
        _rig.Step(5);
        Ask(0);
        int count = _event.Count;

        _rig.ReadFails = true;
        _rig.Step();
        Ask(1);
        Assert.Equal(count, _event.Count);

        Ask(0);
        Assert.Equal(count + 2, _event.Count);
    }

    private Frame Ask(int index)
    {
        new LogRequest { Index = index }.Write(_rig.Request);
        Frame answer = _rig.Ask();
        if (answer.Id == MessageId.LogEntry) _event.Read(answer);
        return answer;
    }
}
