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
    // Common practice, no source: an instantaneous trip half above the permitted peak, feedback within twice the contact's time.
    private const double InstantTripRatio = 1.5;
    private const double ContactTimeRatio = 2;
    private const double LeastContactSeconds = 0.1;
    private const int SamplesKept = 10_000;
    private const int MostSamples = 5_000_000;
    private const double LeastHenries = 1e-9;
    private const double LeastInertiaKgM2 = 1e-12;

    /// <summary>Runs a case.</summary>
    /// <param name="file">The case.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">The case lacks something or contradicts itself; names file, line and key.</exception>
    public static StartStudy Run(CaseFile file, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        CaseDesign designed = CaseDesign.ForRun(file);
        StarterDesign design = designed.Design;
        Machine machine = MachineOf(file, designed);
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
        CheckSettings(file, settings);
        Record record = new(RecordPeriodMicroseconds(file, setup));
        Trace trace = new();
        RunResult result = StartSimulation.Run(setup, settings, record, trace, progress, cancellation);
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
            Trace = trace,
            Verdict = RunJudge.Judge(file, designed, machine, result),
            Warnings = [.. designed.Warnings, .. LockoutWarnings(designed, settings)],
        };
    }

    private static Machine MachineOf(CaseFile file, CaseDesign designed)
    {
        double henries = file.Number(CaseKeys.MotorArmatureInductance);
        if (henries is > 0 and < LeastHenries)
        {
            throw new CaseException([file.Problem(
                CaseKeys.MotorArmatureInductance, file.Written(CaseKeys.MotorArmatureInductance), "0 H, or at least 0.001 uH")]);
        }

        double inertia = designed.Input.InertiaKgM2!.Value;
        if (inertia < LeastInertiaKgM2)
        {
            throw new CaseException([file.Problem(
                CaseKeys.MotorInertia, file.Written(CaseKeys.MotorInertia), "at least 1e-12 kg m2 at the shaft, load included")]);
        }

        return new Machine(designed.Plate.MachineConstant!.Value, designed.Design.ArmatureOhms, henries, designed.Design.BrushDropVolts, inertia);
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

    // A contact time shorter than a microsecond would be none.
    private static int Microseconds(double seconds) => (int)Math.Ceiling(Math.Round(seconds * 1e6, 3));

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

    // Values that pass one by one can still ask the controller for a limit beyond what it can hold.
    private static void CheckSettings(CaseFile file, Settings settings)
    {
        SettingId problem = settings.FirstProblem();
        if (problem == SettingId.None) return;
        CaseKey key = problem switch
        {
            SettingId.MachineConstant or SettingId.HighestSpeedRadPerSec => CaseKeys.MotorConstant,
            SettingId.HighestSupplyVolts => CaseKeys.SupplyVoltage,
            SettingId.SteadyAmpsPerSec => CaseKeys.MotorArmatureInductance,
            SettingId.InstantTripAmps => CaseKeys.ControlInstantTrip,
            SettingId.LockoutAmps => CaseKeys.ControlLockoutCurrent,
            SettingId.ContactMicroseconds => CaseKeys.ControlContactTime,
            SettingId.MaximumStageMicroseconds => CaseKeys.ControlMaximumStageTime,
            _ => CaseKeys.StarterPeakCurrent,
        };
        throw new CaseException([file.Problem(
            key,
            $"values that lead to a setting {problem} which the controller cannot hold",
            $"values whose volts, amperes and rad/s, doubled, stay below {Text.Number(Settings.Largest)}")]);
    }

    private static IEnumerable<string> LockoutWarnings(CaseDesign designed, Settings settings)
    {
        DesignedStage? stuck = designed.Design.Stages.FirstOrDefault(stage => settings.LockoutAmps <= stage.LoadAmps);
        if (stuck == null) yield break;
        yield return $"The lockout current of {Text.Number(settings.LockoutAmps)} A is not above the {Text.Number(stuck.LoadAmps!.Value)} A that the load takes at the end of stage {stuck.Stage}: that stage will never be cut out.";
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
