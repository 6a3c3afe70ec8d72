using System;
using System.Globalization;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using static StarterCtl.App.Reporting.Quantity;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>What exactly ran, so that it can be repeated.</summary>
internal static class RunSection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        page.BeginSection("run", "What ran");
        string version = typeof(Controller).Assembly.GetName().Version?.ToString(3) ?? "";
        page.Paragraph($"Control core {version}, the same code that runs on the board, ticked every {Milliseconds(study.Setup.PeriodMicroseconds * 1e-6)} for {Seconds(study.Setup.DurationSeconds)} of simulated time. The record keeps a sample every {Milliseconds(study.Record.PeriodMicroseconds * 1e-6)}: {study.Record.Samples.Count.ToString(CultureInfo.InvariantCulture)} samples.");
        page.Paragraph($"SHA-256 of the case file: <code>{study.CaseSha256}</code>");
        WriteSettings(page, study.Settings);
        WriteStageSettings(page, study.Settings);
        ReportTable columns = new("Columns of the record", ["Column", "Unit", "Meaning"], "words wrap");
        foreach (Signal signal in SignalTable.All) columns.Add(ReportPage.Text($"<code>{signal.Name}</code>"), signal.Unit, signal.Description);
        page.Table(columns);
        page.EndSection();
    }

    private static void WriteSettings(ReportPage page, Settings settings)
    {
        ReportTable table = new("Controller settings", ["Setting", "Value"]);
        table.Add("Machine constant", Constant(settings.MachineConstant));
        table.Add("Brush drop", Volts(settings.BrushDropVolts));
        table.Add("Lockout current", settings.LockoutAmps >= Settings.Largest ? "none" : Amps(settings.LockoutAmps));
        table.Add("Instantaneous trip", Amps(settings.InstantTripAmps));
        table.Add("Confirm time", Time(settings.ConfirmMicroseconds));
        table.Add("Minimum dwell", Time(settings.MinimumDwellMicroseconds));
        table.Add("Longest time in a stage", Time(settings.MaximumStageMicroseconds));
        table.Add("Contact must follow within", Time(settings.ContactMicroseconds));
        table.Add("Largest supply reading believed", Volts(settings.HighestSupplyVolts));
        table.Add("Largest speed reading believed", Rpm(settings.HighestSpeedRadPerSec * 30 / Math.PI));
        table.Add("Resistive estimate valid below", settings.SteadyAmpsPerSec >= Settings.Largest ? "any slope" : Plain(settings.SteadyAmpsPerSec) + "\u00A0A/s");
        page.Table(table);
    }

    private static void WriteStageSettings(ReportPage page, Settings settings)
    {
        ReportTable table = new("What the controller holds for each stage", ["Stage", "In circuit, Ω", "Volts left, V"]);
        for (int i = 0; i < settings.StageCount; i++) table.Add(i + 1, (double)settings.StageOhms[i], (double)settings.VoltsLeft[i]);
        table.Add("armature alone", (double)settings.StageOhms[settings.StageCount], "–");
        page.Table(table);
    }

    private static string Time(int microseconds) => microseconds >= 1_000_000 ? Seconds(microseconds * 1e-6) : Milliseconds(microseconds * 1e-6);
}
