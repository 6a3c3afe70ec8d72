using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using Spectre.Console;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>Shows what a replay came to.</summary>
internal static class ReplayTable
{
    /// <summary>Shows a replay with the record's own settings or with others.</summary>
    /// <param name="console">Results.</param>
    /// <param name="path">The record.</param>
    /// <param name="header">Its header.</param>
    /// <param name="result">What the replay came to.</param>
    /// <param name="verdict">The verdict in words.</param>
    public static void Show(IAnsiConsole console, string path, RecordHeader header, ReplayResult result, string verdict)
    {
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Path.GetFileName(path)}: {result.Ticks} ticks of {header.ControlPeriodMicroseconds / 1000.0:R} ms, case {header.Case}, core {header.CoreVersion}"));
        if (result.First is ReplayDifference first) ShowFirst(console, result, first);
        else console.WriteLine("Every output and lamp, phase, stage, reason, fault and estimate of every tick is the recorded one, bit for bit.");
        if (result.IsWithOtherSettings) ShowCourses(console, result);
        console.WriteLine($"Verdict: {verdict}");
    }

    private static void ShowFirst(IAnsiConsole console, ReplayResult result, ReplayDifference first)
    {
        Signal signal = first.Signal;
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{result.DifferentTicks} ticks differ, row {first.Row} at {first.Seconds:F6} s first: {signal.Name} was {signal.Show(first.Recorded)}, is {signal.Show(first.Replayed)}."));
        console.WriteLine();
        Table table = Tables.New();
        foreach (string heading in (string[])["row", "s", "supply V", "A", "rad/s"]) table.AddColumn(Tables.Number(heading));
        table.AddColumn(Tables.Word("contacts"));
        table.AddColumn(Tables.Word($"{signal.Name} then"));
        table.AddColumn(Tables.Word("now"));
        foreach (ReplayRow row in result.Around) table.AddRow([.. Cells(row, signal).Select(Markup.Escape)]);
        console.Write(table);
    }

    private static IEnumerable<string> Cells(ReplayRow row, Signal signal)
    {
        Sample sample = row.Recorded;
        return
        [
            row.Row.ToString(CultureInfo.InvariantCulture),
            sample.TimeSeconds.ToString("F6", CultureInfo.InvariantCulture),
            Text.Number(sample.SupplyVolts),
            Text.Number(sample.ArmatureAmps),
            sample.SpeedValid ? Text.Number(sample.SpeedRadPerSec) : "unknown",
            Contacts(sample),
            signal.Show(signal.Number(row.Recorded)),
            signal.Show(signal.Number(row.Replayed)),
        ];
    }

    private static string Contacts(in Sample sample)
    {
        List<string> closed = [];
        if (sample.LineClosed) closed.Add("line");
        for (int stages = sample.StagesClosed, stage = 1; stages != 0; stages >>= 1, stage++)
        {
            if ((stages & 1) != 0) closed.Add(stage.ToString(CultureInfo.InvariantCulture));
        }

        if (sample.BrakeClosed) closed.Add("brake");
        if (sample.FieldClosed) closed.Add("field");
        return string.Join(' ', closed);
    }

    private static void ShowCourses(IAnsiConsole console, ReplayResult result)
    {
        (ReplayCourse then, ReplayCourse now) = (result.Recorded, result.Replayed);
        Table table = Tables.New();
        foreach (string heading in (string[])["", "recorded", "with these settings"]) table.AddColumn(Tables.Word(heading));
        for (int i = 0; i < Math.Max(then.Cutouts.Count, now.Cutouts.Count); i++) AddRow(table, $"cutout {i + 1}", Cutout(then, i), Cutout(now, i));
        AddRow(table, "fault", Fault(then), Fault(now));
        for (int i = 0; i < Math.Max(then.Phases.Count, now.Phases.Count); i++) AddRow(table, $"phase {i + 1}", Entry(then, i), Entry(now, i));
        console.Write(table);
        console.WriteLine("The machine does not answer: behind the first difference only the auxiliary contacts follow; current and speed are those of a machine that was told something else.");
    }

    private static void AddRow(Table table, params string[] cells) => table.AddRow([.. cells.Select(Markup.Escape)]);

    private static string Cutout(ReplayCourse course, int index) =>
        index < course.Cutouts.Count ? string.Create(CultureInfo.InvariantCulture, $"stage {course.Cutouts[index].Stage} at {course.Cutouts[index].Seconds:F3} s") : "-";

    private static string Fault(ReplayCourse course) =>
        course.Fault == FaultId.None ? "none" : string.Create(CultureInfo.InvariantCulture, $"{FaultTable.RowOf(course.Fault).Name} at {course.FaultSeconds:F3} s");

    private static string Entry(ReplayCourse course, int index) =>
        index < course.Phases.Count ? string.Create(CultureInfo.InvariantCulture, $"{PhaseText.Name(course.Phases[index].Phase)} at {course.Phases[index].Seconds:F3} s") : "-";
}
