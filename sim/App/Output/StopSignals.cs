using System;
using System.Runtime.InteropServices;
using System.Threading;

namespace StarterCtl.App.Output;

/// <summary>
/// Turns Ctrl-C, and the wish of a service manager to end, into a cancellation that the verbs look for: they stop the machine first and leave nothing
/// half-written. A second signal ends the process as the system does.
/// </summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;

    /// <summary>Listens from here on.</summary>
    public StopSignals()
    {
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Take);
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Take);
    }

    /// <summary>Cancelled by the first signal.</summary>
    public CancellationToken Token => _stop.Token;

    /// <summary>Listens no more.</summary>
    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _stop.Dispose();
    }

    private void Take(PosixSignalContext signal)
    {
        if (_stop.IsCancellationRequested) return;
        signal.Cancel = true;
        _stop.Cancel();
    }
}
