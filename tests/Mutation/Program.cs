using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace StarterCtl.Mutation;

/// <summary>Changes the core in many small ways and tells which changes no test of it sees. Run by hand.</summary>
public static class Program
{
    private const int ProgressMutants = 25;

    private static readonly Option<string> FilePart = new("--file") { Description = "Only files of the core whose path holds this text.", DefaultValueFactory = _ => "" };
    private static readonly Option<int> Every = new("--every") { Description = "Only every so many-th mutant.", DefaultValueFactory = _ => 1 };
    private static readonly Option<int[]> Only = new("--only") { Description = "Only the mutants of these numbers, as a report gives them.", AllowMultipleArgumentsPerToken = true };
    private static readonly Option<bool> Quick = new("--quick") { Description = "Without the slow classes of tests: many more survive." };
    private static readonly Option<double> QuickSeconds = new("--quick-seconds") { Description = "Processor seconds above start-up up to which a class is quick.", DefaultValueFactory = _ => 0.2 };
    private static readonly Option<string[]> Without = new("--without") { Description = "Without classes of tests whose name holds one of these texts.", AllowMultipleArgumentsPerToken = true };
    private static readonly Option<int> Jobs = new("--jobs") { Description = "How many at the same time.", DefaultValueFactory = _ => Environment.ProcessorCount };
    private static readonly Option<string?> Out = new("--out") { Description = "Folder of the report, out/mutation below the root unless told." };

    /// <summary>Runs the program; 0 when the report is written, whatever its score; 1 for wrong options or tests that fail without a mutant.</summary>
    public static int Main(string[] args)
    {
        RootCommand command = new("Changes the core in many small ways and tells which changes no test of it sees.") { FilePart, Every, Only, Quick, QuickSeconds, Without, Jobs, Out };
        Every.Validators.Add(found => RejectBelowOne(found, Every));
        Jobs.Validators.Add(found => RejectBelowOne(found, Jobs));
        command.SetAction(Run);
        return command.Parse(args).Invoke();
    }

    private static void RejectBelowOne(System.CommandLine.Parsing.OptionResult found, Option<int> option)
    {
        if (found.Errors.Any()) return;
        if (found.GetValue(option) < 1) found.AddError($"{option.Name} must be 1 or more");
    }

    private static int Run(ParseResult options)
    {
        long begin = Stopwatch.GetTimestamp();
        string root = FindRoot();
        // bin/Release/net10.0
        string configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;
        string folder = options.GetValue(Out) ?? Path.Combine(root, "out", "mutation");
        Directory.CreateDirectory(folder);

        using TestProgram tests = new(
            Path.Combine(root, "tests", "Core.Tests", "bin", configuration, "net10.0"),
            Path.Combine(root, "out", $"mutated-tests-{Environment.ProcessId}"));
        MutatedCore core = new(root, configuration);
        core.Write(tests.CorePath);
        Tell($"{core.Mutants.Count} mutants, {core.LeftOut.Count} more do not compile");

        string[] without = options.GetValue(Without) ?? [];
        List<string> names = tests.Classes().FindAll(name => !without.Any(text => name.Contains(text, StringComparison.Ordinal)));
        if (names.Count == 0)
        {
            Tell("no class of tests is left to run");
            return 1;
        }

        List<TestClass> classes = [.. names.AsParallel().WithDegreeOfParallelism(options.GetValue(Jobs)).Select(tests.Observe)];
        if (classes.FindAll(found => !found.Passes) is { Count: > 0 } red)
        {
            Tell($"no mutant can be judged while these fail without one (--without leaves them out): {string.Join(", ", red.Select(found => found.Name))}");
            return 1;
        }

        Campaign campaign = new(tests, classes, options.GetValue(Quick), options.GetValue(QuickSeconds));
        Tell($"order: {campaign.Order}");

        List<Mutant> chosen = core.Mutants.FindAll(mutant => mutant.File.Contains(options.GetValue(FilePart)!, StringComparison.Ordinal));
        if (options.GetValue(Only) is { Length: > 0 } numbers) chosen.RemoveAll(mutant => !numbers.Contains(mutant.Number));
        int every = options.GetValue(Every);
        chosen = [.. chosen.Where((_, index) => index % every == 0)];
        string report = Path.Combine(folder, "report.md");
        void Write() => Report.Write(report, chosen, core.LeftOut, [
            $"mutants: {(chosen.Count == core.Mutants.Count ? "all of them" : $"{chosen.Count} of {core.Mutants.Count}")}",
            $"time: {Stopwatch.GetElapsedTime(begin).TotalMinutes:F1} min, {options.GetValue(Jobs)} at the same time",
            $"order: {campaign.Order}",
        ]);
        campaign.Run(chosen, options.GetValue(Jobs), done =>
        {
            if (done % ProgressMutants != 0) return;
            Tell($"{done} of {chosen.Count} after {Stopwatch.GetElapsedTime(begin).TotalSeconds:F0} s");
            // What is known so far, should the run be ended by hand.
            lock (chosen) Write();
        });

        Write();
        Tell(Report.Score(chosen));
        Tell(report);
        return 0;
    }

    private static void Tell(string line) => Console.Error.WriteLine(line);

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder != null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "StarterCtl.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("no StarterCtl.sln above " + AppContext.BaseDirectory);
    }
}
