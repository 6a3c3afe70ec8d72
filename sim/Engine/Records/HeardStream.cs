using System;
using System.IO;

namespace StarterCtl.Engine.Records;

/// <summary>A stream that is read once from its beginning, and tells how far it got and how it ended.</summary>
/// <param name="stream">The stream; closed with this.</param>
/// <param name="totalBytes">Its length.</param>
internal sealed class HeardStream(Stream stream, long totalBytes) : Stream
{
    private long _readBytes;

    /// <summary>Which part has been read, 0 to 1.</summary>
    public double Part => totalBytes <= 0 ? 1 : Math.Min(1, (double)_readBytes / totalBytes);

    /// <summary>The byte that was read last; 0 before the first.</summary>
    public byte LastByte { get; private set; }

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer)
    {
        int count = stream.Read(buffer);
        if (count == 0) return 0;
        _readBytes += count;
        LastByte = buffer[count - 1];
        return count;
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing) stream.Dispose();
        base.Dispose(disposing);
    }
}
