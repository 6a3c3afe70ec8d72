using System.Collections.Generic;
using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>The reader finds every sound frame behind any rubbish, and counts the others.</summary>
public sealed class FrameReaderTests
{
    private readonly FrameReader _reader = new();
    private readonly FrameWriter _writer = new();

    [Fact]
    public void Take_AnyMessage_ComesBackAsItWas() =>
        Gen.Select(Gen.Int[0, 255], Gen.Byte.Array[0, Frame.MostBodyBytes]).Sample(
            (id, body) =>
            {
                byte[] line = Line((MessageId)id, body);
                List<byte[]> frames = Read(line);
                return frames.Count == 1 && frames[0].SequenceEqual(body) && (int)_reader.Frame.Id == id
                    && line.Length == body.Length + 6 && line.Count(next => next == 0) == 1;
            },
            iter: 2_000,
            threads: 1);

    [Fact]
    public void MostLineBytes_IsTheLongestFrame()
    {
        Assert.Equal(70, Frame.MostLineBytes);
        Assert.Equal(Frame.MostLineBytes, Line(MessageId.Ping, new byte[Frame.MostBodyBytes]).Length);
    }

    [Fact]
    public void Take_Rubbish_ThenAnEndAndAFrame_FindsTheFrame() =>
        Gen.Byte.Array[0, 200].Sample(
            rubbish => Read([.. rubbish, 0, .. Line(MessageId.Ping, [1, 2, 3, 4])]).Last().SequenceEqual(new byte[] { 1, 2, 3, 4 }),
            iter: 2_000,
            threads: 1);

    [Fact]
    public void Take_HalfAFrame_CostsItself_AndTheOneRunIntoIt()
    {
        byte[] whole = Line(MessageId.Ping, [1, 2, 3, 4]);

        Assert.Empty(Read([.. whole[..4], .. whole]));
        Assert.Single(Read(whole));
        Assert.Equal(1, _reader.WrongChecks + _reader.BrokenFrames);
    }

    [Fact]
    public void Take_FrameCutShort_IsBroken()
    {
        byte[] whole = Line(MessageId.Ping, [1, 2, 3, 4]);

        Assert.Empty(Read([.. whole[..^3], 0]));
        Assert.Equal((1, 0, 0), (_reader.BrokenFrames, _reader.WrongChecks, _reader.OverlongFrames));
    }

    [Fact]
    public void Take_FewerThanFourBytes_IsBroken()
    {
        Assert.Empty(Read([4, 1, 2, 3, 0]));
        Assert.Equal(1, _reader.BrokenFrames);
    }

    [Fact]
    public void Take_EndsAlone_AreNothing()
    {
        Assert.Empty(Read(new byte[50]));
        Assert.Equal((0, 0, 0), (_reader.BrokenFrames, _reader.WrongChecks, _reader.OverlongFrames));
    }

    [Fact]
    public void Take_EveryBitTurned_IsNeverTakenForTheFrame()
    {
        byte[] whole = Line(MessageId.PutValue, [4, 0, 0, 0, 32, 64]);
        for (int bit = 0; bit < (whole.Length - 1) * 8; bit++)
        {
            byte[] damaged = [.. whole];
            damaged[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Empty(Read(damaged));
        }

        Assert.InRange(_reader.WrongChecks, 1, whole.Length * 8);
    }

    [Fact]
    public void Take_WrongCheck_IsCounted()
    {
        byte[] whole = Line(MessageId.Ping, [1, 2, 3, 4]);
        whole[4] ^= 0x40;

        Assert.Empty(Read(whole));
        Assert.Equal((0, 1, 0), (_reader.BrokenFrames, _reader.WrongChecks, _reader.OverlongFrames));
    }

    [Theory]
    [InlineData(69)]
    [InlineData(5_000)]
    public void Take_MoreBytesThanAFrameHas_IsOneOverlongFrame(int count)
    {
        // Blocks of one byte each, which decode to one zero each.
        byte[] overlong = [.. Enumerable.Repeat((byte)1, count + 1), 0];

        Assert.Empty(Read(overlong));
        Assert.Equal((0, 0, 1), (_reader.BrokenFrames, _reader.WrongChecks, _reader.OverlongFrames));
        Assert.Single(Read(Line(MessageId.Ping, [1, 2, 3, 4])));
    }

    [Fact]
    public void Sequence_OfTheWriter_CountsTo255AndGoesOnAtZero()
    {
        List<int> numbers = [];
        for (int i = 0; i < 258; i++)
        {
            Read(Line(MessageId.Ping, []));
            numbers.Add(_reader.Frame.Sequence);
        }

        Assert.Equal(Enumerable.Range(0, 256).Concat([0, 1]), numbers);
    }

    [Theory]
    [InlineData(0, new[] { 7, 8, 9 })]
    [InlineData(0, new[] { 254, 255, 0, 1 })]
    [InlineData(0, new[] { 7, 7, 8 })]
    [InlineData(1, new[] { 7, 9 })]
    [InlineData(3, new[] { 254, 2 })]
    [InlineData(6, new[] { 10, 13, 18 })]
    public void SequenceWatch_NumbersLeftOut_AreLostFrames(int lost, int[] numbers)
    {
        SequenceWatch watch = new();
        foreach (int number in numbers) watch.Take(number);

        Assert.Equal(lost, watch.LostFrames);
        watch.Restart();
        watch.Take(100);
        Assert.Equal(0, watch.LostFrames);
    }

    private byte[] Line(MessageId id, byte[] body)
    {
        Frame frame = new();
        frame.Begin(id, body.Length);
        for (int i = 0; i < body.Length; i++) frame.PutByte(i, body[i]);
        _writer.Write(frame);
        return _writer.Line[.._writer.Length];
    }

    private List<byte[]> Read(byte[] line)
    {
        List<byte[]> bodies = [];
        foreach (byte next in line)
        {
            if (!_reader.Take(next)) continue;
            bodies.Add([.. Enumerable.Range(0, _reader.Frame.BodyLength).Select(offset => (byte)_reader.Frame.GetByte(offset))]);
        }

        return bodies;
    }
}
