using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text;

namespace StarterCtl.Mutation;

/// <summary>A copy of the built tests, whose core can be another one.</summary>
internal sealed class TestProgram : IDisposable
{
    /// <summary>The library of the core in the copy.</summary>
    internal string CorePath { get; }

    private const string Name = "StarterCtl.Core.Tests";
    private const int PollMilliseconds = 100;
    // A process that waits for ever takes no processor time.
    private const double LongestWaitFactor = 20;

    private readonly string _folder;

    /// <summary>Copies the tests to a folder of its own; it must lie in the checkout, where some tests look for sources.</summary>
    internal TestProgram(string built, string folder)
    {
        _folder = folder;
        foreach (string path in Directory.EnumerateFiles(built, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(folder, Path.GetRelativePath(built, path));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(path, copy, true);
        }

        CorePath = Path.Combine(folder, "StarterCtl.Core.dll");
    }

    /// <summary>Names of all classes of tests but those of the house, which read sources.</summary>
    internal List<string> Classes()
    {
        using Process process = Start([], ["-list", "classes", "-noLogo", "-noColor"]);
        string[] lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        return [.. lines.Where(line => !line.Contains(".House.", StringComparison.Ordinal))];
    }

    /// <summary>Runs one class without a mutant, to measure its time and, slower, to write down where it comes by.</summary>
    internal TestClass Observe(string name)
    {
        string reached = Path.Combine(_folder, name + ".reached");
        Run([name], double.MaxValue, (MutantSwitch.ReachedVariable, reached));
        (Fate fate, double seconds, string said) = Run([name], double.MaxValue, (MutantSwitch.ActiveVariable, ""));
        if (fate != Fate.Survived)
        {
            // Random inputs: one more chance, and a word about it.
            Console.Error.WriteLine($"{name} fails without a mutant:\n{said}");
            (fate, seconds, _) = Run([name], double.MaxValue, (MutantSwitch.ActiveVariable, ""));
        }

        // A class that never touches the core leaves no file.
        return new TestClass(name, fate == Fate.Survived, seconds, File.Exists(reached) ? File.ReadAllBytes(reached) : []);
    }

    /// <summary>Runs classes with a mutant, up to the first test that fails.</summary>
    internal Fate Run(IEnumerable<string> classes, int mutant, double mostSeconds) =>
        Run(classes, mostSeconds, (MutantSwitch.ActiveVariable, $"{mutant}")).Fate;

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(_folder, true);

    private (Fate Fate, double Seconds, string Said) Run(IEnumerable<string> classes, double mostSeconds, (string, string) variable)
    {
        string[] arguments = ["-parallel", "none", "-stopOnFail", "-noLogo", "-noColor", .. classes.SelectMany(name => new[] { "-class", name })];
        using Process process = Start([variable], arguments);
        StringBuilder said = new();
        process.OutputDataReceived += (_, line) => said.AppendLine(line.Data);
        process.BeginOutputReadLine();
        long begin = Stopwatch.GetTimestamp();
        double seconds = 0;
        while (!process.WaitForExit(PollMilliseconds))
        {
            seconds = Math.Max(seconds, ProcessorSeconds(process));
            if (seconds > mostSeconds || Stopwatch.GetElapsedTime(begin).TotalSeconds > LongestWaitFactor * mostSeconds)
            {
                process.Kill(true);
                process.WaitForExit();
                return (Fate.TimedOut, seconds, "");
            }
        }

        process.WaitForExit();
        return (process.ExitCode == 0 ? Fate.Survived : Fate.Killed, seconds, said.ToString());
    }

    private static double ProcessorSeconds(Process process)
    {
        try
        {
            return process.TotalProcessorTime.TotalSeconds;
        }
        catch (Exception ended) when (ended is InvalidOperationException or Win32Exception)
        {
            // It came to its end between two questions.
            return 0;
        }
    }

    private Process Start((string Name, string Value)[] variables, string[] arguments)
    {
        string program = Path.Combine(_folder, Name + (OperatingSystem.IsWindows() ? ".exe" : ""));
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true };
        // Half a process's life is start-up: nothing that pays off later. A state space without end ends here.
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x80000000";
        foreach ((string name, string value) in variables) start.Environment[name] = value;
        return Process.Start(start)!;
    }
}
