using System;
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
    // Common practice, no source: an instantaneous trip half above the permitted peak, feedback within twice the contact's time.
    private const double InstantTripRatio = 1.5;
    private const double ContactTimeRatio = 2;
    private const double LeastContactSeconds = 0.1;
    private const int SamplesKept = 10_000;

    /// <summary>Runs a case.</summary>
    /// <param name="file">The case.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">The case lacks something or contradicts itself; names file, line and key.</exception>
    public static StartStudy Run(CaseFile file, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        CaseDesign designed = CaseDesign.Of(file, CaseKeys.MotorInertia);
        if (PlateReader.MissingConstant(file, designed.Plate) is CaseProblem missing) throw new CaseException([missing]);

        StarterDesign design = designed.Design;
        Machine machine = new(
            designed.Plate.MachineConstant!.Value,
            design.ArmatureOhms,
            file.Number(CaseKeys.MotorArmatureInductance),
            design.BrushDropVolts,
            designed.Input.InertiaKgM2!.Value);
        Contactors contactors = new(file.Number(CaseKeys.ContactorsClosingTime), file.Number(CaseKeys.ContactorsOpeningTime));
        ControlSetup control = Control(file, design, contactors);
        RunSetup setup = new()
        {
            Machine = machine,
            Load = designed.Input.Load,
            Supply = new Supply(design.SupplyVolts, file.Number(CaseKeys.SupplyResistance)),
            SectionOhms = designed.SectionOhms(),
            Contactors = contactors,
            PeriodMicroseconds = control.PeriodMicroseconds,
            DurationSeconds = file.Number(CaseKeys.RunDuration),
            InitialSpeedRadPerSec = file.Number(CaseKeys.LoadSpeed),
            Events = [.. file.Events.Select(EventOf)],
        };
        Settings settings = ControllerSettings.From(design, machine, control);
        Record record = new(RecordPeriodMicroseconds(file, setup));
        RunResult result = StartSimulation.Run(setup, settings, record, progress, cancellation);
        return new StartStudy
        {
            Title = file.Has(CaseKeys.Title) ? file.Text(CaseKeys.Title) : Path.GetFileNameWithoutExtension(file.FileName),
            CaseName = Path.GetFileName(file.FileName),
            CaseSha256 = file.Sha256,
            Plate = designed.Plate,
            DesignInput = designed.Input,
            Design = design,
            Setup = setup,
            Settings = settings,
            Result = result,
            Record = record,
            Verdict = RunJudge.Judge(file, designed, machine, result),
            Warnings = designed.Warnings,
        };
    }

    private static ControlSetup Control(CaseFile file, StarterDesign design, Contactors contactors)
    {
        double lockout = file.Number(CaseKeys.ControlLockoutCurrent);
        double contactSeconds = file.Has(CaseKeys.ControlContactTime)
            ? file.Number(CaseKeys.ControlContactTime)
            : Math.Max(LeastContactSeconds, ContactTimeRatio * Math.Max(contactors.ClosingSeconds, contactors.OpeningSeconds));
        ControlSetup control = new()
        {
            PeriodMicroseconds = Microseconds(file.Number(CaseKeys.ControlPeriod)),
            ConfirmMicroseconds = Microseconds(file.Number(CaseKeys.ControlConfirmTime)),
            MinimumDwellMicroseconds = Microseconds(file.Number(CaseKeys.ControlMinimumDwell)),
            MaximumStageMicroseconds = Microseconds(file.Number(CaseKeys.ControlMaximumStageTime)),
            ContactMicroseconds = Microseconds(contactSeconds),
            LockoutAmps = double.IsFinite(lockout) ? lockout : null,
            InstantTripAmps = file.Has(CaseKeys.ControlInstantTrip) ? file.Number(CaseKeys.ControlInstantTrip) : InstantTripRatio * design.WorstPeakAmps,
        };
        if (control.MaximumStageMicroseconds <= control.MinimumDwellMicroseconds)
        {
            throw new CaseException([file.Problem(
                CaseKeys.ControlMaximumStageTime,
                file.Written(CaseKeys.ControlMaximumStageTime),
                $"above the minimum dwell of {file.Written(CaseKeys.ControlMinimumDwell)}")]);
        }

        return control;
    }

    private static int Microseconds(double seconds) => (int)Math.Round(seconds * 1e6);

    private static long RecordPeriodMicroseconds(CaseFile file, RunSetup setup)
    {
        double seconds = file.Has(CaseKeys.RunRecordPeriod) ? file.Number(CaseKeys.RunRecordPeriod) : setup.DurationSeconds / SamplesKept;
        long ticks = Math.Max(1, (long)Math.Round(seconds * 1e6 / setup.PeriodMicroseconds));
        return ticks * setup.PeriodMicroseconds;
    }

    private static RunEvent EventOf(CaseEvent written) =>
        new(written.AtSeconds, written.LoadTorqueNewtonMetres, written.SupplyVolts, CommandOf(written.Command));

    private static OperatorCommand? CommandOf(string? written) => written switch
    {
        null => null,
        "start" => OperatorCommand.Start,
        "stop" => OperatorCommand.Stop,
        "reset" => OperatorCommand.Reset,
        "emergency stop" => OperatorCommand.EmergencyStop,
        "release emergency stop" => OperatorCommand.ReleaseEmergencyStop,
        _ => throw new ArgumentOutOfRangeException(nameof(written), written, null),
    };
}
