using System;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Firmware;

namespace StarterCtl.App.Tests;

/// <summary>
/// Stands on the line between a desk and a board: what a desk asks may be changed, or the line cut there. It holds the board's one line:
/// whoever speaks with the board behind it disposes of it first.
/// </summary>
internal sealed class FrameTamper : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private readonly IPEndPoint _board;
    private readonly Func<Frame, bool> _change;
    private readonly Task _serving;

    /// <param name="board">Where the board is.</param>
    /// <param name="change">Called with each request, which it may change; false cuts the line in front of it.</param>
    public FrameTamper(IPEndPoint board, Func<Frame, bool> change)
    {
        _board = board;
        _change = change;
        _listener.Start();
        _serving = ServeAsync();
    }

    public string Port => $"tcp:{_listener.LocalEndpoint}";

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _serving;
        _listener.Dispose();
        _end.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            using TcpClient desk = await _listener.AcceptTcpClientAsync(_end.Token);
            using TcpClient board = new();
            await board.ConnectAsync(_board, _end.Token);
            Task answers = board.GetStream().CopyToAsync(desk.GetStream(), _end.Token);
            await ForwardAsync(desk.GetStream(), board.GetStream());
            board.Close();
            desk.Close();
            await answers;
        }
        catch (Exception over) when (over is OperationCanceledException or IOException or ObjectDisposedException)
        {
            // The desk has what it asked for, or the line is cut.
        }
    }

    private async Task ForwardAsync(NetworkStream desk, NetworkStream board)
    {
        FrameReader reader = new();
        byte[] next = new byte[1];
        while (await desk.ReadAsync(next, _end.Token) > 0)
        {
            if (!reader.Take(next[0])) continue;
            if (!_change(reader.Frame)) return;
            await board.WriteAsync(Line(reader.Frame), _end.Token);
        }
    }

    // With a check of its own, and the number that the desk gave it.
    private static byte[] Line(Frame frame)
    {
        FrameWriter writer = new();
        int sequence = frame.Sequence;
        do writer.Write(frame);
        while (frame.Sequence != sequence);
        return writer.Line[..writer.Length];
    }
}
