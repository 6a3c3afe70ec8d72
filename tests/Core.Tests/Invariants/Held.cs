using System;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>How long something has been so without a break, from the first tick that showed it; a long, so that nothing wraps.</summary>
internal sealed class Held
{
    private long _microseconds = -1;

    /// <summary>True if it is so now and has been for a time. Beyond that time nothing is counted.</summary>
    internal bool Lasts(bool isSo, long elapsedMicroseconds, long limitMicroseconds)
    {
        _microseconds = !isSo ? -1 : _microseconds < 0 ? 0 : Math.Min(_microseconds + elapsedMicroseconds, limitMicroseconds);
        return isSo && _microseconds >= limitMicroseconds;
    }

    /// <summary>Begins anew.</summary>
    internal void Forget() => _microseconds = -1;
}
