using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;

namespace StarterCtl.Ngspice;

/// <summary>The circuit simulator ngspice of this machine, where it has one.</summary>
internal static partial class NgspiceProgram
{
    private const int LongestMilliseconds = 120_000;

    /// <summary>Why something that needs it is left out.</summary>
    public const string WhyNot = "ngspice is not on this machine (Debian: apt-get install ngspice)";

    /// <summary>Its path; null where there is none.</summary>
    public static string? Path { get; } = Find();

    /// <summary>Solves a netlist.</summary>
    /// <param name="netlist">The netlist's text.</param>
    /// <returns>The figures that it printed.</returns>
    /// <exception cref="InvalidOperationException">It failed, or took too long.</exception>
    public static Dictionary<string, double> Solve(string netlist)
    {
        string path = System.IO.Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, netlist);
            string printed = Run(path);
            return Figure().Matches(printed).ToDictionary(
                match => match.Groups[1].Value, match => double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture));
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string Run(string path)
    {
        ProcessStartInfo start = new(Path!, ["-b", path]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "C";
        using Process process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        System.Threading.Tasks.Task<string> printed = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(LongestMilliseconds))
        {
            process.Kill();
            throw new InvalidOperationException($"ngspice has not finished within {LongestMilliseconds / 1000} s");
        }

        string text = printed.GetAwaiter().GetResult();
        return process.ExitCode == 0 ? text : throw new InvalidOperationException($"ngspice ended with {process.ExitCode}:\n{text}");
    }

    private static string? Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator)
            .SelectMany(folder => new[] { System.IO.Path.Combine(folder, "ngspice"), System.IO.Path.Combine(folder, "ngspice.exe") })
            .FirstOrDefault(File.Exists);

    [GeneratedRegex(@"^(\w+) = (\S+)\s*$", RegexOptions.Multiline)]
    private static partial Regex Figure();
}
