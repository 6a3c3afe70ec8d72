using System;
using System.IO;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>A folder that goes when the test does.</summary>
internal sealed class Folder : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("starterctl-test").FullName;

    /// <summary>A file in it.</summary>
    public string this[string name] => Path.Combine(_path, name);

    public void Dispose() => Directory.Delete(_path, true);
}
