using System;

namespace StarterCtl.Trials.Targets;

/// <summary>Trouble with a target: unplugged, silent, the wrong firmware. The trial's verdict is error, not failure; what was recorded is kept.</summary>
public sealed class TargetException : Exception
{
    /// <summary>Says what is wrong and what would help.</summary>
    public TargetException(string message)
        : base(message)
    {
    }

    /// <summary>Says what is wrong and what would help.</summary>
    public TargetException(string message, Exception cause)
        : base(message, cause)
    {
    }
}
