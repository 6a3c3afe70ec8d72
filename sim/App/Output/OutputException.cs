using System;
using System.IO;

namespace StarterCtl.App.Output;

/// <summary>A file could not be written; nothing of it is left behind unless the message says so.</summary>
public sealed class OutputException : Exception
{
    private const int DiskFullOnLinux = 28;
    private const int DiskFullOnWindows = 112;

    /// <summary>Names the file and why.</summary>
    /// <param name="path">The file or folder.</param>
    /// <param name="cause">What stands in the way.</param>
    /// <param name="isWorthARetry">True for trouble that may pass, such as a full disk.</param>
    public OutputException(string path, string cause, bool isWorthARetry)
        : base($"{path}: cannot be written: {cause}; allowed: --out with a folder or a file that may be written")
    {
        IsWorthARetry = isWorthARetry;
    }

    /// <summary>True for trouble that may pass, such as a full disk.</summary>
    public bool IsWorthARetry { get; }

    /// <summary>Puts the system's error into words.</summary>
    /// <param name="path">The file that was to be written.</param>
    /// <param name="error">What the system said.</param>
    /// <param name="left">What is left of it, as the end of a sentence.</param>
    public static OutputException Of(string path, Exception error, string left = "")
    {
        bool isFull = (error.HResult & 0xFFFF) is DiskFullOnLinux or DiskFullOnWindows;
        string cause = FileInTheWay(path) is string file ? $"{file} is a file, not a folder"
            : isFull ? "the disk is full"
            : error switch
            {
                UnauthorizedAccessException => "no permission to write there",
                FileNotFoundException or DirectoryNotFoundException => "no file can be made there",
                _ => error.Message,
            };
        return new OutputException(path, cause + left, isFull);
    }

    private static string? FileInTheWay(string path)
    {
        for (string? folder = Path.GetDirectoryName(path); !string.IsNullOrEmpty(folder); folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(folder)) return folder;
        }

        return null;
    }
}
