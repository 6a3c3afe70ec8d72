using System.CommandLine;
using System.IO;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Export;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Verbs;

/// <summary>Writes a case for other programs.</summary>
internal static class ExportVerb
{
    /// <summary>The verb with the formats that it knows.</summary>
    public static Command Build(Terminal terminal) => new("export", "Write a case, or a record, for another program.\n\nExample:\n  starterctl export spice sim/cases/line-shaft.toml --out line-shaft.cir")
    {
        CaseVerb.Build(
            terminal,
            "spice",
            "Write the start of a case as a netlist for the circuit simulator ngspice, which solves the same equations in its own way.\n\nExample:\n  starterctl export spice sim/cases/line-shaft.toml --out line-shaft.cir\n  ngspice -b line-shaft.cir",
            Spice,
            hasJson: false),
        CaseVerb.Build(
            terminal,
            "settings",
            "Write the controller's settings of a case as C# source for the firmware, with the case's hash and the settings' checksum.\n\nExample:\n  starterctl export settings sim/cases/bench-rig.toml --out CaseSettings.cs",
            Settings,
            hasJson: false),
        ExportTrialVerb.Build(terminal),
        ExportRecordVerb.Build(terminal),
    };

    private static int Spice(VerbCall call)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        SpiceScene scene = call.Terminal.Work("export", progress => SpiceSceneReader.Read(file, CaseRunner.Run(file, progress, call.Cancellation), call.Cancellation));
        using OutputFiles files = new(call.CasePath);
        files.Add("the netlist", new OutputPlace(call.Place, call.CasePath).PathOf("spice.cir"), writer => writer.Write(SpiceNetlist.Of(scene)));
        files.Commit();

        foreach (string sentence in scene.LeftOut) call.Terminal.Warn($"left out: {sentence}");
        files.Report(call.Terminal);
        return ExitCode.Ok;
    }

    private static int Settings(VerbCall call)
    {
        CaseFile file = CaseFile.Read(call.CasePath);
        PreparedRun prepared = CaseRunner.Prepare(file);
        using OutputFiles files = new(call.CasePath);
        files.Add(
            "the settings",
            new OutputPlace(call.Place, call.CasePath).PathOf("settings.cs"),
            writer => writer.Write(SettingsSource.Of(prepared.Settings, prepared.Setup.PeriodMicroseconds, CaseRunner.TitleOf(file), Path.GetFileName(call.CasePath), file.Sha256)));
        files.Commit();

        foreach (string warning in prepared.Designed.Warnings) call.Terminal.Warn(warning);
        files.Report(call.Terminal);
        return ExitCode.Ok;
    }
}
