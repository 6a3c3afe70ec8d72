using System;
using System.Collections.Generic;
using StarterCtl.Firmware;

namespace StarterCtl.Desk.Tests;

/// <summary>A line in memory with a desk at its other end that asks and steps the board until it has its answer.</summary>
internal sealed class AskingLine : ISerialLine
{
    private const int MostSteps = 100;

    private readonly Queue<byte> _toBoard = [];
    private readonly FrameWriter _desk = new();
    private readonly FrameReader _reader = new();
    private bool _isAnswerIn;

    /// <summary>One period of the board.</summary>
    internal Action Step { get; set; } = () => { };

    public int Read(byte[] target, int most)
    {
        int count = 0;
        while (count < most && _toBoard.TryDequeue(out byte next)) target[count++] = next;
        return count;
    }

    public int Room() => 64;

    public void Write(byte[] source, int first, int count)
    {
        for (int i = 0; i < count; i++)
        {
            if (_reader.Take(source[first + i]) && _reader.Frame.Id != MessageId.Telemetry) _isAnswerIn = true;
        }
    }

    /// <summary>Asks, and steps the board until the answer is there.</summary>
    internal Frame Ask(Action<Frame> write)
    {
        Frame request = new();
        write(request);
        _desk.Write(request);
        for (int i = 0; i < _desk.Length; i++) _toBoard.Enqueue(_desk.Line[i]);
        _isAnswerIn = false;
        for (int i = 0; i < MostSteps && !_isAnswerIn; i++) Step();
        return _isAnswerIn ? _reader.Frame : throw new InvalidOperationException($"The board did not answer {request.Id}.");
    }

    /// <summary>Asks for something that is only carried out or refused.</summary>
    internal LinkReason Do(Action<Frame> write)
    {
        AckAnswer ack = new();
        ack.Read(Ask(write));
        return ack.Reason;
    }

    internal LinkReason Do(MessageId id) => Do(frame => frame.Begin(id, 0));
}
