using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;

namespace StarterCtl.House;

/// <summary>The checkout that these tests were built from.</summary>
internal static partial class Repository
{
    internal static string Root { get; } = FindRoot();

    /// <summary>Debug or Release, as the running tests were built.</summary>
    internal static string Configuration { get; } = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    /// <summary>Paths below the root with forward slashes, without what a build leaves behind.</summary>
    internal static List<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), pattern, SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Root, path).Replace('\\', '/'))
            .Where(path => !path.Split('/').Any(part => part is "bin" or "obj" or "out"))
            .Order(StringComparer.Ordinal)
            .ToList();

    /// <summary>The sources of one project, without those of projects in folders below it.</summary>
    internal static List<string> Sources(string folder)
    {
        List<string> below = [.. Files(folder, "*.csproj").Select(path => path[..(path.LastIndexOf('/') + 1)]).Where(path => path != folder + "/")];
        return [.. Files(folder, "*.cs").Where(path => !below.Any(path.StartsWith))];
    }

    internal static string Text(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>A source file without comments and without the insides of its strings.</summary>
    internal static string Code(string path) => CommentOrString().Replace(Text(path), found => found.Value[0] == '"' ? "\"\"" : "");

    internal static string BoardLibrary(string folder, string name) =>
        Path.Combine(Root, folder, "bin", Configuration, "netnano1.0", name + ".dll");

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder != null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "StarterCtl.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("no StarterCtl.sln above " + AppContext.BaseDirectory);
    }

    [GeneratedRegex(@"//[^\n]*|/\*.*?\*/|""(\\.|[^""\\\n])*""", RegexOptions.Singleline)]
    private static partial Regex CommentOrString();
}
