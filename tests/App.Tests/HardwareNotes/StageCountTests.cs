using System.Linq;
using StarterCtl.Engine;
using StarterCtl.Engine.Design;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Page 10: the shipped line shaft with one to five stages.</summary>
public sealed class StageCountTests
{
    [Fact]
    public void StageCounts_AreWhatDesignGives() => Note.AssertHas("10-power-circuit.md", Note.Table(
        ["stages", "peak, A", "sections R1, R2 ..., ohm", "cut out at, V", "heat of all sections, J", "drawing"],
        Enumerable.Range(1, 5).Select(Row)));

    private static object[] Row(int stages)
    {
        StarterDesign design = ShippedDesigns.Changed("line-shaft.toml",
            ("peak-current = \"155 A\"", $"stages = {stages}"), ("\"last section\"", "\"lower peak current\""));
        string drawing = $"[{stages}](power-{stages}-stage{(stages == 1 ? "" : "s")}.svg)";
        return
        [
            stages, design.PeakAmps, string.Join(", ", design.Stages.Select(stage => Text.Number(stage.SectionOhms))),
            string.Join(", ", design.Stages.Select(stage => Text.Number(stage.CutoutVolts))), design.Stages.Sum(stage => stage.EnergyJoules!.Value), drawing,
        ];
    }
}
