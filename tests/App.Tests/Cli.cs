using System;
using System.IO;
using System.Text.Json;
using System.Threading.Tasks;
using StarterCtl.App.Output;

namespace StarterCtl.App.Tests;

/// <summary>The program in a folder of its own, with both streams caught as if redirected.</summary>
internal sealed class Cli : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("starterctl-test").FullName;

    public string Output { get; private set; } = "";

    public string Errors { get; private set; } = "";

    public string OutFolder => Path.Combine(Folder, "written");

    /// <summary>A case file in the folder.</summary>
    public string Write(string name, string text)
    {
        string path = Path.Combine(Folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>The shipped line shaft with one text replaced by another.</summary>
    public string WriteLineShaft(string found, string replacement)
    {
        string text = ShippedCases.Text("line-shaft.toml");
        if (!text.Contains(found, StringComparison.Ordinal)) throw new ArgumentException($"the case has no '{found}'", nameof(found));
        return Write("case.toml", text.Replace(found, replacement, StringComparison.Ordinal));
    }

    /// <summary>Runs the program and keeps what it said.</summary>
    public async Task<int> Run(params string[] args)
    {
        using StringWriter output = new() { NewLine = "\n" };
        using StringWriter errors = new() { NewLine = "\n" };
        int code = await Program.Run(args, new Terminal(output, errors, false, false));
        Output = output.ToString();
        Errors = errors.ToString();
        return code;
    }

    public JsonElement Json() => JsonDocument.Parse(Output).RootElement;

    public void Dispose() => Directory.Delete(Folder, true);
}
