using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>Finds out how much of a case a netlist can describe.</summary>
public static class SpiceSceneReader
{
    private const double PeriodSeconds = IdealSwitching.PeriodMicroseconds * 1e-6;

    /// <summary>Looks at a case that has been run.</summary>
    /// <param name="file">The case.</param>
    /// <param name="study">Its run.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="CaseException">Nothing of the case is a start that a netlist can describe; names file, line and key.</exception>
    public static SpiceScene Read(CaseFile file, StartStudy study, CancellationToken cancellation = default)
    {
        List<string> leftOut = [.. ControlLeftOut(study)];
        RunEvent? first = study.Setup.Events.FirstOrDefault(happening => !IsPlayed(happening, study.Setup));
        RunSetup setup = IdealSwitching.Of(study.Setup);
        if (first != null) setup = EndBefore(setup, first.AtSeconds, EventText.Sentence(first), leftOut);
        Settings settings = IdealSwitching.Of(study.Settings);
        RunResult? own = setup.DurationSeconds > 0 ? StartSimulation.Run(setup, settings, cancellation: cancellation) : null;
        PhaseEntry[] phases = [.. (own?.Phases ?? []).SkipWhile(entry => entry.Phase != Phase.Accelerating)];
        if (phases.Length == 0) throw Refused(file, first, own);
        if (own!.Timeline.Any(entry => entry.Reason == Reason.WaitingForShaft)) throw RefusedSpeed(file);

        PhaseEntry? left = phases.Skip(1).FirstOrDefault(entry => entry.Phase != Phase.Running);
        if (left != null)
        {
            setup = EndBefore(setup, left.Seconds, $"the controller's phase becomes {PhaseText.Name(left.Phase)}", leftOut);
            own = StartSimulation.Run(setup, settings, cancellation: cancellation);
        }

        return new SpiceScene
        {
            Title = study.Title,
            CaseName = study.CaseName,
            CaseSha256 = study.CaseSha256,
            Setup = setup,
            Settings = settings,
            StartSeconds = setup.Events.FirstOrDefault(happening => happening.Command == OperatorCommand.Start)?.AtSeconds ?? 0,
            Own = own,
            LeftOut = leftOut,
        };
    }

    private static RunSetup EndBefore(RunSetup setup, double seconds, string why, List<string> leftOut)
    {
        leftOut.Add($"What happens from {Text.Number(seconds)} s on: {why}. The netlist ends there.");
        double end = seconds - PeriodSeconds;
        return setup with { DurationSeconds = end, Events = [.. setup.Events.Where(happening => happening.AtSeconds < end)] };
    }

    // Supply, field supply and load steps and the press of start; a stop ends the netlist by the phase that it leads to.
    private static bool IsPlayed(RunEvent happening, RunSetup setup) =>
        happening.FieldOpen == null && happening.ShaftLocked == null && happening.ContactFault == null && happening.SpeedSignal == null
        && happening.Permissives == null && happening.CurrentSensorGain == null && happening.ResistorCelsius == null
        && happening.HoistNewtonMetres == null && happening.LoadInertiaKgM2 == null && happening.OverSeconds == 0
        && happening.SensorFault == null
        && !(happening.FieldSupplyVolts != null && setup.Field is { IsShunt: true });

    private static CaseException RefusedSpeed(CaseFile file) => new([file.Problem(
        CaseKeys.LoadSpeed,
        $"\"{file.Written(CaseKeys.LoadSpeed)}\", into which the controller does not close the line at once",
        "a speed into which it does: the netlist has no controller that waits")]);

    private static CaseException Refused(CaseFile file, RunEvent? first, RunResult? own)
    {
        CaseEvent? written = file.Events.FirstOrDefault(happening => first != null && happening.AtSeconds == first.AtSeconds);
        const string Allowed = "a start whose line contactor closes before anything happens that a netlist has no words for";
        if (own == null && written != null) return new CaseException([new CaseProblem(file.FileName, written.Line, CaseKeys.EventAt.Path, $"at the beginning {EventText.Sentence(first!)}", Allowed)]);
        if (file.Number(CaseKeys.LoadSpeed) != 0) return RefusedSpeed(file);
        return new CaseException([file.Problem(CaseKeys.RunDuration, "a run in which the line contactor does not close", Allowed)]);
    }

    private static IEnumerable<string> ControlLeftOut(StartStudy study)
    {
        RunSetup setup = study.Setup;
        Settings settings = study.Settings;
        if (setup.Contactors.ClosingSeconds > 0 || setup.Contactors.OpeningSeconds > 0) yield return $"Contactor times of {Text.Number(setup.Contactors.ClosingSeconds * 1000)} ms and {Text.Number(setup.Contactors.OpeningSeconds * 1000)} ms: contacts follow at once.";
        if (setup.PeriodMicroseconds > IdealSwitching.PeriodMicroseconds) yield return $"The control period of {Text.Number(setup.PeriodMicroseconds / 1000.0)} ms: a cutout happens when its threshold is reached.";
        if (settings.ConfirmMicroseconds > 0) yield return $"The confirm time of {Text.Number(settings.ConfirmMicroseconds / 1000.0)} ms.";
        if (settings.MinimumDwellMicroseconds > 0) yield return $"The minimum dwell of {Text.Number(settings.MinimumDwellMicroseconds / 1000.0)} ms.";
        if (setup.Contactors.ArcVolts > 0) yield return $"The arc voltage of {Text.Number(setup.Contactors.ArcVolts)} V: no contact of the netlist opens again.";
        if (setup.BrakeOhms != null) yield return "The brake.";
        if (setup.Heat != null) yield return "Temperatures: every resistance stays what it is at the beginning.";
        if (!settings.SpeedSensorFitted) yield return "The back-EMF from voltage and current: the netlist knows the speed.";
        if (!settings.LineContactFitted || !settings.StageContactsFitted) yield return "The proof of contacts by the current.";
    }
}
