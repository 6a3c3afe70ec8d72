using System;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.App.Verbs;

/// <summary>Which starts of a case's tolerances are meant: the same options for a sweep and for the run of one of its rows.</summary>
internal sealed class SweepOptions
{
    private static readonly string[] Methods = [.. Enum.GetNames<SamplingMethod>().Select(name => name.ToLowerInvariant())];

    /// <summary>Number of starts.</summary>
    public Option<long?> Count { get; } = WholeOption("--count", "N", $"Number of starts, 1 to {SweepPlan.MostRows}. Corners and factorial: without it every combination; sensitivity: without it 1024 points.", 1, SweepPlan.MostRows);

    /// <summary>From which everything follows.</summary>
    public Option<long?> Seed { get; } = WholeOption("--seed", "S", "Number from which points, noise and jitter follow, 0 to 1000000000. Without it: 1.", 0, 1_000_000_000);

    /// <summary>How points are chosen.</summary>
    public Option<string> Method { get; } = MethodOption();

    /// <summary>Levels of a full factorial.</summary>
    public Option<long?> Levels { get; } = WholeOption("--levels", "L", "Levels of each quantity with the method factorial, 2 to 100. Without it: 3.", 2, 100);

    /// <summary>One row.</summary>
    public Option<long?> Row { get; } = WholeOption("--row", "N", "Run this row of a sweep instead of the nominal case; needs the sweep's own --count, --seed and --method.", 0, SweepPlan.MostRows - 1);

    /// <summary>The order of what was written.</summary>
    public SweepOrder Read(ParseResult parsed) => new(
        Enum.Parse<SamplingMethod>(parsed.GetValue(Method)!, true), parsed.GetValue(Count), (int)(parsed.GetValue(Seed) ?? 1), (int)(parsed.GetValue(Levels) ?? 3));

    /// <summary>The first option written of those that a row needs; null: none.</summary>
    public string? OfWhich(ParseResult parsed) =>
        ((Option[])[Count, Seed, Method, Levels]).FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false })?.Name;

    /// <summary>The options with which a row of a sweep is run again.</summary>
    public static string Written(SweepHeader sweep)
    {
        string levels = sweep.Method == SamplingMethod.Factorial ? $" --levels {sweep.Levels.ToString(CultureInfo.InvariantCulture)}" : "";
        return $" --count {sweep.Count.ToString(CultureInfo.InvariantCulture)} --seed {sweep.Seed.ToString(CultureInfo.InvariantCulture)} --method {sweep.Method.ToString().ToLowerInvariant()}{levels}";
    }

    private static Option<string> MethodOption()
    {
        string all = string.Join(", ", Methods);
        Option<string> option = new("--method")
        {
            Description = $"How the starts are chosen: {all}.",
            HelpName = "METHOD",
            DefaultValueFactory = _ => Methods[0],
        };
        option.Validators.Add(result =>
        {
            string? written = result.GetValueOrDefault<string?>();
            if (!Methods.Contains(written)) result.AddError($"--method: found \"{written}\"; allowed: {all}");
        });
        return option;
    }

    /// <summary>An option that takes a whole number between limits.</summary>
    internal static Option<long?> WholeOption(string name, string helpName, string description, long least, long most)
    {
        Option<long?> option = new(name) { Description = description, HelpName = helpName };
        option.CustomParser = result =>
        {
            string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
            if (long.TryParse(written, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long number) && number >= least && number <= most) return number;
            result.AddError($"{name}: found \"{written}\"; allowed: a whole number from {least.ToString(CultureInfo.InvariantCulture)} to {most.ToString(CultureInfo.InvariantCulture)}");
            return null;
        };
        return option;
    }
}
