using System;
using System.Globalization;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using StarterCtl.Link;

namespace StarterCtl.App.Verbs;

/// <summary>One call of a verb on a board.</summary>
/// <param name="Terminal">Where results and notes go.</param>
/// <param name="Port">Where the board is: tcp:HOST:PORT, or a serial port's name.</param>
/// <param name="Baud">Speed of a serial port, bits per second.</param>
/// <param name="AsJson">True to print the result as JSON.</param>
/// <param name="Cancellation">Ctrl-C.</param>
internal sealed record LinkCall(Terminal Terminal, string Port, int Baud, bool AsJson, CancellationToken Cancellation)
{
    private const string OverTcp = "tcp:";

    /// <summary>True where the board is behind a serial port.</summary>
    public bool IsSerial => !Port.StartsWith(OverTcp, StringComparison.Ordinal);

    /// <summary>What is wrong with the name of a port; null where nothing is.</summary>
    public static string? Problem(string? port)
    {
        if (string.IsNullOrWhiteSpace(port)) return "PORT: found nothing; allowed: tcp:HOST:PORT or the name of a serial port";
        bool isTcp = port.StartsWith(OverTcp, StringComparison.Ordinal);
        return isTcp && Split(port).Port is < 1 or > 65535 ? $"PORT: found \"{port}\"; allowed: tcp:HOST:PORT with a port from 1 to 65535, such as tcp:127.0.0.1:7000" : null;
    }

    /// <summary>Opens the line and greets the board.</summary>
    /// <exception cref="LinkException">There is no such port, or no board that answers.</exception>
    public async Task<BoardClient> ConnectAsync() => await BoardClient.ConnectAsync(await OpenAsync(Port, Baud, Cancellation), null, Cancellation);

    /// <summary>Opens the line to a board.</summary>
    /// <param name="where">tcp:HOST:PORT, or a serial port's name.</param>
    /// <param name="baud">Speed of a serial port, bits per second.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="LinkException">There is no such port.</exception>
    public static async Task<Stream> OpenAsync(string where, int baud, CancellationToken cancellation)
    {
        (string host, int port) = Split(where);
        return where.StartsWith(OverTcp, StringComparison.Ordinal) ? await BoardLine.OpenTcpAsync(host, port, cancellation) : BoardLine.OpenSerial(where, baud);
    }

    private static (string Host, int Port) Split(string port)
    {
        string place = port.StartsWith(OverTcp, StringComparison.Ordinal) ? port[OverTcp.Length..] : "";
        int colon = place.LastIndexOf(':');
        return colon > 0 && int.TryParse(place.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? (place[..colon], number) : (place, 0);
    }
}
