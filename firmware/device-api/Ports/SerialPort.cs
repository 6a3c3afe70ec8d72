namespace System.IO.Ports;

/// <summary>A serial port.</summary>
public sealed class SerialPort
{
    /// <summary>Names the port.</summary>
    /// <param name="portName">COM and its number, one digit.</param>
    /// <param name="baudRate">Bits per second.</param>
    /// <param name="parity">Parity.</param>
    /// <param name="dataBits">Bits in a byte, 5 to 8.</param>
    /// <param name="stopBits">Stop bits.</param>
    /// <exception cref="ArgumentException">There is an object for this port already.</exception>
    public SerialPort(string portName, int baudRate = 9600, Parity parity = Parity.None, int dataBits = 8, StopBits stopBits = StopBits.One) =>
        throw new NotSupportedException();

    /// <summary>Bytes that have come in.</summary>
    /// <exception cref="InvalidOperationException">The port is not open.</exception>
    public int BytesToRead => throw new NotSupportedException();

    /// <summary>Longest wait of a read, ms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is negative.</exception>
    public int ReadTimeout
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Longest wait of a write, ms.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is negative.</exception>
    public int WriteTimeout
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Opens the port.</summary>
    /// <exception cref="InvalidOperationException">It is open.</exception>
    /// <exception cref="ArgumentException">A property is not allowed.</exception>
    public void Open() => throw new NotSupportedException();

    /// <summary>Reads bytes.</summary>
    /// <exception cref="InvalidOperationException">The port is not open.</exception>
    /// <exception cref="TimeoutException">None came in time.</exception>
    public int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <summary>Sends bytes.</summary>
    /// <exception cref="InvalidOperationException">The port is not open.</exception>
    /// <exception cref="TimeoutException">They could not be sent in time.</exception>
    public void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
