using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>How warm windings and sections became, where the case says what they do with heat.</summary>
internal static class TemperaturePart
{
    public static void Write(ReportPage page, StartStudy study)
    {
        if (study.Setup.Heat is not ThermalSetup heat) return;
        ReportTable table = new("Temperatures", ["Part", "At the beginning, °C", "Highest, °C", "At the end, °C"]);
        foreach (BodyTemperature body in study.Result.Temperatures) table.Add(body.Body, body.StartCelsius, body.HighestCelsius, body.FinalCelsius);
        page.Table(table);
        page.Paragraph($"Each part is one body: <var>C</var> d<var>T</var>/d<var>t</var> = <var>P</var> − (<var>T</var> − <var>T</var><sub>a</sub>)/<var>R</var><sub>th</sub>, with <var>T</var><sub>a</sub> = {Celsius(heat.AmbientCelsius)} at the beginning. Its resistance follows its temperature: copper by IEC 60034-1, a section by its own coefficient of {PerKelvin(heat.SectionPerKelvin)}. The brushes' loss warms the commutator and none of these; magnets keep their flux.");
    }
}
