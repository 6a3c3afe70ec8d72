using System;
using System.Net;
using System.Net.Sockets;
using System.Threading;

namespace StarterCtl.Desk;

/// <summary>
/// A board's serial line behind a port of this computer, for one desk at a time: a second one is turned away. Without a desk, what the
/// board sends is gone, as on a wire that nobody listens to.
/// </summary>
public sealed class TcpLine : IDeskLine, IDisposable
{
    private const int RoomBytes = 256;

    private readonly TcpListener _listener;
    private Socket? _desk;

    /// <summary>Listens.</summary>
    /// <param name="place">An address of this computer alone; port 0 is any that is free.</param>
    /// <exception cref="DeskException">The address is not this computer's own, or the port is taken.</exception>
    public TcpLine(IPEndPoint place)
    {
        if (!IPAddress.IsLoopback(place.Address)) throw new DeskException($"{place}: allowed: an address of this computer alone, 127.0.0.1");
        _listener = new TcpListener(place) { ExclusiveAddressUse = true };
        try
        {
            _listener.Start();
        }
        catch (SocketException refused)
        {
            throw new DeskException($"{place}: cannot be listened to: {refused.Message}", refused);
        }
    }

    /// <summary>Where it listens.</summary>
    public IPEndPoint Place => (IPEndPoint)_listener.LocalEndpoint;

    /// <inheritdoc/>
    public int Read(byte[] target, int most)
    {
        Meet();
        if (_desk == null || !_desk.Poll(0, SelectMode.SelectRead)) return 0;
        try
        {
            int count = _desk.Receive(target, 0, most, SocketFlags.None);
            if (count == 0) Leave();
            return count;
        }
        catch (SocketException)
        {
            Leave();
            return 0;
        }
    }

    /// <inheritdoc/>
    public int Room() => _desk == null || _desk.Poll(0, SelectMode.SelectWrite) ? RoomBytes : 0;

    /// <inheritdoc/>
    public void Write(byte[] source, int first, int count)
    {
        try
        {
            _desk?.Send(source, first, count, SocketFlags.None);
        }
        catch (SocketException)
        {
            Leave();
        }
    }

    /// <inheritdoc/>
    public void Wait(TimeSpan most)
    {
        if (_desk != null) _desk.Poll(most, SelectMode.SelectRead);
        else Thread.Sleep(most);
    }

    /// <summary>Hangs up and listens no more.</summary>
    public void Dispose()
    {
        Leave();
        _listener.Dispose();
    }

    private void Meet()
    {
        if (!_listener.Pending()) return;
        // The last desk may have hung up since it was looked at: one command follows the other at once. Whether it has is seen only behind
        // what it sent last, such as a request that it repeated; the next one waits that long.
        if (_desk is { Available: > 0 }) return;
        Socket next = _listener.AcceptSocket();
        if (_desk != null && _desk.Poll(0, SelectMode.SelectRead) && _desk.Available == 0) Leave();
        if (_desk != null)
        {
            next.Dispose();
            return;
        }

        next.NoDelay = true;
        _desk = next;
    }

    private void Leave()
    {
        _desk?.Dispose();
        _desk = null;
    }
}
