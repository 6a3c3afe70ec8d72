using System;

namespace StarterCtl.Desk;

/// <summary>What a board on the desk needs is not there: a port, a file, a terminal.</summary>
public sealed class DeskException : Exception
{
    /// <summary>Says what was found and what is allowed.</summary>
    public DeskException(string message)
        : base(message)
    {
    }

    /// <summary>The same, with what the system said.</summary>
    public DeskException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
