using System;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>The board refused, did not answer, or answered what cannot be.</summary>
public sealed class LinkException : Exception
{
    /// <summary>A failure without a reason of the board.</summary>
    public LinkException(string message)
        : base(message)
    {
    }

    /// <summary>A failure of the line.</summary>
    public LinkException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>A refusal by the board.</summary>
    public LinkException(string message, LinkReason reason)
        : base(message)
    {
        Reason = reason;
    }

    /// <summary>A step of a calibration that the board refused.</summary>
    public LinkException(string message, CalibrationReason calibrationReason)
        : base(message)
    {
        CalibrationReason = calibrationReason;
    }

    /// <summary>The board's reason; <see cref="LinkReason.Done"/> where the board gave none.</summary>
    public LinkReason Reason { get; }

    /// <summary>The board's reason where a step of a calibration was refused, else <see cref="CalibrationReason.Done"/>.</summary>
    public CalibrationReason CalibrationReason { get; }

    /// <summary>True where a board understood and refused: the same request again is refused again, until something changes at the board.</summary>
    public bool IsRefusal => Reason != LinkReason.Done || CalibrationReason != CalibrationReason.Done;
}
