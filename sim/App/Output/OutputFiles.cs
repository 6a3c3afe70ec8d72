using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;

namespace StarterCtl.App.Output;

/// <summary>
/// The files of one verb. Each is written beside its place; <see cref="Commit"/> renames them all once they are whole, so that
/// nothing half-written is ever seen and a failure to write leaves what stood there before.
/// </summary>
/// <param name="inputPath">The case or record that is read, which no output may replace; null where there is none.</param>
public sealed class OutputFiles(string? inputPath) : IDisposable
{
    private readonly List<(string What, string Path, string Beside)> _written = [];
    private readonly List<string> _madeFolders = [];
    private readonly List<string> _folders = [];
    private bool _isCommitted;
    private bool _isKept;

    /// <summary>Writes a text file beside its place, in UTF-8 with plain line ends.</summary>
    /// <param name="what">What it is, for the note: "the record".</param>
    /// <param name="path">Where it shall be; its folder is made as needed.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="OutputException">It cannot be written.</exception>
    public void Add(string what, string path, Action<TextWriter> write)
    {
        string beside = Reserve(what, path);
        try
        {
            using StreamWriter writer = new(beside, false, new UTF8Encoding(false)) { NewLine = "\n" };
            write(writer);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw OutputException.Of(path, error);
        }
    }

    /// <summary>Takes a place for a file that is written elsewhere; <see cref="Commit"/> puts it there.</summary>
    /// <param name="what">What it is, for the note.</param>
    /// <param name="path">Where it shall be; its folder is made as needed.</param>
    /// <returns>The path beside it at which to write, with the same extension.</returns>
    /// <exception cref="OutputException">Nothing can be written there.</exception>
    public string Reserve(string what, string path)
    {
        string beside = Path.ChangeExtension(path, $".{Environment.ProcessId}.partial{Path.GetExtension(path)}");
        try
        {
            if (Directory.Exists(path)) throw new OutputException(path, "a folder of that name is there", false);
            if (inputPath != null && Path.GetFullPath(path) == Path.GetFullPath(inputPath)) throw new OutputException(path, "it is what is read", false);
            MakeFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
            _written.Add((what, path, beside));
            return beside;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw OutputException.Of(path, error);
        }
    }

    /// <summary>Puts every file in its place, in the order in which they were added.</summary>
    /// <exception cref="OutputException">One cannot be put there.</exception>
    public void Commit()
    {
        foreach ((_, string path, string beside) in _written)
        {
            try
            {
                File.Move(beside, path, true);
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                throw OutputException.Of(path, error);
            }
        }

        _isCommitted = true;
    }

    /// <summary>Says what was written where.</summary>
    public void Report(Terminal terminal)
    {
        foreach ((string what, string path, _) in _written) terminal.Wrote(what, path);
    }

    /// <summary>Takes notice of a folder that is only needed on the way.</summary>
    public void RemoveInTheEnd(string folder) => _folders.Add(folder);

    /// <summary>Leaves what was written beside the places: a record that ends early is better than none.</summary>
    public void Keep() => _isKept = true;

    /// <summary>Removes what was not committed, and folders that were made for it.</summary>
    public void Dispose()
    {
        if (_isCommitted || _isKept) return;
        foreach ((_, _, string beside) in _written) TryRemove(() => File.Delete(beside));
        foreach (string folder in _folders.Where(Directory.Exists)) TryRemove(() => Directory.Delete(folder, true));
        for (int i = _madeFolders.Count - 1; i >= 0; i--)
        {
            string folder = _madeFolders[i];
            TryRemove(() => Directory.Delete(folder));
        }
    }

    private void MakeFolder(string folder)
    {
        if (Directory.Exists(folder)) return;
        string? parent = Path.GetDirectoryName(folder);
        if (parent != null) MakeFolder(parent);
        Directory.CreateDirectory(folder);
        _madeFolders.Add(folder);
    }

    // What cannot be removed is no reason to hide the first error; a folder in which something stands stays.
    private static void TryRemove(Action remove)
    {
        try
        {
            remove();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }
}
