using System;
using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Trials;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Verbs;

/// <summary>Runs trials and gives verdicts.</summary>
internal static class TrialVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        TrialVerbOptions options = new();
        Command command = new("trial", "Run trials: what happens to a drive, and what must and must not be seen. Writes verdicts for people, build servers (JUnit XML) and programs (JSON lines).\n\nExample:\n  starterctl trial sim/trials\n  starterctl trial sim/trials/field-lost.trial.toml --filter lathe --out out/trials");
        command.Arguments.Add(options.Files);
        foreach (Option option in options.All) command.Options.Add(option);
        command.SetAction((parsed, cancellation) => Task.Run(() => Do(terminal, options.Read(parsed), cancellation)));
        return command;
    }

    private static int Do(Terminal terminal, TrialCall call, CancellationToken cancellation)
    {
        Trial[] trials = Read(call);
        ITrialTarget target = call.Target.Open();
        RunHeader header = RunHeader.Of(target, trials);
        IReadOnlyList<TrialResult> results;
        using (TrialProducts products = TrialProducts.Open(call.Folder, header, call.HasBundles || target.IsHardware))
        {
            results = terminal.Work("trials", progress => TrialRunner.Run(trials, target, call.Running, products, progress, cancellation));
            products.Close(results);
            VerdictCounts counts = VerdictCounts.Of(results);
            if (call.AsJson) terminal.Data.WriteLine(JsonText.Of(TrialRunJson.Of(header, results, counts)));
            else Show(terminal, results, counts);
            products.Report(terminal);
        }

        return CodeOf(results);
    }

    private static void Show(Terminal terminal, IReadOnlyList<TrialResult> results, VerdictCounts counts)
    {
        TrialsTable.Show(terminal.Results, results, counts);
        LinkFiguresTable.Show(terminal.Results, results);
    }

    // A failure is known whatever else happened; trouble is worth a retry only where nothing failed.
    private static int CodeOf(IReadOnlyList<TrialResult> results)
    {
        TrialVerdict[] verdicts = [.. results.Select(result => result.Verdict)];
        if (verdicts.Contains(TrialVerdict.Fail)) return verdicts.Contains(TrialVerdict.Aborted) ? ExitCode.Cancelled : ExitCode.Failed;
        if (verdicts.Contains(TrialVerdict.Error)) return verdicts.Contains(TrialVerdict.Aborted) ? ExitCode.Cancelled : ExitCode.Environment;
        return Array.TrueForAll(verdicts, verdict => verdict == TrialVerdict.Pass) ? ExitCode.Ok : ExitCode.Cancelled;
    }

    private static Trial[] Read(TrialCall call)
    {
        List<Trial> trials = [];
        List<CaseProblem> problems = [];
        foreach (string path in call.Files.SelectMany(FilesOf))
        {
            try
            {
                trials.AddRange(TrialFile.Read(path));
            }
            catch (CaseException error)
            {
                problems.AddRange(error.Problems);
            }
        }

        if (problems.Count > 0) throw new CaseException(problems);
        Trial[] picked = [.. trials.Where(call.Picks)];
        if (picked.GroupBy(trial => trial.Name).FirstOrDefault(same => same.Count() > 1) is IGrouping<string, Trial> twice)
        {
            throw new CaseException([new CaseProblem(twice.Last().FileName, 0, "", $"a second trial of the name {twice.Key}, after {twice.First().FileName}", "trials whose files have names of their own, for that is how verdicts name them")]);
        }

        return picked.Length > 0 ? picked : throw new CaseException([new CaseProblem(string.Join(' ', call.Files), 0, "", call.PickText, $"what picks at least one of {trials.Count} trials{Named(trials)}")]);
    }

    private static string Named(List<Trial> trials) => trials.Count == 0 ? "" : $", such as {trials[0].Name}; tags: {string.Join(", ", trials.SelectMany(trial => trial.Tags).Distinct().Order(StringComparer.Ordinal))}";

    // A folder stands for the trials in it.
    private static IEnumerable<string> FilesOf(string path) =>
        Directory.Exists(path) ? Directory.EnumerateFiles(path, "*" + TrialFile.Extension).Order(StringComparer.Ordinal) : [path];
}
