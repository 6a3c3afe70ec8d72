using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using StarterCtl.Engine.Records;

namespace StarterCtl.App.Verbs;

/// <summary>How a run is recorded: the same options for every verb that runs something.</summary>
internal sealed class RecordOptions
{
    private const string DefaultFormat = "csv";

    /// <summary>The file formats.</summary>
    public Option<string> Format { get; } = FormatOption();

    /// <summary>A sample of every control period.</summary>
    public Option<bool> EveryPeriod { get; } = new("--every-period")
    {
        Description = "Record every control period, as a replay needs it, whatever the case's record period.",
    };

    /// <summary>The formats that were asked for.</summary>
    public IReadOnlyList<RecordFormat> FormatsOf(ParseResult parsed) =>
        [.. Names(parsed.GetValue(Format)).Select(name => RecordFormats.ByName[name])];

    private static Option<string> FormatOption()
    {
        string all = string.Join(", ", RecordFormats.ByName.Keys);
        Option<string> option = new("--format")
        {
            Description = $"Formats of the record, with commas between: {all}.",
            HelpName = "FORMATS",
            DefaultValueFactory = _ => DefaultFormat,
        };
        option.Validators.Add(result =>
        {
            string[] names = Names(result.GetValueOrDefault<string?>());
            foreach (string name in names.Where(name => !RecordFormats.ByName.ContainsKey(name))) result.AddError($"--format: found \"{name}\"; allowed: {all}, with commas between");
            if (names.Distinct().Count() < names.Length) result.AddError($"--format: found \"{string.Join(',', names)}\", one of them twice; allowed: each once");
        });
        return option;
    }

    private static string[] Names(string? written) => (written ?? "").Split(',', StringSplitOptions.TrimEntries);
}
