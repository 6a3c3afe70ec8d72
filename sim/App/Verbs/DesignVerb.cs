using System.CommandLine;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.App.Verbs;

/// <summary>Designs sections and thresholds.</summary>
internal static class DesignVerb
{
    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        VerbOptions options = new();
        Command command = new("design", "Design the starter of a case: sections, thresholds, times, peaks, energies.\n\nExample:\n  starterctl design sim/cases/line-shaft.toml\n  starterctl design sim/cases/line-shaft.toml --json")
        {
            options.Case, options.Json, options.Out,
        };
        command.SetAction(parsed => Do(terminal, parsed.GetRequiredValue(options.Case), parsed.GetValue(options.Json), parsed.GetValue(options.Out)));
        return command;
    }

    private static int Do(Terminal terminal, string path, bool asJson, string? place)
    {
        CaseDesign designed = CaseDesign.Of(CaseFile.Read(path));
        string json = JsonText.Of(DesignJson.Of(designed));
        using OutputFiles files = new();
        if (place != null) files.Add("the design", new OutputPlace(place, path).PathOf("design.json"), writer => writer.WriteLine(json));
        files.Commit();

        if (asJson) terminal.Data.WriteLine(json);
        else DesignTable.Show(terminal.Results, designed);
        foreach (string warning in designed.Warnings) terminal.Warn(warning);
        files.Report(terminal);
        return ExitCode.Ok;
    }
}
