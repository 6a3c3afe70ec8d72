using Spectre.Console;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>What the parts around a start must bear, as people read it.</summary>
internal static class RatingsTable
{
    /// <summary>Prints bus and cable, heat, overload protection and contactors, as far as the case asks for them.</summary>
    public static void Show(IAnsiConsole console, CaseRatings ratings)
    {
        if (ratings.Supply != null) ShowSupply(console, ratings.Supply);
        if (ratings.Heat != null) HeatTable.Show(console, ratings.Heat);
        if (ratings.Overload != null) ShowOverload(console, ratings.Overload);
        if (ratings.Contactors.Count > 0) ContactorTable.Show(console, ratings.Contactors);
    }

    private static void ShowSupply(IAnsiConsole console, SupplyLoading supply)
    {
        Tables.Heading(console, "Bus and cable");
        console.MarkupLineInterpolated($"Bus behind {Milliohms(supply.BusOhms)}{(supply.Cable is Cable cable ? $"; cable of 2 x {Text.Number(cable.LengthMetres)} m {cable.Material.Name}, {Text.Number(cable.SquareMetres * 1e6)} mm2 at {Text.Number(cable.Celsius)} degC: {Milliohms(cable.Ohms)}" : "")}.");
        Table table = Tables.New();
        table.AddColumn(Tables.Word("current"));
        foreach (string heading in (string[])["A", "cable drop\nV", "of\nsupply", "dip of\nthe bus", "at the\nstarter V"]) table.AddColumn(Tables.Number(heading));
        foreach (SupplyPoint point in supply.Points)
            table.AddRow(point.Name, Text.Number(point.LineAmps), Text.Number(point.CableVolts), Percent(point.CableFraction), Percent(point.BusDipFraction), Text.Number(point.TerminalVolts));
        console.Write(table);
        if (supply.PermittedDip is not double dip) return;
        console.MarkupLineInterpolated($"A dip of {Percent(dip)} is reached at {Text.Number(supply.PermittedLineAmps!.Value)} A{(supply.LargestRatedAmps is double rated ? $": room for a motor of {Text.Number(rated)} A rated current with such a starter, of {Text.Number(supply.LargestDirectRatedAmps!.Value)} A when it is switched straight on" : "")}.");
    }

    private static void ShowOverload(IAnsiConsole console, OverloadChoice overload)
    {
        Tables.Heading(console, $"Overload protection, set to {Text.Number(overload.SettingAmps)} A");
        Table table = Tables.New();
        table.AddColumn(Tables.Word("class"));
        foreach (string heading in (string[])["time\nconstant s", "image after\na cold start", "after a\nhot start", "highest in\nthe duty"]) table.AddColumn(Tables.Number(heading));
        table.AddColumn(new TableColumn("what speaks against it").Padding(2, 0));
        foreach (OverloadRow row in overload.Rows)
            table.AddRow(row.Class.Name, Text.Number(row.Class.Seconds), Text.Number(row.LevelAfterColdStart), Text.Number(row.LevelAfterHotStart), row.DutyLevel is double level ? Text.Number(level) : "-", row.Objection.Length == 0 ? "nothing" : row.Objection);
        console.Write(table);
        console.MarkupLineInterpolated($"{(overload.Chosen is TripClass chosen ? $"Class {chosen.Name}" : "No class fits")}: {overload.Why}.");
    }

    private static string Milliohms(double ohms) => Text.Number(ohms * 1000) + " mohm";

    private static string Percent(double fraction) => Text.Number(100 * fraction) + " %";
}
