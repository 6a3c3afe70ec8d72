using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Ratings;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>What contactors make and break, and what rating that takes.</summary>
internal static class ContactorPart
{
    public static void Write(ReportPage page, IReadOnlyList<ContactorDemand> contactors)
    {
        UtilisationCategory category = contactors[0].Category;
        page.Heading("Contactors");
        ReportTable switching = new("What each contact makes and breaks", ["Contact", "What it does", "Current, A", "Against, V", "L/R, ms"], "words");
        foreach (ContactorDemand contactor in contactors)
        {
            foreach ((ContactSwitching one, int i) in contactor.Switchings.Select((one, i) => (one, i)))
                switching.Add(i == 0 ? contactor.Name : "", one.When, Plain(one.Amps), Plain(one.Volts), one.TimeConstantSeconds == 0 ? "–" : Plain(one.TimeConstantSeconds * 1000));
        }

        page.Table(switching);
        ReportTable ratings = new($"What rating it takes in {category.Name}", ["Contact", "Carries, A", "Peak across it, V", "At least, A", "and, V", "At hand, A", "What decides"], "words");
        foreach (ContactorDemand one in contactors)
            ratings.Add(one.Name, Plain(one.CarriedAmps), Plain(one.PeakVolts), Plain(one.RatedAmps), Plain(one.RatedVolts), OrDash(one.GivenAmps, Plain), one.Decides);
        page.Table(ratings);
        page.Note($"{category.Name} of IEC 60947-4-1 is for {category.For}: {Plain(category.Multiple)} times the rated current at {Plain(UtilisationCategory.VoltageRatio)} times the rated voltage, L/R {Milliseconds(category.TimeConstantSeconds)}. Against: the voltage that drives the current at that moment, supply less back-EMF for the line, the section's drop for a stage, whose section takes its current over. A magnetic energy beyond that of the category's test circuit takes a larger contactor; that is our own rule, not the standard's. No published rule gives the electrical life from these figures: the maker's curve decides.");
    }
}
