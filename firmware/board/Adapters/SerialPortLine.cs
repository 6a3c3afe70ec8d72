using System;
using System.IO.Ports;
using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>
/// The serial link at a port of the processor. Whether a write returns before its bytes are sent is up to the board's firmware, so
/// each period sends only a few; what cannot be read or sent is lost, and the link's own checks see to that.
/// </summary>
public sealed class SerialPortLine : ISerialLine
{
    private const int TimeoutMilliseconds = 2;

    private readonly SerialPort _port;
    private readonly int _mostBytes;

    /// <summary>Opens the port with 8 data bits, no parity and one stop bit.</summary>
    /// <param name="portName">Name of the port.</param>
    /// <param name="baudRate">Bits per second.</param>
    /// <param name="mostBytes">Most bytes that are sent in a control period, 1 or more.</param>
    /// <exception cref="ArgumentException">The port is taken, or there is none of this name.</exception>
    /// <exception cref="InvalidOperationException">The port is open.</exception>
    public SerialPortLine(string portName, int baudRate, int mostBytes)
    {
        _mostBytes = mostBytes;
        _port = new SerialPort(portName, baudRate, Parity.None, 8, StopBits.One);
        _port.ReadTimeout = TimeoutMilliseconds;
        _port.WriteTimeout = TimeoutMilliseconds;
        _port.Open();
    }

    /// <inheritdoc/>
    public int Read(byte[] target, int most)
    {
        try
        {
            int count = _port.BytesToRead;
            if (count > most) count = most;
            return count > 0 ? _port.Read(target, 0, count) : 0;
        }
        catch (Exception)
        {
            return 0;
        }
    }

    /// <inheritdoc/>
    public int Room() => _mostBytes;

    /// <inheritdoc/>
    public void Write(byte[] source, int first, int count)
    {
        try
        {
            _port.Write(source, first, count);
        }
        catch (Exception)
        {
            // The desk asks again.
        }
    }
}
