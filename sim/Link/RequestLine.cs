using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>One request at a time over a line of bytes, each with its answer; everything else that comes is given to a listener.</summary>
internal sealed class RequestLine : IAsyncDisposable
{
    // An answer's id is its request's with this bit.
    private const int FromBoard = 0x80;

    private readonly Stream _stream;
    private readonly LinkTiming _timing;
    private readonly Action<Frame> _listener;
    private readonly Action<LinkException> _onFailure;
    private readonly FrameWriter _writer = new();
    private readonly FrameReader _reader = new();
    private readonly SequenceWatch _watch = new();
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly CancellationTokenSource _closing = new();
    private readonly Lock _lock = new();
    private readonly Task _reading;
    private TaskCompletionSource<Frame>? _waiting;
    private MessageId _asked;
    private int _askedSequence;
    private LinkException? _failure;

    /// <param name="stream">The line; closed with this.</param>
    /// <param name="timing">How long to wait.</param>
    /// <param name="listener">Called for each sample, one after the other, on the reading thread.</param>
    /// <param name="onFailure">Called once when the line has ended.</param>
    internal RequestLine(Stream stream, LinkTiming timing, Action<Frame> listener, Action<LinkException> onFailure)
    {
        _stream = stream;
        _timing = timing;
        _listener = listener;
        _onFailure = onFailure;
        _reading = Task.Run(ReadAsync);
    }

    /// <summary>Frames from the board that were lost or not sound.</summary>
    internal int BadFrames => _watch.LostFrames + _reader.BrokenFrames + _reader.OverlongFrames + _reader.WrongChecks;

    /// <summary>Sends a request until it is answered.</summary>
    /// <param name="request">The message.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">No answer in time, or the line is closed.</exception>
    internal async Task<Frame> AskAsync(Frame request, CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            _writer.Write(request);
            byte[] line = _writer.Line[.._writer.Length];
            Task<Frame> answer = Expect(request);
            for (int attempt = 0; attempt < _timing.Tries; attempt++)
            {
                // The same bytes again: the board knows a repeated request by its number.
                await WriteAsync(line, cancellation);
                if (await Task.WhenAny(answer, Task.Delay(_timing.Answer, cancellation)) == answer) return await answer;
                cancellation.ThrowIfCancellationRequested();
            }

            throw new LinkException($"{request.Id}: no answer after {_timing.Tries} tries of {_timing.Answer.TotalMilliseconds:0} ms; is the board on, the line right, its speed the same at both ends?");
        }
        finally
        {
            lock (_lock) _waiting = null;
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _closing.CancelAsync();
        await _stream.DisposeAsync();
        await _reading;
        _closing.Dispose();
        _turn.Dispose();
    }

    private Task<Frame> Expect(Frame request)
    {
        lock (_lock)
        {
            if (_failure != null) throw _failure;
            // What waits for the answer must not run on the reading thread.
            _waiting = new TaskCompletionSource<Frame>(TaskCreationOptions.RunContinuationsAsynchronously);
            _asked = request.Id;
            _askedSequence = request.Sequence;
            return _waiting.Task;
        }
    }

    private async Task WriteAsync(byte[] line, CancellationToken cancellation)
    {
        try
        {
            await _stream.WriteAsync(line, cancellation);
            await _stream.FlushAsync(cancellation);
        }
        catch (Exception broken) when (broken is IOException or ObjectDisposedException or InvalidOperationException)
        {
            throw new LinkException($"the line to the board cannot be written: {broken.Message}", broken);
        }
    }

    private async Task ReadAsync()
    {
        byte[] received = new byte[256];
        try
        {
            while (true)
            {
                int count = await _stream.ReadAsync(received, _closing.Token);
                if (count == 0) break;
                for (int i = 0; i < count; i++) Take(received[i]);
            }

            Fail(new LinkException("the board closed the line"));
        }
        catch (Exception broken) when (broken is IOException or ObjectDisposedException or OperationCanceledException or InvalidOperationException)
        {
            Fail(new LinkException($"the line to the board is closed: {broken.Message}", broken));
        }
    }

    private void Take(byte next)
    {
        if (!_reader.Take(next)) return;
        Frame frame = _reader.Frame;
        _watch.Take(frame.Sequence);
        if (MessageBody.Bytes(frame.Id) != frame.BodyLength) return;
        if (frame.Id == MessageId.Telemetry)
        {
            _listener(frame);
            return;
        }

        lock (_lock)
        {
            if (IsAnswer(frame)) _waiting?.TrySetResult(Copy(frame));
        }
    }

    // Every answer begins with the number of its request; a late one, of an earlier request or session, is nobody's.
    private bool IsAnswer(Frame frame)
    {
        int asked = frame.Id == MessageId.Ack ? frame.GetByte(AckAnswer.RequestAt) : (int)frame.Id & ~FromBoard;
        return asked == (int)_asked && frame.GetByte(AckAnswer.RequestSequenceAt) == _askedSequence;
    }

    private void Fail(LinkException failure)
    {
        lock (_lock)
        {
            _failure = failure;
            _waiting?.TrySetException(failure);
        }

        _onFailure(failure);
    }

    private static Frame Copy(Frame frame)
    {
        Frame copy = new() { BodyLength = frame.BodyLength };
        frame.Bytes.CopyTo(copy.Bytes, 0);
        return copy;
    }
}
