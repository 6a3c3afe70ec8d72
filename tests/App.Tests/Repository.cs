using System;
using System.IO;

namespace StarterCtl.App.Tests;

/// <summary>The folder of the sources, found upwards from the tests' own output.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder != null && !File.Exists(Path.Combine(folder.FullName, "StarterCtl.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("no StarterCtl.sln above the tests");
    }
}
