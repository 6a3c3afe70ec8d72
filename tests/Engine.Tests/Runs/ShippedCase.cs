using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>The cases beside the engine, as a user runs them.</summary>
internal static class ShippedCase
{
    private static readonly string Folder = Path.Combine(FindRoot(), "sim", "cases");

    /// <summary>Names without their ending.</summary>
    public static IEnumerable<string> Names => Directory.EnumerateFiles(Folder, "*.toml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal);

    /// <summary>Where a file beside the cases is.</summary>
    public static string PathOf(string file) => Path.Combine(Folder, file);

    /// <summary>Text of a case.</summary>
    public static string Text(string name) => File.ReadAllText(Path.Combine(Folder, name + ".toml"));

    /// <summary>Runs a case; the test's own end ends it.</summary>
    public static StartStudy Run(string name) => CaseRunner.Run(CaseFile.Read(Path.Combine(Folder, name + ".toml")), null, TestContext.Current.CancellationToken);

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder != null && !File.Exists(Path.Combine(folder.FullName, "StarterCtl.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("no StarterCtl.sln above the tests");
    }
}
