using System;
using System.IO;
using System.Text;

namespace StarterCtl.App.Output;

/// <summary>Writes a file beside its place and renames it when it is whole, so that no half-written file is ever seen.</summary>
public static class AtomicFile
{
    private const int DiskFull = 28;

    /// <summary>Writes a text file in UTF-8 with plain line ends.</summary>
    /// <param name="path">Where it shall be; folders are made as needed.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="OutputException">It cannot be written; what stood there before still stands.</exception>
    public static void Write(string path, Action<TextWriter> write)
    {
        string beside = $"{path}.{Environment.ProcessId}.partial";
        try
        {
            string? folder = Path.GetDirectoryName(Path.GetFullPath(path));
            if (folder != null) Directory.CreateDirectory(folder);
            using (StreamWriter writer = new(beside, false, new UTF8Encoding(false)) { NewLine = "\n" }) write(writer);
            File.Move(beside, path, true);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            Remove(beside);
            throw new OutputException(path, Cause(error), (error.HResult & 0xFFFF) == DiskFull);
        }
        catch
        {
            Remove(beside);
            throw;
        }
    }

    // The system's sentence often repeats the path, which the message has already.
    private static string Cause(Exception error) => error switch
    {
        UnauthorizedAccessException => "no permission to write there",
        DirectoryNotFoundException => "the folder does not exist and could not be made",
        _ => error.Message,
    };

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Nothing was written there, or nothing can be done about it; the first error is the one to report.
        }
    }
}
