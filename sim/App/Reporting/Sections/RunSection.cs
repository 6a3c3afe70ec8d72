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
            if (row.Id is not (SettingId.StageOhms or SettingId.VoltsLeft)) table.Add(row.Name, Value(settings, row));
        }

        page.Table(table);
    }

    private static string Value(Settings settings, SettingRow row)
    {
        if (row.Unit == "us") return Time(SettingAccess.GetWhole(settings, row.Id));
        float number = SettingAccess.Get(settings, row.Id, 0);
        if (number >= Settings.Largest) return "off";
        return row.Unit.Length == 0 ? Plain(number) : $"{Plain(number)}\u00A0{row.Unit}";
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
