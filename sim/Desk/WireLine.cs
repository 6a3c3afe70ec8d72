using System;
using System.IO;
using System.IO.Pipelines;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Desk;

/// <summary>A serial line within this program: a board at one end, a stream at the other.</summary>
public sealed class WireLine : IDeskLine, IDisposable
{
    private const int RoomBytes = 256;

    private readonly Pipe _toBoard = new(new PipeOptions(pauseWriterThreshold: 0, useSynchronizationContext: false));
    private readonly Pipe _toDesk = new(new PipeOptions(pauseWriterThreshold: 0, useSynchronizationContext: false));
    private readonly SemaphoreSlim _arrived = new(0);
    private int _waiting;

    /// <summary>Builds the line.</summary>
    public WireLine()
    {
        Desk = new DeskEnd(this);
    }

    /// <summary>The desk's end.</summary>
    public Stream Desk { get; }

    /// <inheritdoc/>
    public int Read(byte[] target, int most)
    {
        if (!_toBoard.Reader.TryRead(out ReadResult found)) return 0;
        int count = (int)Math.Min(most, found.Buffer.Length);
        int at = 0;
        foreach (ReadOnlyMemory<byte> part in found.Buffer.Slice(0, count))
        {
            part.Span.CopyTo(target.AsSpan(at));
            at += part.Length;
        }

        _toBoard.Reader.AdvanceTo(found.Buffer.GetPosition(count));
        Interlocked.Add(ref _waiting, -count);
        return count;
    }

    /// <inheritdoc/>
    public int Room() => RoomBytes;

    /// <inheritdoc/>
    public void Write(byte[] source, int first, int count)
    {
        source.AsSpan(first, count).CopyTo(_toDesk.Writer.GetSpan(count));
        _toDesk.Writer.Advance(count);
        // The pipe never pauses its writer, so this is done at once.
        _ = _toDesk.Writer.FlushAsync().AsTask();
    }

    /// <inheritdoc/>
    public void Wait(TimeSpan most)
    {
        if (Volatile.Read(ref _waiting) == 0) _arrived.Wait(most);
    }

    /// <summary>Ends the line at both ends.</summary>
    public void Dispose()
    {
        _toDesk.Writer.Complete();
        _arrived.Dispose();
    }

    private sealed class DeskEnd(WireLine line) : Stream
    {
        private readonly Stream _reading = line._toDesk.Reader.AsStream();

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => _reading.ReadAsync(buffer, cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => _reading.Read(buffer, offset, count);

        public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            await line._toBoard.Writer.WriteAsync(buffer, cancellationToken);
            Interlocked.Add(ref line._waiting, buffer.Length);
            line._arrived.Release();
        }

        public override void Write(byte[] buffer, int offset, int count) => WriteAsync(buffer.AsMemory(offset, count)).AsTask().GetAwaiter().GetResult();

        public override void Flush()
        {
        }

        public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();
    }
}
