using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Link.Tests;

/// <summary>A line that swallows every third request and every fifth answer.</summary>
internal sealed class LossyLine(BoardStream line) : Stream
{
    private int _requests;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        _requests++;
        if (_requests % 3 == 0) return ValueTask.CompletedTask;
        if (_requests % 5 == 0) line.AnswersToLose = 1;
        return line.WriteAsync(buffer, cancellationToken);
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => line.ReadAsync(buffer, cancellationToken);

    public override void Flush() => line.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
