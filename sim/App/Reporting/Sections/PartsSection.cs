using System.Globalization;
using System.Linq;
using StarterCtl.App.Tables;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>The bought parts: what they are, what each has to take, and what they cost.</summary>
internal static class PartsSection
{
    public static void Write(ReportPage page, PartsChoice choice)
    {
        StarterDesign wanted = choice.Wanted.Design, real = choice.Designed.Design;
        page.BeginSection(SummarySection.PartsId, "Bought parts");
        page.Paragraph($"No shop has sections of any value. These are made of {choice.Request.SourceText}, {Count(choice.Request.PartsPerSection)} to a section, chosen all together for the {PartsTable.Words(choice)}, for a change of one section moves the totals of all stages before it. Every stage is cut out at {Amps(choice.Limits.SwitchingAmps)}; the highest peak is {Amps(real.WorstPeakAmps)}, its limit {Amps(choice.Limits.PeakAmps)}. With sections of any value it would be {Amps(wanted.WorstPeakAmps)} at {Amps(wanted.SwitchingAmps)}. All other figures of this report are those of the real values.");
        WriteSections(page, choice);
        WriteBurdens(page, choice);
        WriteBill(page, choice);
        page.EndSection();
    }

    private static void WriteSections(ReportPage page, PartsChoice choice)
    {
        ReportTable table = new("Sections, first cut out first", ["Section", "Wanted, Ω", "Real, Ω", "Differs, %", "Worst voltage, V", "Made of"]);
        foreach (BoughtSection section in choice.Sections)
        {
            table.Add(section.Stage, section.WantedOhms, section.Network.Ohms, (section.Network.Ohms / section.WantedOhms - 1) * 100, section.WorstVolts, section.Network.ToString());
        }

        page.Table(table);
        page.Note($"Worst voltage: across the section at the highest current while it is in. + stands for in series, || for in parallel.");
    }

    private static void WriteBurdens(ReportPage page, PartsChoice choice)
    {
        ReportTable table = new(
            $"What each part has to take at {Plain(choice.Request.StartsPerHour)} starts an hour",
            ["Part", "Section", "Heat of a start, J", "Rated, J", "Mean power, W", "Rated, W", "Rating used, %", "Worst voltage, V"],
            "figures tight");
        foreach (PartBurden burden in choice.Sections.SelectMany(section => section.Burdens))
        {
            table.Add(
                burden.Part.Name, burden.Stage, OrDash(burden.Joules, Plain), OrDash(burden.Part.Rating?.Joules, Plain), OrDash(burden.MeanWatts, Plain),
                OrDash(burden.Part.Rating?.Watts, Plain), OrDash(burden.Share * 100, Plain), burden.WorstVolts);
        }

        page.Table(table);
        page.Note($"A start is too short for a part to give heat off, so its joules count in full. Rating used: heat of a start over the rated joules, plus mean power over the rated watts, for the mean has warmed the part before the next start comes on top. Starts are evenly spread; several at once need as many times the joules.");
    }

    private static void WriteBill(ReportPage page, PartsChoice choice)
    {
        ReportTable table = new("Bill of materials", ["Part", "Resistance, Ω", "Pieces", "Price of one", "Price"]);
        foreach (BillLine line in choice.Bill()) table.Add(line.Part.Name, line.Part.Ohms, line.Count, Money(line.Part.Price), Money(line.Price));
        table.Add("all", "–", choice.Count, "–", Money(choice.Price));
        page.Table(table);
    }

    private static string Count(int parts) => parts == 1 ? "one part" : $"up to {parts} parts";

    private static string Money(decimal? price) => price?.ToString("0.00##", CultureInfo.InvariantCulture) ?? "–";
}
