using System;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Page 14: what contactors, resistors and wires of the three shipped cases must bear.</summary>
public sealed class PartsTableTests
{
    // DC-3 and DC-5 make and break four times the rated current: IEC 60947-4-1, second-hand.
    private const double MakeAndBreakRatio = 4;

    // IEC 60028: 1/58 ohm mm2/m at 20 degC. IEC 60034-1: copper's 235.
    private const double CopperOhmMm2PerMetre = 1.0 / 58;
    private const double WarmRatio = (235.0 + 70) / (235 + 20);

    private static readonly int[] Gauges = [22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1];

    // IEC 60364-5-52, copper in PVC, three loaded conductors, 40 degC, methods B2 and C: seen second-hand, in whole amperes.
    private static readonly (double Area, double InConduit, double OnWall)[] Permitted =
        [(1.5, 13, 15), (2.5, 17, 21), (4, 23, 28), (6, 30, 36), (10, 40, 50), (16, 54, 66), (25, 70, 84), (35, 86, 104)];

    private static readonly double[] Areas = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50];

    // Area in mm2 and length there and back in m, chosen on the page.
    private static readonly (double Area, double Metres)[] Leads = [(25, 20), (2.5, 4), (1.5, 4)];

    public static TheoryData<string> Cases => [.. ShippedDesigns.Names];

    [Fact]
    public void LineContactors_FollowFromTheCases() => Note.AssertHas("14-parts.md", Note.Table(
        ["case", "carries, A", "makes, A", "breaks at the trip, A", "DC-3 rating, A, at least", "supply's short circuit, A"],
        ShippedDesigns.Names.Select(name =>
        {
            PreparedRun run = ShippedDesigns.Prepared(name);
            double rated = run.Designed.Plate.RatedAmps!.Value, trip = run.Settings.InstantTripAmps;
            return new object[] { Short(name), rated, run.Designed.Design.Stages[0].PeakAmps, trip, Math.Max(rated, trip / MakeAndBreakRatio),
                run.Designed.Design.SupplyVolts / run.Setup.Supply.SourceOhms };
        })));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Sections_FollowFromTheDesign(string name)
    {
        PreparedRun run = ShippedDesigns.Prepared(name);
        StarterDesign design = run.Designed.Design;
        double seconds = run.Settings.MaximumStageMicroseconds / 1e6, first = design.Stages[0].PeakAmps;

        Note.AssertHas("14-parts.md", Note.Table(
            [$"{Short(name)}: section", "ohm", "across the open contact at the peak, V", "at the instant trip, V", "contact closes onto, A",
                "heat of a start, J", "power at the peak, W", $"shaft jammed for {Engine.Text.Number(seconds)} s, J"],
            design.Stages.Select((stage, i) => new object[]
            {
                $"R{stage.Stage}", stage.SectionOhms, design.PeakAmps * stage.SectionOhms, run.Settings.InstantTripAmps * stage.SectionOhms,
                i + 1 < design.StageCount ? design.Stages[i + 1].PeakAmps : design.FinalPeakAmps, stage.EnergyJoules!.Value,
                first * first * stage.SectionOhms, first * first * stage.SectionOhms * seconds,
            })));
    }

    /// <summary>ASTM B258: d = 0.127 mm x 92^((36 - n) / 39).</summary>
    [Fact]
    public void GaugeWires_FollowFromTheirFormula() => Note.AssertHas("14-parts.md", Note.Table(
        ["AWG", "diameter, mm", "area, mm2", "at 20 degC, mohm/m", "at 70 degC, mohm/m"],
        Gauges.Select(gauge =>
        {
            double diameter = 0.127 * Math.Pow(92, (36 - gauge) / 39.0), area = Math.PI * diameter * diameter / 4;
            return new object[] { gauge, diameter, area, MilliohmPerMetre(area), WarmRatio * MilliohmPerMetre(area) };
        })));

    [Fact]
    public void MetricWires_FollowFromCopper() => Note.AssertHas("14-parts.md", Note.Table(
        ["area, mm2", "at 20 degC, mohm/m", "at 70 degC, mohm/m"],
        Areas.Select(area => new object[] { area, MilliohmPerMetre(area), WarmRatio * MilliohmPerMetre(area) })));

    [Fact]
    public void PermittedCurrents_AreThoseOfTheStandard() => Note.AssertHas("14-parts.md", Note.Table(
        ["area, mm2", "in conduit (B2), A", "on a wall (C), A"], Permitted.Select(row => new object[] { row.Area, row.InConduit, row.OnWall })));

    [Fact]
    public void WiresByCurrent_FollowFromThePlates() => Note.AssertHas("14-parts.md", Note.Table(
        ["case", "rated, A", "area in conduit, mm2", "area on a wall, mm2"],
        ShippedDesigns.Names.Select(name =>
        {
            double rated = ShippedDesigns.Prepared(name).Designed.Plate.RatedAmps!.Value;
            return new object[] { Short(name), rated, Permitted.First(row => row.InConduit >= rated).Area, Permitted.First(row => row.OnWall >= rated).Area };
        })));

    [Fact]
    public void Leads_CarryTheRatedCurrentOnAWall() => Assert.All(
        ShippedDesigns.Names.Zip(Leads), lead => Assert.InRange(
            ShippedDesigns.Prepared(lead.First).Designed.Plate.RatedAmps!.Value, 0, Permitted.Single(row => row.Area == lead.Second.Area).OnWall));

    [Fact]
    public void Leads_FollowFromTheWires() => Note.AssertHas("14-parts.md", Note.Table(
        ["case", "area, mm2", "there and back, m", "at 70 degC, mohm", "drop at rated current, V", "part of the supply, %", "drop at the peak, V"],
        ShippedDesigns.Names.Select((name, i) =>
        {
            PreparedRun run = ShippedDesigns.Prepared(name);
            double milliohm = WarmRatio * MilliohmPerMetre(Leads[i].Area) * Leads[i].Metres, rated = run.Designed.Plate.RatedAmps!.Value * milliohm / 1000;
            return new object[] { Short(name), Leads[i].Area, Leads[i].Metres, milliohm, rated, 100 * rated / run.Designed.Design.SupplyVolts,
                run.Settings.PeakAmps * milliohm / 1000 };
        })));

    private static string Short(string name) => name.Replace(".toml", "", StringComparison.Ordinal);

    private static double MilliohmPerMetre(double area) => 1000 * CopperOhmMm2PerMetre / area;
}
