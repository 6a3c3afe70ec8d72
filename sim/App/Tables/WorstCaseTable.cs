using System;
using System.Globalization;
using System.Linq;
using Spectre.Console;
using StarterCtl.Sweeps.WorstCase;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>A starter for the worst case as people read it.</summary>
internal static class WorstCaseTable
{
    /// <summary>Prints the bound, how it was found, and the textbook's beside it.</summary>
    public static void Show(IAnsiConsole console, WorstCaseChoice choice)
    {
        Tables.Heading(console, "Worst case over the tolerances");
        console.MarkupLineInterpolated($"The peak never passes {Text.Number(choice.Chosen.PeakAmps)} A, and the case allows {Text.Number(choice.LimitAmps)} A; the torque never passes {Text.Number(choice.PeakTorqueNewtonMetres)} N m.");
        console.MarkupLineInterpolated($"{Place(choice.Chosen)} at {string.Join(", ", choice.Chosen.Where.Select(Words))}.");
        console.MarkupLineInterpolated($"Found on {Corners(choice)} and in climbs from the worst of them to places between the limits.");
        console.MarkupLineInterpolated($"Verified by {Number(choice.Chosen.Seen.Starts)} simulated starts, seed {choice.Request.Seed}, and by climbs over such from the worst plants, with {Text.Number(choice.ClimbedPeakAmps)} A and {Text.Number(choice.ClimbedSeconds)} s at the most.");
        if (choice.Textbook.PeakAmps > choice.LimitAmps) console.MarkupLineInterpolated($"The textbook's starter would reach {Text.Number(choice.Textbook.PeakAmps)} A, {Text.Number(choice.Textbook.PeakAmps - choice.LimitAmps)} A above what the case allows{(choice.Textbook.TorqueRatio <= 1 ? ", and stick on the plant with the least torque" : "")}.");
        console.Write(Compared(choice));
    }

    private static Table Compared(WorstCaseChoice choice)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word(""));
        table.AddColumn(Tables.Number("chosen"));
        table.AddColumn(Tables.Number("textbook"));
        Row("stages", choice.Designed.Design.StageCount, choice.TextbookStages);
        Row("highest peak of any plant [A]", choice.Chosen.PeakAmps, choice.Textbook.PeakAmps);
        Row("least torque over the load's at a cutout", choice.Chosen.TorqueRatio, choice.Textbook.TorqueRatio);
        Row("highest peak of the simulated starts [A]", choice.Chosen.Seen.HighestAmps, choice.Textbook.Seen.HighestAmps);
        Row($"of them above {Text.Number(choice.Chosen.PeakAmps)} A", choice.Chosen.Seen.Above, choice.Textbook.Seen.Above);
        Row("of them not at the full supply in time", choice.Chosen.Seen.Unfinished, choice.Textbook.Seen.Unfinished);
        Row("their longest start [s]", choice.Chosen.Seen.LongestSeconds, choice.Textbook.Seen.LongestSeconds);
        Row("nominal start [s]", choice.Chosen.Nominal.Seconds, choice.Textbook.Nominal.Seconds);
        Row("its heat in the sections [J]", choice.Chosen.Nominal.SectionJoules, choice.Textbook.Nominal.SectionJoules);
        Row("its heat in the armature [J]", choice.Chosen.Nominal.ArmatureJoules, choice.Textbook.Nominal.ArmatureJoules);
        return table;

        void Row(string what, double chosen, double textbook) => table.AddRow(Markup.Escape(what), Value(chosen), Value(textbook));
    }

    private static string Place(WorstPoint point) => point.Cutout == 0 ? "It flows when the line closes," : $"It flows behind cutout {Number(point.Cutout)},";

    private static string Words(WorstValue value)
    {
        string unit = value.Unit.Length == 0 ? "" : " " + value.Unit;
        string place = value.IsLow ? " (least)" : value.IsHigh ? " (most)" : "";
        return $"{value.Path} {Text.Number(value.Value)}{unit}{place}";
    }

    private static string Corners(WorstCaseChoice choice)
    {
        string of = $"the {Number(choice.Decisive.Count)} quantities that move a cutout, the current behind it or the load, with every section at either limit";
        if (choice.Corners == choice.AllCorners) return $"all {Number(choice.Corners)} corners of {of},";
        return $"{Number(choice.Corners)} of the {(choice.AllCorners is long all ? Number(all) : "countless")} corners of {of},";
    }

    private static string Value(double value) => double.IsNaN(value) ? "-" : double.IsInfinity(value) ? "no load" : value == Math.Floor(value) ? Number((long)value) : Text.Number(value);

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
