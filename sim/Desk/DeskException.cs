using System;

namespace StarterCtl.Desk;

/// <summary>What a board on the desk needs is not there: a port, a file, a terminal.</summary>
public sealed class DeskException : Exception
{
    /// <summary>What was asked for cannot be: says what was found and what is allowed.</summary>
    public DeskException(string message)
        : base(message)
    {
    }

    /// <summary>The system refused, which may pass.</summary>
    public DeskException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>True for trouble that may pass, such as a port that is taken.</summary>
    public bool IsWorthARetry => InnerException != null;
}
