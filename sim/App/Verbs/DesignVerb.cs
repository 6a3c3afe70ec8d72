using System.CommandLine;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Verbs;

/// <summary>Designs sections and thresholds.</summary>
internal static class DesignVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal) => CaseVerb.Build(
        terminal,
        "design",
        "Design the starter of a case: sections, thresholds, times, peaks, energies.\n\nExample:\n  starterctl design sim/cases/line-shaft.toml\n  starterctl design sim/cases/line-shaft.toml --json",
        Do);

    private static int Do(VerbCall call)
    {
        CaseDesign designed = CaseDesign.Of(CaseFile.Read(call.CasePath));
        CaseRatings? ratings = CaseRatings.Of(designed, call.Cancellation);
        string json = JsonText.Of(DesignJson.Of(designed) with { Ratings = ratings == null ? null : RatingsJson.Of(ratings) });
        using OutputFiles files = new(call.CasePath);
        if (call.Place != null) files.Add("the design", new OutputPlace(call.Place, call.CasePath).PathOf("design.json"), writer => writer.WriteLine(json));
        files.Commit();

        if (call.AsJson) call.Terminal.Data.WriteLine(json);
        else Show(call.Terminal, designed, ratings);
        foreach (string warning in designed.Warnings) call.Terminal.Warn(warning);
        foreach (string excess in ratings?.Excesses ?? []) call.Terminal.Warn(excess);
        files.Report(call.Terminal);
        return ratings is { Excesses.Count: > 0 } ? ExitCode.Failed : ExitCode.Ok;
    }

    private static void Show(Terminal terminal, CaseDesign designed, CaseRatings? ratings)
    {
        DesignTable.Show(terminal.Results, designed);
        if (ratings != null) RatingsTable.Show(terminal.Results, ratings);
    }
}
