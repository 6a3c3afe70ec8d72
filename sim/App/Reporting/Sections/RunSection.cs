using System;
using System.Globalization;
using StarterCtl.Core;
using StarterCtl.Engine;
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
        page.Paragraph($"Control core {CoreIdentity.Version}, the same code that runs on the board, ticked every {Milliseconds(study.Setup.PeriodMicroseconds * 1e-6)} for {Seconds(study.Setup.DurationSeconds)} of simulated time. The record keeps a sample every {Milliseconds(study.Record.PeriodMicroseconds * 1e-6)}: {study.Record.Samples.Count.ToString(CultureInfo.InvariantCulture)} samples.");
        page.Paragraph($"SHA-256 of the case file: <code>{study.CaseSha256}</code>. Checksum of the settings: <code>{SettingsText.Checksum(study.Settings)}</code>");
        WriteSettings(page, study.Settings);
        WriteStageSettings(page, study.Settings);
        WriteCurve(page, study.Settings);
        ReportTable columns = new("Columns of the record", ["Column", "Unit", "Meaning"], "words wrap");
        foreach (Signal signal in SignalTable.All) columns.Add(ReportPage.Text($"<code>{signal.Name}</code>"), signal.Unit, signal.Description);
        page.Table(columns);
        page.EndSection();
    }

    private static void WriteSettings(ReportPage page, Settings settings)
    {
        ReportTable table = new("Controller settings", ["Setting", "Value"]);
        foreach (SettingRow row in SettingTable.Rows)
        {
            if (!SettingsText.IsNumbered(row.Id)) table.Add(row.Name, Value(settings, row));
        }

        page.Table(table);
    }

    private static string Value(Settings settings, SettingRow row)
    {
        float number = SettingAccess.Get(settings, row.Id, 0);
        if (WordFor(row, number) is string word) return word;
        if (row.Unit == "us") return Time(SettingAccess.GetWhole(settings, row.Id));
        if (IsFitting(row)) return number > 0 ? "yes" : "no";
        return row.Unit.Length == 0 ? Plain(number) : $"{Plain(number)}\u00A0{row.Unit}";
    }

    // A default that stands for a word, such as 0 (off), is none or as much as the controller can hold.
    private static string? WordFor(SettingRow row, float number)
    {
        int bracket = row.DefaultText.IndexOf('(', StringComparison.Ordinal);
        return bracket >= 0 && (number == 0 || number >= Settings.Largest) ? row.DefaultText[(bracket + 1)..^1] : null;
    }

    private static bool IsFitting(SettingRow row) =>
        row.Id == SettingId.SpinningStart || row.Name.EndsWith("-fitted", StringComparison.Ordinal);

    private static void WriteCurve(ReportPage page, Settings settings)
    {
        if (settings.CurvePoints == 0) return;
        ReportTable table = new("Magnetisation as the controller knows it", [settings.FluxSource == FluxSource.ArmatureCurrent ? "Armature current, A" : "Field current, A", "Machine constant, V s/rad"]);
        for (int i = 0; i < settings.CurvePoints; i++) table.Add((double)settings.CurveAmps[i], (double)settings.CurveConstants[i]);
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
