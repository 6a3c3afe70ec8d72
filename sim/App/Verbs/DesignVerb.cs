using System.CommandLine;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Verbs;

/// <summary>Designs sections and thresholds.</summary>
internal static class DesignVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        PartsOptions parts = new();
        Option<string?> writeCase = new("--write-case") { Description = "Write the case with the chosen parts here, for run and report.", HelpName = "FILE" };
        Command command = CaseVerb.Build(
            terminal,
            "design",
            "Design the starter of a case: sections, thresholds, times, peaks, energies; of bought parts, with their bill, if asked.\n\nExample:\n  starterctl design sim/cases/line-shaft.toml\n  starterctl design sim/cases/line-shaft.toml --json\n  starterctl design sim/cases/line-shaft.toml --stock sim/cases/stock.csv --parts-per-section 2 --objective price --write-case bought.toml",
            call => Do(call, parts, writeCase),
            more: [.. parts.All, writeCase]);
        command.Validators.Add(result =>
        {
            parts.Check(result);
            if (result.GetValue(writeCase) != null && !parts.IsAsked(result)) result.AddError("--write-case: found it without parts; allowed: it beside --parts or --stock");
        });
        return command;
    }

    private static int Do(VerbCall call, PartsOptions parts, Option<string?> writeCase)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        PartsChoice? choice = parts.Choose(call, file);
        CaseDesign designed = choice?.Designed ?? CaseDesign.Of(file);
        CaseRatings? ratings = CaseRatings.Of(designed, call.Cancellation);
        string json = JsonText.Of(DesignJson.Of(designed) with { Ratings = ratings == null ? null : RatingsJson.Of(ratings), Parts = choice == null ? null : PartsJson.Of(choice) });
        using OutputFiles files = new(call.CasePath);
        if (call.Place != null) files.Add("the design", new OutputPlace(call.Place, call.CasePath).PathOf("design.json"), writer => writer.WriteLine(json));
        if (choice != null && call.Parsed.GetValue(writeCase) is string path) files.Add("the case with its parts", path, writer => writer.Write(choice.File.SourceText));
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else Show(call.Terminal, designed, choice, ratings);
        foreach (string warning in designed.Warnings) call.Terminal.Warn(warning);
        foreach (string excess in ratings?.Excesses ?? []) call.Terminal.Warn(excess);
        if (choice != null) PartsOptions.Caution(call.Terminal, choice);
        files.Report(call.Terminal);
        return ratings is { Excesses.Count: > 0 } ? ExitCode.Failed : ExitCode.Ok;
    }

    private static void Show(Terminal terminal, CaseDesign designed, PartsChoice? choice, CaseRatings? ratings)
    {
        DesignTable.Show(terminal.Results, designed);
        if (choice != null) PartsTable.Show(terminal.Results, choice);
        if (ratings != null) RatingsTable.Show(terminal.Results, ratings);
    }
}
