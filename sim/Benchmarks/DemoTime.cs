using System;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace StarterCtl.Benchmarks;

/// <summary>The demo as a whole process, report included.</summary>
internal static class DemoTime
{
    private const int Rounds = 7;

    /// <summary>Median seconds from start to exit.</summary>
    public static double Seconds()
    {
        string folder = Directory.CreateTempSubdirectory("starterctl").FullName;
        string program = Path.Combine(AppContext.BaseDirectory, "starterctl.dll");
        double[] seconds = [.. Enumerable.Range(0, Rounds).Select(_ => Once(program, folder))];
        Directory.Delete(folder, true);
        return seconds.Order().ElementAt(Rounds / 2);
    }

    private static double Once(string program, string folder)
    {
        long begin = Stopwatch.GetTimestamp();
        using Process process = Process.Start(new ProcessStartInfo("dotnet", [program, "--out", folder])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"the demo ended with {process.ExitCode}");
        return Stopwatch.GetElapsedTime(begin).TotalSeconds;
    }
}
