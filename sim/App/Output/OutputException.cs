using System;

namespace StarterCtl.App.Output;

/// <summary>A file could not be written; nothing of it is left behind.</summary>
public sealed class OutputException : Exception
{
    /// <summary>Names the file and why.</summary>
    /// <param name="path">The file or folder.</param>
    /// <param name="cause">What the system said.</param>
    /// <param name="isWorthARetry">True for trouble that may pass, such as a full disk.</param>
    public OutputException(string path, string cause, bool isWorthARetry)
        : base($"{path}: cannot be written: {cause}; allowed: --out with a folder or file that may be written")
    {
        IsWorthARetry = isWorthARetry;
    }

    /// <summary>True for trouble that may pass, such as a full disk.</summary>
    public bool IsWorthARetry { get; }
}
