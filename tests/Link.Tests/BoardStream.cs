using System;
using System.IO;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using StarterCtl.Firmware.Tests.Link;

namespace StarterCtl.Link.Tests;

/// <summary>
/// The desk's end of a line to a board in the same process. What is written goes to the board at once, and the board's control
/// periods run until it has answered; nothing depends on a clock.
/// </summary>
internal sealed class BoardStream : Stream
{
    private const int PeriodsPerWrite = 30;

    private readonly Channel<byte> _fromBoard = Channel.CreateUnbounded<byte>();
    private readonly Lock _lock = new();
    private int _answersToLose;

    internal BoardStream(LinkRig rig)
    {
        Rig = rig;
        rig.Wire = next =>
        {
            if (_answersToLose == 0) _fromBoard.Writer.TryWrite(next);
            else if (next == 0) _answersToLose--;
        };
        rig.Step();
    }

    internal LinkRig Rig { get; }

    /// <summary>How many of the next requests the line swallows.</summary>
    internal int RequestsToLose { get; set; }

    /// <summary>How many of the next frames from the board the line swallows.</summary>
    internal int AnswersToLose { set => _answersToLose = value; }

    /// <summary>Requests that were written, lost ones too.</summary>
    internal int Writes { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    internal void Step(int periods)
    {
        lock (_lock) Rig.Step(periods);
    }

    /// <summary>The board, or what connects it, goes away.</summary>
    internal void HangUp() => _fromBoard.Writer.TryComplete();

    /// <summary>Bytes that no board sent.</summary>
    internal void Inject(params byte[] bytes)
    {
        foreach (byte next in bytes) _fromBoard.Writer.TryWrite(next);
    }

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        lock (_lock)
        {
            Writes++;
            if (RequestsToLose > 0)
            {
                RequestsToLose--;
                return ValueTask.CompletedTask;
            }

            Rig.Put(buffer.ToArray(), buffer.Length);
            Rig.Step(PeriodsPerWrite);
        }

        return ValueTask.CompletedTask;
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        if (!await _fromBoard.Reader.WaitToReadAsync(cancellationToken)) return 0;
        int count = 0;
        while (count < buffer.Length && _fromBoard.Reader.TryRead(out byte next)) buffer.Span[count++] = next;
        return count;
    }

    public override void Flush()
    {
        // Everything is there at once.
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
