using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>From a case file to a designed, simulated and judged start.</summary>
public static class CaseRunner
{
    private const int SamplesKept = 10_000;
    private const int MostSamples = 5_000_000;

    /// <summary>Runs a case.</summary>
    /// <param name="file">The case.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">The case lacks something or contradicts itself; names file, line and key.</exception>
    public static StartStudy Run(CaseFile file, IProgress<double>? progress = null, CancellationToken cancellation = default) =>
        Run(file, null, progress, cancellation);

    /// <summary>Runs a case and writes its record as it goes.</summary>
    /// <param name="file">The case.</param>
    /// <param name="order">What takes the samples beside the record in memory; null: nothing.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">The case lacks something or contradicts itself; names file, line and key.</exception>
    public static StartStudy Run(CaseFile file, RecordOrder? order, IProgress<double>? progress, CancellationToken cancellation) =>
        Run(Prepare(file), order, progress, cancellation);

    /// <summary>Runs a prepared case, on its nominal plant or on another, and writes its record as it goes.</summary>
    /// <param name="prepared">The case.</param>
    /// <param name="order">What takes the samples beside the record in memory; null: nothing.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">The record's period does not fit the run.</exception>
    public static StartStudy Run(PreparedRun prepared, RecordOrder? order, IProgress<double>? progress, CancellationToken cancellation)
    {
        (CaseDesign designed, RunSetup setup, Settings settings) = prepared;
        CaseFile file = designed.File;
        Record record = new(RecordPeriodMicroseconds(file, setup));
        Trace trace = new();
        ISampleSink sink = record;
        if (order != null)
        {
            RecordHeader header = RecordHeader.Of(file, setup, settings, order.EveryPeriod ? setup.PeriodMicroseconds : record.PeriodMicroseconds);
            sink = new SampleFan(record, order.Open(header));
        }

        RunResult result = StartSimulation.Run(setup, settings, sink, trace, progress, cancellation);
        return new StartStudy
        {
            Title = TitleOf(file),
            CaseName = Path.GetFileName(file.FileName),
            CaseSha256 = file.Sha256,
            Plate = designed.Plate,
            Construction = ConstructionOf(file),
            CurveRadPerSec = file.Has(CaseKeys.FieldCurveSpeed) ? file.Number(CaseKeys.FieldCurveSpeed) : null,
            DesignInput = designed.Input,
            Design = designed.Design,
            Setup = setup with { Events = Happened(setup, result) },
            Settings = settings,
            Result = result,
            Record = record,
            Trace = trace,
            Verdict = prepared.Judge(result),
            Warnings =
            [
                .. designed.Warnings, .. LockoutWarnings(designed, settings), .. RunawayWarnings(designed, setup, settings),
                .. result.EventsLeft.Select(NeverHappened),
            ],
        };
    }

    /// <summary>Reads and designs everything that a run of a case needs, and runs nothing.</summary>
    /// <param name="file">The case.</param>
    /// <exception cref="CaseException">The case lacks something or contradicts itself; names file, line and key.</exception>
    public static PreparedRun Prepare(CaseFile file)
    {
        CaseDesign designed = CaseDesign.ForRun(file);
        RunSetup plant = CasePlant.Nominal(designed);
        CheckExpectation(file);
        ControlSetup control = CaseControl.Of(file, designed.Design, plant.Contactors, designed.Machine);
        Settings settings = ControllerSettings.From(designed.Design, plant.Machine, control);
        SettingsRefusal.ThrowIfAny(file, settings);
        RunSetup setup = plant with { Events = CaseHappenings.Of(file, designed.Design.StageCount, control) };
        return new PreparedRun(designed, setup, settings) { Variables = PlantVariables.Of(designed) };
    }

    /// <summary>What a case is called: by its title, or else by its file.</summary>
    public static string TitleOf(CaseFile file) =>
        file.Has(CaseKeys.Title) ? file.Text(CaseKeys.Title) : Path.GetFileNameWithoutExtension(file.FileName);

    // Pictures and tables ask for the times of the events: what waited for a condition has one only now.
    private static IReadOnlyList<RunEvent> Happened(RunSetup setup, RunResult result) =>
        setup.Events.All(happening => happening.When == null) ? setup.Events : [.. result.Timeline.Select(entry => entry.Event).OfType<RunEvent>()];

    private static string NeverHappened(RunEvent left) =>
        $"The event on line {left.Line} of the case never happened: it would have come {EventText.Condition(left.When!)}.";

    private static Construction? ConstructionOf(CaseFile file) =>
        new[] { CaseKeys.MotorPoles, CaseKeys.MotorConductors, CaseKeys.MotorParallelPaths, CaseKeys.MotorFluxPerPole }.All(file.Has)
            ? new(file.Count(CaseKeys.MotorPoles), file.Count(CaseKeys.MotorConductors), file.Count(CaseKeys.MotorParallelPaths), file.Number(CaseKeys.MotorFluxPerPole))
            : null;

    private static void CheckExpectation(CaseFile file)
    {
        if (!file.Has(CaseKeys.ExpectBy) || file.Has(CaseKeys.ExpectFault)) return;
        throw new CaseException([file.Problem(CaseKeys.ExpectBy, $"\"{file.Written(CaseKeys.ExpectBy)}\" without expect.fault", "expect.fault in the file, the name of a fault")]);
    }

    private static long RecordPeriodMicroseconds(CaseFile file, RunSetup setup)
    {
        if (setup.DurationSeconds * 1e6 < setup.PeriodMicroseconds)
        {
            throw new CaseException([file.Problem(
                CaseKeys.RunDuration,
                file.Written(CaseKeys.RunDuration),
                $"at least one control period, {file.Written(CaseKeys.ControlPeriod)}")]);
        }

        double seconds = file.Has(CaseKeys.RunRecordPeriod) ? file.Number(CaseKeys.RunRecordPeriod) : setup.DurationSeconds / SamplesKept;
        long ticks = Math.Max(1, (long)Math.Round(seconds * 1e6 / setup.PeriodMicroseconds));
        double samples = setup.DurationSeconds * 1e6 / (ticks * setup.PeriodMicroseconds);
        if (samples > MostSamples || samples < 1)
        {
            throw new CaseException([file.Problem(
                CaseKeys.RunRecordPeriod,
                $"{file.Written(CaseKeys.RunRecordPeriod)}, which makes {Text.Number(samples)} samples of this run",
                $"a period that makes 1 to {MostSamples} samples")]);
        }

        return ticks * setup.PeriodMicroseconds;
    }

    private static IEnumerable<string> RunawayWarnings(CaseDesign designed, RunSetup setup, Settings settings)
    {
        if (designed.Machine.Kind != MachineKind.Series || setup.Load != Load.None) yield break;
        string limit = settings.OverspeedRadPerSec < Settings.Largest
            ? $"the overspeed limit of {Text.Number(settings.OverspeedRadPerSec * 30 / Math.PI)} r/min ends it"
            : "nothing ends it, for neither protection.overspeed nor motor.rated-speed is given";
        yield return $"Nothing loads this series motor: it runs away, and {limit}.";
    }

    private static IEnumerable<string> LockoutWarnings(CaseDesign designed, Settings settings)
    {
        DesignedStage? stuck = designed.Design.Stages.FirstOrDefault(stage => settings.LockoutAmps <= stage.LoadAmps);
        if (stuck == null) yield break;
        yield return $"The lockout current of {Text.Number(settings.LockoutAmps)} A is not above the {Text.Number(stuck.LoadAmps!.Value)} A that the load takes at the end of stage {stuck.Stage}: that stage will never be cut out.";
    }
}
