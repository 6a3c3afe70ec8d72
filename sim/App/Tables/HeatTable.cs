using System.Linq;
using Spectre.Console;
using StarterCtl.Engine.Ratings;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>Temperatures of starts, and how many of them are permitted, as people read it.</summary>
internal static class HeatTable
{
    /// <summary>Prints the study.</summary>
    public static void Show(IAnsiConsole console, DutyStudy study)
    {
        Tables.Heading(console, $"Heat, hottest spots in surroundings of {Text.Number(study.AmbientCelsius)} degC");
        Table table = Tables.New();
        table.AddColumn(Tables.Word("part"));
        string[] headings = ["limit\ndegC", "one start\nfrom cold", study.AtStartsPerHour == null ? "starts for\never" : $"{study.StartsPerHour} starts/h\nfor ever", "in the\nduty"];
        foreach (string heading in headings) table.AddColumn(Tables.Number(heading));
        for (int i = 0; i < study.Bodies.Count; i++)
        {
            WarmBody body = study.Bodies[i];
            string Spot(double? mean) => mean is double celsius ? Text.Number(body.HotSpot(celsius, study.AmbientCelsius)) : "-";
            table.AddRow(body.Name, Spot(body.LimitCelsius), Spot(study.FirstStart.HighestCelsius[i]), Spot(study.AtStartsPerHour?.HighestCelsius[i]), Spot(study.Duty?.Steady?.HighestCelsius[i]));
        }

        console.Write(table);
        ShowCounts(console, study);
        if (study.Duty != null) ShowDuty(console, study.Duty);
    }

    private static void ShowCounts(IAnsiConsole console, DutyStudy study)
    {
        if (study.Bodies.All(body => body.LimitCelsius == null))
        {
            console.MarkupLineInterpolated($"No limit is given, so nothing bounds the number of starts.");
            return;
        }

        console.MarkupLineInterpolated($"In a row from cold, without a rest: {(study.ConsecutiveStarts is int count ? $"{count} starts of {Text.Number(study.StartSeconds)} s; in the next one {study.ConsecutiveExcess}" : $"{DutyStudy.MostConsecutive} starts and more")}.");
        string next = study.StartsExcess.Length > 0 ? $"with one more {study.StartsExcess}" : "an hour has no room for one more";
        console.MarkupLineInterpolated($"For ever, evenly spread, with {Text.Number(study.RunSeconds)} s from start to stop: {study.StartsPerHour} starts an hour; {next}.");
    }

    private static void ShowDuty(IAnsiConsole console, GivenDuty duty)
    {
        console.MarkupLineInterpolated($"Duty: {Text.Number(duty.Times.RunSeconds)} s run, {Text.Number(duty.Times.RestSeconds)} s rest, {Text.Number(duty.Times.StartsPerHour)} starts an hour; {duty.Class.Designation} ({duty.Class.Why}).");
        string verdict = duty.Excess.Length == 0 ? "permitted for ever" : $"not permitted: {duty.Excess}{(duty.StartsFromCold is int starts ? $", {starts} starts from cold are" : "")}";
        console.MarkupLineInterpolated($"The duty is {verdict}.");
    }
}
