using System.Linq;
using Spectre.Console;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>A design as people read it.</summary>
internal static class DesignTable
{
    /// <summary>Prints the design.</summary>
    public static void Show(IAnsiConsole console, CaseDesign designed)
    {
        StarterDesign design = designed.Design;
        console.MarkupLineInterpolated($"[bold]{Title(designed.File)}[/]");
        if (designed.Plate.ConstantSource.Length > 0) console.MarkupLineInterpolated($"{designed.Plate.ConstantSource}");
        console.MarkupLineInterpolated($"Switched straight on it would take {Text.Number(design.DirectStartAmps)} A.");
        console.MarkupLineInterpolated($"{design.StageCount} stages (exactly {Text.Number(design.StageCountExact)}), peak current {Text.Number(design.PeakAmps)} A, switching current {Text.Number(design.SwitchingAmps)} A.");
        console.Write(Stages(design));
        if (HeldBack(designed) is string held) console.MarkupLineInterpolated($"{held}");
        console.MarkupLineInterpolated($"After the last cutout: {Text.Number(design.FinalPeakAmps)} A through the armature's own {Text.Number(design.ArmatureOhms)} ohm.");
    }

    private static string? HeldBack(CaseDesign designed)
    {
        DesignedStage[] held = [.. designed.Design.Stages.Where(stage => stage.HeldToVolts != null)];
        if (held.Length == 0) return null;
        return $"On the nominal machine the lockout current of {Text.Number(designed.Input.LockoutAmps)} A holds back stage {string.Join(", ", held.Select(stage => Text.Number(stage.Stage)))}; the thresholds are {string.Join(", ", held.Select(stage => Text.Number(stage.CutoutVolts)))} V.";
    }

    private static string Title(CaseFile file) => file.Has(CaseKeys.Title) ? file.Text(CaseKeys.Title) : file.FileName;

    private static Table Stages(StarterDesign design)
    {
        Table table = Tables.New();
        foreach (string heading in (string[])["stage", "total\nohm", "section\nohm", "cut out\nat V", "of\nsupply", "r/min", "peak\nA", "time\ns", "heat\nJ"])
        {
            table.AddColumn(Tables.Number(heading));
        }

        foreach (DesignedStage stage in design.Stages)
        {
            table.AddRow(
                Text.Number(stage.Stage),
                Text.Number(stage.TotalOhms),
                Text.Number(stage.SectionOhms),
                Text.Number(stage.HeldToVolts ?? stage.CutoutVolts),
                Text.Number((stage.HeldToVolts ?? stage.CutoutVolts) / design.SupplyVolts * 100) + " %",
                Optional(stage.CutoutRpm),
                Text.Number(stage.PeakAmps),
                Optional(stage.ExpectedSeconds),
                Optional(stage.EnergyJoules));
        }

        return table;
    }

    private static string Optional(double? number) => number is double known ? Text.Number(known) : "-";
}
