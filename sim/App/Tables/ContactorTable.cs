using System.Collections.Generic;
using System.Linq;
using Spectre.Console;
using StarterCtl.Engine.Ratings;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>What contactors make and break, as people read it.</summary>
internal static class ContactorTable
{
    /// <summary>Prints every contactor.</summary>
    public static void Show(IAnsiConsole console, IReadOnlyList<ContactorDemand> contactors)
    {
        UtilisationCategory category = contactors[0].Category;
        Tables.Heading(console, $"Contactors, {category.Name} of IEC 60947-4-1: {Text.Number(category.Multiple)} times rated current, L/R {Text.Number(category.TimeConstantSeconds * 1000)} ms");
        Table table = Tables.New();
        table.AddColumn(Tables.Word("contact"));
        table.AddColumn(new TableColumn("what it does").Padding(1, 0));
        foreach (string heading in (string[])["A", "against\nV", "L/R\nms"]) table.AddColumn(Tables.Number(heading));
        foreach (ContactorDemand contactor in contactors)
        {
            foreach ((ContactSwitching switching, int i) in contactor.Switchings.Select((switching, i) => (switching, i)))
                table.AddRow(i == 0 ? contactor.Name : "", switching.When, Text.Number(switching.Amps), Text.Number(switching.Volts), switching.TimeConstantSeconds == 0 ? "-" : Text.Number(switching.TimeConstantSeconds * 1000));
        }

        console.Write(table);
        console.Write(Ratings(contactors));
        console.MarkupLineInterpolated($"No published rule gives the electrical life of a DC contactor from these figures: the maker's curve decides, at the current that is broken.");
    }

    private static Table Ratings(IReadOnlyList<ContactorDemand> contactors)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("contact"));
        foreach (string heading in (string[])["carries\nA", "peak across\nit V", "takes at least\nA", "and\nV", "at hand\nA"]) table.AddColumn(Tables.Number(heading));
        table.AddColumn(new TableColumn("what decides").Padding(2, 0));
        foreach (ContactorDemand one in contactors)
            table.AddRow(one.Name, Text.Number(one.CarriedAmps), Text.Number(one.PeakVolts), Text.Number(one.RatedAmps), Text.Number(one.RatedVolts), one.GivenAmps is double given ? Text.Number(given) + (one.IsExceeded ? " !" : "") : "-", one.Decides);
        return table;
    }
}
