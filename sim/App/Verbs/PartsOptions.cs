using System;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Linq;
using Spectre.Console;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Parts;

namespace StarterCtl.App.Verbs;

/// <summary>What the sections may be made of: the same options for every verb that designs with bought parts.</summary>
internal sealed class PartsOptions
{
    private const string Refuse = "refuse", Skip = "skip";

    private readonly Option<string?> _series = Choice("--parts", "SERIES", "Make the sections of preferred values (IEC 60063)", Enum.GetNames<PreferredSeries>(), null);
    private readonly Option<string?> _stock = new("--stock") { Description = "Make the sections of resistors from this stock list (CSV: part,ohm,watts,joules,price,quantity).", HelpName = "FILE" };
    private readonly Option<int> _perSection = PerSectionOption();
    private readonly Option<string?> _objective = Choice("--objective", "WHAT", "What there is to be least of", [.. Enum.GetNames<PartsObjective>().Select(name => name.ToLowerInvariant())], "peak");
    private readonly Option<string?> _badRows = Choice("--bad-rows", "WHAT", "What to do with rows of the stock list that are wrong", [Refuse, Skip], Refuse);
    private readonly Option<double> _starts = LinkVerb.Bounded("--starts-per-hour", "Starts an hour that the parts' watts are held against.", PartsRequest.UsualStartsPerHour, 0.01, 3600);
    private readonly Option<double> _give = LinkVerb.Bounded("--give", "Percent by which a current that the case leaves open may differ from the computed one.", PartsRequest.UsualGive * 100, 0, 50);

    /// <summary>Every option.</summary>
    public Option[] All => [_series, _stock, _perSection, _objective, _badRows, _starts, _give];

    /// <summary>Refuses what does not go together.</summary>
    public void Check(CommandResult command)
    {
        if (command.GetValue(_series) != null && command.GetValue(_stock) != null) command.AddError("--stock: found it beside --parts; allowed: one of the two");
        if (command.GetValue(_objective) == "price" && command.GetValue(_series) != null) command.AddError("--objective: found \"price\" with --parts, whose values have none; allowed: peak or count, or --stock with prices");
        if (IsAsked(command)) return;
        foreach (Option option in All.Where(option => command.GetResult(option) is { Implicit: false })) command.AddError($"{option.Name}: found it without parts; allowed: it beside --parts or --stock");
    }

    /// <summary>True where parts are to be chosen.</summary>
    public bool IsAsked(CommandResult command) => command.GetValue(_series) != null || command.GetValue(_stock) != null;

    /// <summary>The parts of a case; null where none are asked for. Says what was skipped of the stock list.</summary>
    public PartsChoice? Choose(VerbCall call, CaseFile file)
    {
        string? series = call.Parsed.GetValue(_series), stock = call.Parsed.GetValue(_stock);
        if (series == null && stock == null) return null;
        StockList? list = stock == null ? null : StockList.Read(stock, call.Parsed.GetValue(_badRows) == Skip);
        PartsRequest request = new()
        {
            Series = series == null ? null : Enum.Parse<PreferredSeries>(series),
            Stock = list,
            PartsPerSection = call.Parsed.GetValue(_perSection),
            Objective = Enum.Parse<PartsObjective>(call.Parsed.GetValue(_objective)!, true),
            StartsPerHour = call.Parsed.GetValue(_starts),
            Give = call.Parsed.GetValue(_give) / 100,
        };
        foreach (CaseProblem problem in list?.Skipped ?? []) call.Terminal.Warn($"row skipped: {problem}");
        if (list?.UnusedColumns.Count > 0) call.Terminal.Warn($"{list.FileName}: columns that are not used: {string.Join(", ", list.UnusedColumns)}");
        return call.Terminal.Work("parts", _ => PartsDesigner.Choose(file, request, call.Cancellation));
    }

    /// <summary>Says what holds for every choice of parts.</summary>
    public static void Caution(Terminal terminal, PartsChoice choice)
    {
        if (!choice.IsProven) terminal.Warn("The search for parts stopped before it had looked through everything: there may be a better choice. Fewer parts per section make it whole.");
        if (choice.Request.Stock != null && choice.Sections[0].Burdens[0].Joules == null) terminal.Warn("Without motor.inertia and the machine's constant no heat is known: no part was held against its rating.");
        terminal.Notes.MarkupLineInterpolated($"Starting resistors get hot enough to burn and to set fire to what is near. Each is rated for a start now and then, not for continuous current: mount them in the open, away from wiring, and let a licensed electrician or engineer check ratings and local codes.");
    }

    private static Option<string?> Choice(string name, string helpName, string description, string[] allowed, string? usual)
    {
        string all = string.Join(", ", allowed);
        Option<string?> option = new(name)
        {
            Description = $"{description}: {all}.",
            HelpName = helpName,
        };
        if (usual != null) option.DefaultValueFactory = _ => usual;
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && !allowed.Contains(result.Tokens[0].Value)) result.AddError($"{name}: found \"{result.Tokens[0].Value}\"; allowed: {all}");
        });
        return option;
    }

    private static Option<int> PerSectionOption()
    {
        Option<int> option = new("--parts-per-section")
        {
            Description = "Most parts of a section, in series and parallel.",
            HelpName = "N",
            DefaultValueFactory = _ => 1,
        };
        option.Validators.Add(result =>
        {
            string found = result.Tokens.Count > 0 ? result.Tokens[0].Value : "1";
            if (!int.TryParse(found, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 1 or > PartsRequest.MostPartsPerSection)
            {
                result.AddError($"--parts-per-section: found \"{found}\"; allowed: a whole number, 1 to {PartsRequest.MostPartsPerSection}");
            }
        });
        return option;
    }
}
