using System;
using System.Diagnostics;
using System.IO;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using StarterCtl.Core;
using StarterCtl.Core.Tests;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>
/// The core and the whole firmware on the board's own interpreter, as the metadata processor has made them. Run on request only, for
/// neither of the two can be restored as a package: <c>-- --explicit only --filter-class StarterCtl.Board.Tests.InterpreterTests</c>.
/// </summary>
public sealed class InterpreterTests
{
    private const string Processor = "STARTERCTL_METADATA_PROCESSOR";
    private const string Interpreter = "STARTERCTL_INTERPRETER";

    [Fact]
    public async Task MillionTicksAndTheBoardsPeriods_OnTheInterpreter_DecideAsOnTheDeskAndMakeNoObjects()
    {
        Assert.SkipUnless(Names(Processor) && Names(Interpreter), $"{Processor} and {Interpreter} do not both name a command ({nameof(Processor)}: {Environment.GetEnvironmentVariable(Processor) ?? "none"}, {nameof(Interpreter)}: {Environment.GetEnvironmentVariable(Interpreter) ?? "none"})");

        string printed = await MeasureAsync();
        TestContext.Current.TestOutputHelper!.WriteLine(printed);

        Assert.Equal($"{BootCheck.Expected:X8}", Printed(printed, "boot check: (.*)"));
        Assert.Equal($"{ReplayCourse.Run(1):X8}", Printed(printed, "million ticks: (.*)"));
        Assert.Equal("none", Printed(printed, "tick of the core in phase 2, objects in 100000: (.*)"));
        Assert.Equal("none", Printed(printed, "period of the board in phase 1, objects in 20000: (.*)"));
        Assert.Equal("none", Printed(printed, "period of the board in phase 2, objects in 2400: (.*)"));
        // What is counted is seen at all.
        Assert.Equal("some", Printed(printed, "an object on purpose, objects in 100000: (.*)"));
    }

    private static bool Names(string variable) => !string.IsNullOrWhiteSpace(Environment.GetEnvironmentVariable(variable));

    private static string Printed(string text, string pattern)
    {
        Match found = Regex.Match(text, pattern);
        Assert.True(found.Success, $"no line \"{pattern}\" in:\n{text}");
        return found.Groups[1].Value.Trim();
    }

    private static async Task<string> MeasureAsync()
    {
        ProcessStartInfo start = new("bash", [Path.Combine(Repository.Root, "firmware", "board", "measure.sh")]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        string printed = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"measure.sh ended with {process.ExitCode}:\n{printed}\n{await errors}");
        return printed;
    }
}
