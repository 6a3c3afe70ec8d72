using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.App.Tests;

/// <summary>The verb board as a process of its own, until it is killed.</summary>
internal sealed class BoardProcess : IDisposable
{
    private readonly Process _process;

    private BoardProcess(Process process)
    {
        _process = process;
    }

    /// <summary>How its line is reached, as the board said.</summary>
    public string Port { get; private set; } = "";

    /// <summary>What it said on standard error before.</summary>
    public string Notes { get; private set; } = "";

    /// <summary>The built program.</summary>
    public static string Program => Path.Combine(AppContext.BaseDirectory, "starterctl.dll");

    /// <summary>Starts it, and waits until it says where it listens.</summary>
    /// <param name="more">Arguments behind the verb.</param>
    public static async Task<BoardProcess> StartAsync(params IReadOnlyList<string> more)
    {
        BoardProcess board = new(Process.Start(new ProcessStartInfo("dotnet", [Program, "board", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!);
        CancellationToken cancellation = Xunit.TestContext.Current.CancellationToken;
        board.Port = await board._process.StandardOutput.ReadLineAsync(cancellation) ?? "";
        if (board.Port.Length == 0) throw new InvalidOperationException(await board._process.StandardError.ReadToEndAsync(cancellation));
        while (!board.Notes.Contains("machine: ", StringComparison.Ordinal)) board.Notes += $"{await board._process.StandardError.ReadLineAsync(cancellation)}\n";
        return board;
    }

    /// <summary>Ends it without a warning, as a power cut ends a board.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        Kill();
        _process.Dispose();
    }
}
