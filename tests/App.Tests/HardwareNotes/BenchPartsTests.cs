using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Page 15: both rigs with sections that can be bought, as design gives them.</summary>
public sealed class BenchPartsTests
{
    [Fact]
    public void BoughtSections_GiveTheseThresholdsAndPeaks() => Note.AssertHas("15-bench-rig.md", Note.Table(
        ["rig", "section", "designed, ohm", "bought, ohm", "cut out at, V", "first current, A", "current at the cutout, A", "heat of a start, J"],
        [
            .. Rows("bench-rig.toml", "0.82 ohm", "0.36 ohm"),
            .. Rows("rig-24v.toml", "0.68 ohm", "0.36 ohm"),
        ]));

    [Fact]
    public void BoughtSections_LeadToTheseLastPeaks() => Note.AssertHas("15-bench-rig.md", Note.Table(
        ["rig", "permitted peak, A", "after the last cutout, A", "largest of all, A"],
        [Last("bench-rig.toml", "0.82 ohm", "0.36 ohm"), Last("rig-24v.toml", "0.68 ohm", "0.36 ohm")]));

    [Theory]
    [InlineData("bench-rig.toml", "0.82 ohm", "0.36 ohm", "48 V")]
    [InlineData("rig-24v.toml", "0.68 ohm", "0.36 ohm", "24 V")]
    public void BoughtSections_KeepThePeakInTheRunThatThePageQuotes(string name, string first, string second, string rig)
    {
        StartStudy study = CaseRunner.Run(ShippedDesigns.ChangedCase(name, Sections(first, second)), null, TestContext.Current.CancellationToken);

        Assert.True(study.Verdict.Passed);
        Assert.Contains($"{Engine.Text.Number(study.Result.PeakAmps)} A for {rig}", Note.Text("15-bench-rig.md").Replace('\n', ' '));
    }

    private static object[][] Rows(string name, string first, string second)
    {
        StarterDesign bought = Bought(name, first, second), designed = ShippedDesigns.Prepared(name).Designed.Design;
        return [.. bought.Stages.Select((stage, i) => new object[]
        {
            name.Replace(".toml", ""), $"R{stage.Stage}", designed.Stages[i].SectionOhms, stage.SectionOhms, stage.CutoutVolts, stage.PeakAmps,
            stage.SwitchingAmps, stage.EnergyJoules!.Value,
        })];
    }

    private static object[] Last(string name, string first, string second)
    {
        StarterDesign bought = Bought(name, first, second);
        return [name.Replace(".toml", ""), bought.PeakAmps, bought.FinalPeakAmps, bought.WorstPeakAmps];
    }

    private static StarterDesign Bought(string name, string first, string second) => ShippedDesigns.Changed(
        name, Sections(first, second));

    private static (string Found, string Replacement) Sections(string first, string second) =>
        ("stages = 2\n", $"sections = [\"{first}\", \"{second}\"]\n");
}
