using System;
using System.Globalization;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>
/// Random, damaged and forged frames against the link and the whole loop behind it. In the suite 200 000 of them; the
/// environment variable STARTERCTL_FUZZ_FRAMES sets another number for a run by hand.
/// </summary>
public sealed class LinkFuzzTests
{
    private const int SuiteFrames = 200_000;
    private const int MostStepsPerFrame = 60;

    private static readonly byte[] Requests = [0x01, 0x02, 0x03, 0x04, 0x10, 0x11, 0x12, 0x20, 0x21, 0x22, 0x23, 0x30, 0x80, 0x90];

    private readonly Frame _frame = new();
    private readonly FrameWriter _writer = new();
    private readonly byte[] _line = new byte[300];
    private uint _random = 0x9E3779B9;

    [Fact]
    public void AnyFrames_WithoutThePermit_CloseNothingAndAllocateNothing()
    {
        LinkRig rig = new();
        // The loop's own first use of everything is behind it before memory is looked at.
        Run(rig, 2_000);

        int frames = int.TryParse(Environment.GetEnvironmentVariable("STARTERCTL_FUZZ_FRAMES"), CultureInfo.InvariantCulture, out int wanted) ? wanted : SuiteFrames;
        long before = GC.GetAllocatedBytesForCurrentThread();
        Run(rig, frames);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal((0, 0), (rig.LivePeriods, allocated));
        Assert.InRange(rig.AnswerFrames, frames / 10, frames * 2);
        // It has not gone deaf: behind all that it answers a greeting at once.
        Flush(rig);
        Assert.Equal(MessageId.Hello, rig.Ask(MessageId.AskHello).Id);
    }

    [Fact]
    public void TheSameFrames_WithThePermit_DoClose()
    {
        LinkRig rig = new() { PermitGiven = true };

        Run(rig, 2_000);

        Assert.NotEqual(0, rig.LivePeriods);
    }

    private void Run(LinkRig rig, int frames)
    {
        for (int i = 0; i < frames; i++)
        {
            rig.RoomBytes = Pick(20);
            rig.ReadFails = Pick(500) == 0;
            rig.Put(_line, Next());
            for (int step = 0; step < MostStepsPerFrame && !rig.LineIsEmpty; step++) rig.Step();
            if (!rig.LineIsEmpty) throw new InvalidOperationException("the line was not read");
        }
    }

    private static void Flush(LinkRig rig)
    {
        rig.RoomBytes = 16;
        rig.ReadFails = false;
        rig.Put([0], 1);
        rig.Step(50);
    }

    // One frame or what is left of it: how many bytes of _line.
    private int Next()
    {
        int kind = Pick(10);
        if (kind == 0) return Rubbish();
        int id = kind == 1 ? Pick(256) : Requests[Pick(Requests.Length)];
        int wanted = MessageBody.Bytes((MessageId)id);
        int length = wanted < 0 || Pick(20) == 0 ? Pick(Frame.MostBodyBytes + 1) : wanted;
        _frame.Begin((MessageId)id, length);
        // Small numbers hit ids, indexes and counts more often than whole bytes do.
        int range = Pick(3) == 0 ? 256 : 6;
        for (int i = 0; i < length; i++) _frame.PutByte(i, Pick(range));
        _writer.Write(_frame);
        Array.Copy(_writer.Line, _line, _writer.Length);
        return kind < 5 ? Damaged(_writer.Length) : _writer.Length;
    }

    private int Rubbish()
    {
        int count = Pick(_line.Length);
        for (int i = 0; i < count; i++) _line[i] = (byte)Pick(256);
        return count;
    }

    private int Damaged(int length)
    {
        switch (Pick(4))
        {
            case 0: return Pick(length);
            case 1:
                _line[Pick(length)] ^= (byte)(1 << Pick(8));
                return length;
            case 2:
                _line[Pick(length)] = (byte)Pick(256);
                return length;
            default:
                Array.Copy(_line, 0, _line, length, length);
                return 2 * length;
        }
    }

    private int Pick(int count)
    {
        _random ^= _random << 13;
        _random ^= _random >> 17;
        _random ^= _random << 5;
        return (int)(_random % (uint)count);
    }
}
