using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>A disk that takes a number of bytes over all of its files and then says that it is full.</summary>
internal sealed class FullDisk(long room)
{
    private long _room = room;

    public Stream Create(string path) => new Limited(this, new FileStream(path, FileMode.Create, FileAccess.ReadWrite, FileShare.Read | FileShare.Delete, 0));

    private sealed class Limited(FullDisk disk, FileStream file) : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => true;

        public override bool CanWrite => true;

        public override long Length => file.Length;

        public override long Position { get => file.Position; set => file.Position = value; }

        public override void Flush() => file.Flush();

        public override int Read(byte[] buffer, int offset, int count) => file.Read(buffer, offset, count);

        public override long Seek(long offset, SeekOrigin origin) => file.Seek(offset, origin);

        public override void SetLength(long value) => file.SetLength(value);

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            int taken = (int)Math.Min(buffer.Length, disk._room);
            file.Write(buffer[..taken]);
            disk._room -= taken;
            if (taken < buffer.Length) throw new IOException("No space left on device");
        }

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
        {
            Write(buffer.AsSpan(offset, count));
            return Task.CompletedTask;
        }

        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            Write(buffer.Span);
            return ValueTask.CompletedTask;
        }

        protected override void Dispose(bool disposing)
        {
            if (disposing) file.Dispose();
            base.Dispose(disposing);
        }
    }
}
