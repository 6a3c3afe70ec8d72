using System.CommandLine;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Ratings;
using StarterCtl.Sweeps.WorstCase;

namespace StarterCtl.App.Verbs;

/// <summary>Designs sections and thresholds.</summary>
internal static class DesignVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        PartsOptions parts = new();
        WorstCaseOptions worst = new();
        Option<string?> writeCase = new("--write-case") { Description = "Write the case with the chosen parts, or sections and thresholds, here: for run, sweep and report.", HelpName = "FILE" };
        Command command = CaseVerb.Build(
            terminal,
            "design",
            "Design the starter of a case: sections, thresholds, times, peaks, energies; of bought parts, with their bill, or for the worst case over the tolerances, if asked.\n\nExample:\n  starterctl design sim/cases/line-shaft.toml\n  starterctl design sim/cases/line-shaft.toml --json\n  starterctl design sim/cases/line-shaft.toml --stock sim/cases/stock.csv --parts-per-section 2 --objective price --write-case bought.toml\n  starterctl design sim/cases/line-shaft.toml --worst-case --write-case worst.toml",
            call => Do(call, parts, worst, writeCase),
            more: [.. parts.All, .. worst.All, writeCase]);
        command.Validators.Add(result =>
        {
            parts.Check(result);
            worst.Check(result);
            if (parts.IsAsked(result) && worst.IsAsked(result)) result.AddError("--worst-case: found it beside --parts or --stock; allowed: one of the two, and then the other on the case that it wrote");
            if (result.GetValue(writeCase) != null && !parts.IsAsked(result) && !worst.IsAsked(result)) result.AddError("--write-case: found it with nothing to choose; allowed: it beside --parts, --stock or --worst-case");
        });
        return command;
    }

    private static int Do(VerbCall call, PartsOptions parts, WorstCaseOptions worst, Option<string?> writeCase)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        PartsChoice? choice = parts.Choose(call, file);
        WorstCaseChoice? worstCase = worst.Choose(call, file);
        CaseDesign designed = choice?.Designed ?? worstCase?.Designed ?? CaseDesign.Of(file);
        CaseRatings? ratings = CaseRatings.Of(designed, call.Cancellation);
        string json = JsonText.Of(DesignJson.Of(designed) with { Ratings = ratings == null ? null : RatingsJson.Of(ratings), Parts = choice == null ? null : PartsJson.Of(choice), WorstCase = worstCase == null ? null : WorstCaseJson.Of(worstCase) });
        using OutputFiles files = new(call.CasePath);
        if (call.Place != null) files.Add("the design", new OutputPlace(call.Place, call.CasePath).PathOf("design.json"), writer => writer.WriteLine(json));
        if (call.Parsed.GetValue(writeCase) is string path) files.Add(choice == null ? "the case with its starter" : "the case with its parts", path, writer => writer.Write(designed.File.SourceText));
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else Show(call.Terminal, designed, choice, worstCase, ratings);
        foreach (string warning in designed.Warnings) call.Terminal.Warn(warning);
        foreach (string excess in ratings?.Excesses ?? []) call.Terminal.Warn(excess);
        if (choice != null) PartsOptions.Caution(call.Terminal, choice);
        if (worstCase != null) WorstCaseOptions.Caution(call.Terminal, worstCase);
        files.Report(call.Terminal);
        return ratings is { Excesses.Count: > 0 } || worstCase is { IsVerified: false } ? ExitCode.Failed : ExitCode.Ok;
    }

    private static void Show(Terminal terminal, CaseDesign designed, PartsChoice? choice, WorstCaseChoice? worstCase, CaseRatings? ratings)
    {
        DesignTable.Show(terminal.Results, designed);
        if (worstCase != null) WorstCaseTable.Show(terminal.Results, worstCase);
        if (choice != null) PartsTable.Show(terminal.Results, choice);
        if (ratings != null) RatingsTable.Show(terminal.Results, ratings);
    }
}
