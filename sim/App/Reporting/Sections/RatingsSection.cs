using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>What the parts around the start must bear, where the case asks for it.</summary>
internal static class RatingsSection
{
    public static void Write(ReportPage page, CaseRatings ratings)
    {
        page.BeginSection(SummarySection.RatingsId, "What the parts must bear");
        if (ratings.Excesses.Count > 0)
        {
            page.Paragraph($"<strong>Limits of the case are passed:</strong>");
            page.List(ratings.Excesses.Select(excess => (System.FormattableString)$"{excess}"));
        }

        if (ratings.Supply != null) WriteSupply(page, ratings.Supply);
        if (ratings.Heat != null) HeatPart.Write(page, ratings.Heat, ratings.ColdStart!);
        if (ratings.Overload != null) OverloadPart.Write(page, ratings.Overload);
        if (ratings.Contactors.Count > 0) ContactorPart.Write(page, ratings.Contactors);
        page.Note($"Ratings of contactors, resistors and cables are their maker's. Local codes and a licensed electrician or engineer decide.");
        page.EndSection();
    }

    private static void WriteSupply(ReportPage page, SupplyLoading supply)
    {
        page.Heading("Bus and cable");
        if (supply.Cable is Cable cable)
            page.Paragraph($"The cable of {cable.Material.Name}, 2 × {Plain(cable.LengthMetres)} m of {Plain(cable.SquareMetres * 1e6)} mm², has {Ohms(cable.Ohms)} at {Celsius(cable.Celsius)} (IEC 60228). It lies in the simulated circuit behind the {Ohms(supply.BusOhms)} of the supply.");
        ReportTable table = new("What the current does to cable and bus", ["Current", "From the bus, A", "Drop in the cable, V", "of supply, %", "Dip of the bus, %", "At the starter, V"]);
        foreach (SupplyPoint point in supply.Points) table.Add(point.Name, point.LineAmps, point.CableVolts, point.CableFraction * 100, point.BusDipFraction * 100, point.TerminalVolts);
        page.Table(table);
        if (supply.PermittedDip is not double dip) return;
        string largest = supply.LargestRatedAmps is double rated ? $", which leaves room for a motor of {Amps(rated)} rated current with such a starter and of {Amps(supply.LargestDirectRatedAmps!.Value)} when it is switched straight on" : "";
        page.Paragraph($"The permitted dip of {Percent(dip * 100)} is reached at {Amps(supply.PermittedLineAmps!.Value)}{largest}.");
    }
}
