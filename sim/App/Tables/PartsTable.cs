using System.Globalization;
using System.Linq;
using Spectre.Console;
using StarterCtl.Engine.Parts;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>Bought parts as people read them.</summary>
internal static class PartsTable
{
    /// <summary>Prints the parts, what each has to take, and the bill.</summary>
    public static void Show(IAnsiConsole console, PartsChoice choice)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]Bought parts[/] of {choice.Request.SourceText}, {Words(choice)}: {Text.Number(choice.Designed.Design.WorstPeakAmps)} A at most; limits {Text.Number(choice.Limits.PeakAmps)} A and {Text.Number(choice.Limits.SwitchingAmps)} A.");
        console.Write(Sections(choice));
        if (choice.RoundedAlone() is (var alone, var peakAmps)) console.MarkupLineInterpolated($"Each wanted section rounded for itself, {string.Join(", ", alone.Select(Text.Number))} ohm, would reach {Text.Number(peakAmps)} A.");
        console.MarkupLineInterpolated($"What each part has to take, at {Text.Number(choice.Request.StartsPerHour)} starts an hour:");
        console.Write(Burdens(choice));
        console.Write(Bill(choice));
    }

    /// <summary>The objective in words.</summary>
    public static string Words(PartsChoice choice)
    {
        string least = choice.Request.Objective switch
        {
            PartsObjective.Price => "least price",
            PartsObjective.Count => "fewest parts",
            _ => "least peak",
        };
        return choice.IsProven ? least : least + " found";
    }

    private static Table Sections(PartsChoice choice)
    {
        Table table = Tables.New();
        foreach (string heading in (string[])["section", "wanted\nohm", "real\nohm", "differs", "worst\nV"]) table.AddColumn(Tables.Number(heading));
        table.AddColumn(Tables.Word("made of"));
        foreach (BoughtSection section in choice.Sections)
        {
            table.AddRow(
                Text.Number(section.Stage),
                Text.Number(section.WantedOhms),
                Text.Number(section.Network.Ohms),
                Text.Number((section.Network.Ohms / section.WantedOhms - 1) * 100) + " %",
                Text.Number(section.WorstVolts),
                Markup.Escape(section.Network.ToString()));
        }

        return table;
    }

    private static Table Burdens(PartsChoice choice)
    {
        Table table = Tables.New();
        foreach (string heading in (string[])["section", "a start\nJ", "of\nJ", "mean\nW", "of\nW", "rating\nused", "worst\nV"]) table.AddColumn(Tables.Number(heading));
        table.AddColumn(Tables.Word("part"));
        foreach (PartBurden burden in choice.Sections.SelectMany(section => section.Burdens))
        {
            table.AddRow(
                Text.Number(burden.Stage),
                Optional(burden.Joules),
                Optional(burden.Part.Rating?.Joules),
                Optional(burden.MeanWatts),
                Optional(burden.Part.Rating?.Watts),
                burden.Share is double share ? Text.Number(share * 100) + " %" : "-",
                Text.Number(burden.WorstVolts),
                Markup.Escape(burden.Part.Name));
        }

        return table;
    }

    private static Table Bill(PartsChoice choice)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("to buy"));
        foreach (string heading in (string[])["pieces", "each", "together"]) table.AddColumn(Tables.Number(heading));
        foreach (BillLine line in choice.Bill()) table.AddRow(Markup.Escape(line.Part.Name), Text.Number(line.Count), Money(line.Part.Price), Money(line.Price));
        table.AddRow("all", Text.Number(choice.Count), "", Money(choice.Price));
        return table;
    }

    private static string Optional(double? number) => number is double known ? Text.Number(known) : "-";

    private static string Money(decimal? price) => price?.ToString("0.00##", CultureInfo.InvariantCulture) ?? "-";
}
