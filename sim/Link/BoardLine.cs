using System;
using System.IO;
using System.IO.Ports;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Link;

/// <summary>Opens the lines over which a board can be reached.</summary>
public static class BoardLine
{
    /// <summary>A serial port: eight bits, no parity, one stop bit, no handshake.</summary>
    /// <param name="portName">Name of the port as the operating system has it.</param>
    /// <param name="baud">Bits per second, as the board has them.</param>
    /// <exception cref="LinkException">There is no such port, it is in use, or it does not run at this speed.</exception>
    public static Stream OpenSerial(string portName, int baud)
    {
        SerialPort? port = null;
        try
        {
            port = new SerialPort(portName, baud, Parity.None, 8, StopBits.One);
            port.Open();
            port.DiscardInBuffer();
            return port.BaseStream;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            port?.Dispose();
            throw new LinkException($"serial port {portName} at {baud} baud: {refused.Message}", refused);
        }
    }

    /// <summary>A network connection, such as to a serial server or a board's own network.</summary>
    /// <param name="host">Name or address.</param>
    /// <param name="port">1 to 65535.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">Nobody listens there.</exception>
    public static async Task<Stream> OpenTcpAsync(string host, int port, CancellationToken cancellation = default)
    {
        Socket socket = new(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(host, port, cancellation);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch (Exception refused) when (refused is SocketException or ArgumentException)
        {
            socket.Dispose();
            throw new LinkException($"{host}, port {port}: {refused.Message}", refused);
        }
    }
}
