using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Trials.Tests.Targets;

/// <summary>A line to a board on which something goes wrong after some requests.</summary>
internal sealed class TroubledStream(Stream line, int soundWrites, Func<byte[], byte[]?> spoil) : Stream
{
    private int _writes;
    private byte[] _last = [];

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>What goes wrong with a write; null unplugs the line.</summary>
    public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        // A repeat has the same bytes; how many a busy machine makes is not counted.
        if (!buffer.Span.SequenceEqual(_last)) _writes++;
        _last = buffer.ToArray();
        byte[]? bytes = _writes > soundWrites ? spoil(buffer.ToArray()) : buffer.ToArray();
        if (bytes == null) throw new IOException("unplugged");
        if (bytes.Length > 0) await line.WriteAsync(bytes, cancellationToken);
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => line.ReadAsync(buffer, cancellationToken);

    public override int Read(byte[] buffer, int offset, int count) => line.Read(buffer, offset, count);

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override void Flush()
    {
    }

    public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
