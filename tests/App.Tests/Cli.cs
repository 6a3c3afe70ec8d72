using System;
using System.IO;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Output;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The program in a folder of its own, with both streams caught as if redirected.</summary>
internal sealed class Cli : IDisposable
{
    private HeardWriter? _saying;

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
    public Task<int> Run(params string[] args) => RunUntil(CancellationToken.None, args);

    /// <summary>Runs the program until Ctrl-C, and keeps what it said.</summary>
    public async Task<int> RunUntil(CancellationToken cancellation, params string[] args)
    {
        using StringWriter output = new() { NewLine = "\n" };
        using HeardWriter errors = new() { NewLine = "\n" };
        _saying = errors;
        int code = await Program.Run(args, new Terminal(output, errors, false, false), cancellation);
        Output = output.ToString();
        Errors = errors.ToString();
        return code;
    }

    /// <summary>Waits until a run that goes on meanwhile has said something on standard error.</summary>
    public async Task Said(string words)
    {
        while (_saying?.ToString().Contains(words, StringComparison.Ordinal) != true) await Task.Delay(10, TestContext.Current.CancellationToken);
    }

    public JsonElement Json() => JsonDocument.Parse(Output).RootElement;

    public void Dispose() => Directory.Delete(Folder, true);

    // Written by one thread, read by another.
    private sealed class HeardWriter : StringWriter
    {
        private readonly Lock _lock = new();

        public override void Write(char value)
        {
            lock (_lock) base.Write(value);
        }

        public override void Write(char[] buffer, int index, int count)
        {
            lock (_lock) base.Write(buffer, index, count);
        }

        public override void Write(string? value)
        {
            lock (_lock) base.Write(value);
        }

        public override string ToString()
        {
            lock (_lock) return base.ToString();
        }
    }
}
