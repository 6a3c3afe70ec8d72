using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Threading;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The built program in a process of its own; what is still running when it is disposed of is killed.</summary>
internal sealed class RunningProgram : IDisposable
{
    // Only a defect takes so long.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    private readonly Process _process;
    private readonly Task<string> _output;
    private readonly Task<string> _errors;

    private RunningProgram(Process process)
    {
        _process = process;
        // Read all the time: a program whose pipe is full stands still.
        _output = process.StandardOutput.ReadToEndAsync(Cancellation);
        _errors = process.StandardError.ReadToEndAsync(Cancellation);
    }

    /// <summary>What it said on standard error; once it has ended.</summary>
    public string Errors { get; private set; } = "";

    /// <summary>What it said on standard output; once it has ended.</summary>
    public string Output { get; private set; } = "";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    /// <summary>Starts it.</summary>
    public static RunningProgram Start(params IReadOnlyList<string> arguments)
    {
        string[] program = ["dotnet", BoardProcess.Program];
        // A shell that starts these tests in the background lets them ignore Ctrl-C, and whatever they start inherits that.
        string[] call = OperatingSystem.IsLinux() ? ["env", "--default-signal=INT", .. program, .. arguments] : [.. program, .. arguments];
        return new(Process.Start(new ProcessStartInfo(call[0], call[1..]) { RedirectStandardError = true, RedirectStandardOutput = true })!);
    }

    /// <summary>Waits until something can be seen of its work.</summary>
    public async Task Until(Func<bool> isSeen)
    {
        Stopwatch watch = Stopwatch.StartNew();
        while (!isSeen())
        {
            Assert.False(_process.HasExited, "it ended before");
            Assert.True(watch.Elapsed < Longest, "not seen");
            await Task.Delay(10, Cancellation);
        }
    }

    /// <summary>Presses Ctrl-C.</summary>
    public async Task Interrupt()
    {
        using Process signal = Process.Start("kill", ["-INT", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        await signal.WaitForExitAsync(Cancellation);
    }

    /// <summary>Ends it without a warning.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    /// <summary>Waits for its end.</summary>
    public async Task<int> ExitCode()
    {
        Errors = await _errors.WaitAsync(Longest, Cancellation);
        Output = await _output;
        await _process.WaitForExitAsync(Cancellation);
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited) Kill();
        _process.Dispose();
    }
}
