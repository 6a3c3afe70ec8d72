using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>Studies built in code, with the numbers of the shipped cases.</summary>
internal static class Studies
{
    private const double RadPerSec = Math.PI / 30;

    private static readonly Machine LineShaftMachine = new(
        MachineConstant.FromPlate(220, 77, 1250 * RadPerSec, 0.17, 2), 0.17, 4e-3, 2, 2.65);

    private static readonly Load LineShaftLoad = new(45, 0.06, 0.0015);

    public static Lazy<StartStudy> LineShaft { get; } = new(() => LineShaftOf(design => design, "Line-shaft drive, 220 V, 15 kW"));

    public static Lazy<StartStudy> BenchRig { get; } = new(MakeBenchRig);

    public static StartStudy LineShaftOf(
        Func<DesignInput, DesignInput> change, string title = "Line-shaft drive", IReadOnlyList<RunEvent>? events = null, double maximumStageSeconds = 4, double durationSeconds = 8, long recordMicroseconds = 1000)
    {
        Machine machine = LineShaftMachine;
        DesignInput input = change(new DesignInput
        {
            SupplyVolts = 220,
            ArmatureOhms = machine.ArmatureOhms,
            BrushDropVolts = machine.BrushDropVolts,
            MachineConstant = machine.Constant,
            InertiaKgM2 = machine.InertiaKgM2,
            Load = LineShaftLoad,
            RatedAmps = 77,
            PeakAmps = 155,
            SwitchingAmps = 90,
            Slack = Slack.LastSection,
        });
        Plate plate = new()
        {
            Kind = "separately excited",
            RatedWatts = 15000,
            RatedVolts = 220,
            RatedAmps = 77,
            RatedRadPerSec = 1250 * RadPerSec,
            MachineConstant = machine.Constant,
            ConstantSource = $"from the plate: (220 V - 2 V - 77 A x 0.17 ohm) / 130.9 rad/s = {Text.Number(machine.Constant)} V s/rad",
        };
        ControlSetup control = new() { ConfirmMicroseconds = 2000, MinimumDwellMicroseconds = 100_000, MaximumStageMicroseconds = (int)(maximumStageSeconds * 1e6), InstantTripAmps = 230 };
        return Study(title, "line-shaft.toml", plate, input, machine, new Supply(220, 0.01), new Contactors(0.04, 0.015), control, (durationSeconds, recordMicroseconds), events ?? [new RunEvent(5, 85, null, null)]);
    }

    private static StartStudy MakeBenchRig()
    {
        Machine machine = new(0.138, 0.28, 0.35e-3, 1, 0.0222);
        DesignInput input = new()
        {
            SupplyVolts = 48,
            ArmatureOhms = 0.28,
            BrushDropVolts = 1,
            MachineConstant = 0.138,
            InertiaKgM2 = machine.InertiaKgM2,
            Load = new Load(0.45, 0.0008, 0),
            RatedAmps = 13,
            PeakAmps = 32,
            StageCount = 2,
            Slack = Slack.RaiseSwitchingCurrent,
        };
        Plate plate = new()
        {
            Kind = "permanent magnet",
            RatedWatts = 500,
            RatedVolts = 48,
            RatedAmps = 13,
            RatedRadPerSec = 3000 * RadPerSec,
            MachineConstant = 0.138,
            ConstantSource = "given in the case",
        };
        ControlSetup control = new() { ConfirmMicroseconds = 3000, MinimumDwellMicroseconds = 50_000, MaximumStageMicroseconds = 5_000_000, InstantTripAmps = 48 };
        return Study("Bench rig, 48 V, 500 W", "bench-rig.toml", plate, input, machine, new Supply(48, 0.015), new Contactors(0.012, 0.006), control, (6, 1000), [new RunEvent(4, 1.1, null, null)]);
    }

    private static StartStudy Study(
        string title, string caseName, Plate plate, DesignInput input, Machine machine, Supply supply, Contactors contactors, ControlSetup control, (double Seconds, long RecordMicroseconds) length, IReadOnlyList<RunEvent> events)
    {
        StarterDesign design = StarterDesigner.Design(input);
        RunSetup setup = new()
        {
            Machine = machine,
            Load = input.Load,
            Supply = supply,
            SectionOhms = [.. design.Stages.Select(stage => stage.SectionOhms)],
            Contactors = contactors,
            PeriodMicroseconds = control.PeriodMicroseconds,
            DurationSeconds = length.Seconds,
            Events = events,
        };
        Settings settings = ControllerSettings.From(design, machine, control);
        Record record = new(length.RecordMicroseconds);
        Trace trace = new();
        RunResult result = StartSimulation.Run(setup, settings, record, trace);
        Verdict verdict = new(
        [
            new LimitCheck("Peak current", result.PeakAmps <= design.PeakAmps, Text.Number(result.PeakAmps) + " A", Text.Number(design.PeakAmps) + " A"),
            new LimitCheck("Start completed", result.Cutouts.Count == design.StageCount, $"{result.Cutouts.Count} cutouts", $"{design.StageCount} cutouts"),
        ]);
        return new StartStudy
        {
            Title = title,
            CaseName = caseName,
            CaseSha256 = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef",
            Plate = plate,
            DesignInput = input,
            Design = design,
            Setup = setup,
            Settings = settings,
            Result = result,
            Record = record,
            Trace = trace,
            Verdict = verdict,
            Warnings = design.Warnings,
        };
    }
}
