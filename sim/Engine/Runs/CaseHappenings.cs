using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Runs;

/// <summary>The events of a case as a run plays them.</summary>
internal static class CaseHappenings
{
    /// <summary>Turns every event of a case into one of the run.</summary>
    /// <param name="file">The case.</param>
    /// <param name="stageCount">Number of stages.</param>
    /// <param name="control">What is fitted.</param>
    /// <exception cref="CaseException">An event is about something that the case does not have.</exception>
    public static RunEvent[] Of(CaseFile file, int stageCount, ControlSetup control)
    {
        CaseProblem[] problems = [.. file.Events.SelectMany(written => Problems(file, written, stageCount, control))];
        if (problems.Length > 0) throw new CaseException(problems);
        RunEvent[] events = [.. file.Events.Select(EventOf)];
        return IsStartedLate(control) && !Array.Exists(events, happening => happening.Command == OperatorCommand.Start)
            ? [.. events.Append(LateStart(control)).OrderBy(happening => happening.AtSeconds)]
            : events;
    }

    // Without its auxiliary contact a contactor counts as open only once it has had the time to open: a press before is refused.
    private static bool IsStartedLate(ControlSetup control) => !control.Sensors.HasLineContact || !control.Sensors.HasStageContacts || control.Brake is { HasContact: false };

    private static RunEvent LateStart(ControlSetup control) =>
        new((control.ContactMicroseconds + 2L * control.PeriodMicroseconds) * 1e-6, null, null, OperatorCommand.Start);

    private static IEnumerable<CaseProblem> Problems(CaseFile file, CaseEvent written, int stageCount, ControlSetup control)
    {
        string kind = file.Text(CaseKeys.MotorKind), fieldKeys = kind == "series" ? "a motor.kind with a field winding" : "field.supply-voltage and field.resistance";
        bool hasField = control.Field != null, hasPulses = file.Has(CaseKeys.SensorsPulsesPerRevolution);
        if (written.FieldSupplyVolts != null && !hasField) yield return Without(CaseKeys.EventFieldSupplyVoltage, "a field circuit", fieldKeys);
        if (written.FieldSupplyVolts != null && kind is "shunt" or "compound") yield return Problem(CaseKeys.EventFieldSupplyVoltage, $"it on a {kind} motor, whose field lies on supply.voltage", "event.supply-voltage, or motor.kind = \"separately excited\"");
        if (written.Field != null && !hasField) yield return Without(CaseKeys.EventField, "a field circuit", fieldKeys);
        if (written.Permissives != null && control.Protections.Permissives == 0) yield return Without(CaseKeys.EventPermissives, "protection.permissives", "protection.permissives");
        if (written.ResistorCelsius != null && control.Protections.ResistorCelsius == null) yield return Without(CaseKeys.EventResistorTemperature, "protection.resistor-temperature", "protection.resistor-temperature");
        if (written.MissingPulses != null && !hasPulses) yield return Without(CaseKeys.EventMissingPulses, "a pulse pick-up", CaseKeys.SensorsPulsesPerRevolution.Path);
        if (written.ExtraPulses != null && !hasPulses) yield return Without(CaseKeys.EventExtraPulses, "a pulse pick-up", CaseKeys.SensorsPulsesPerRevolution.Path);
        if (written.Sensor == "field current" && control.Field is not { IsMeasured: true }) yield return Without(CaseKeys.EventSensor, "a sensor of the field current", "sensors.field-current = \"yes\"");
        if (written.Sensor == "resistor temperature" && control.Protections.ResistorCelsius == null) yield return Without(CaseKeys.EventSensor, "protection.resistor-temperature", "protection.resistor-temperature");
        if (written.AmbientCelsius != null && !CaseHeat.IsThere(file)) yield return Without(CaseKeys.EventAmbientTemperature, "anything that warms up", "a thermal capacity");
        if (written.Cooling != null && !CaseHeat.IsThere(file)) yield return Without(CaseKeys.EventCooling, "anything that warms up", "a thermal capacity");
        if (written.SpeedSignal != null && !control.Sensors.HasSpeed) yield return Without(CaseKeys.EventSpeedSignal, "a speed sensor", "sensors.speed = \"yes\"");
        if (written.Contact == "field" && control.Field is not { HasContactor: true }) yield return Without(CaseKeys.EventContact, "a field contactor", "field.contactor = \"yes\"");
        if (written.Contact == "brake" && control.Brake == null) yield return Without(CaseKeys.EventContact, "a brake", "brake.resistance");
        if (written.WhenStage > stageCount + 1) yield return Problem(CaseKeys.EventWhenStage, $"{written.WhenStage} of {stageCount} stages", $"1 to {stageCount + 1}");
        if (StageOf(written) > stageCount) yield return Problem(CaseKeys.EventContact, $"\"{written.Contact}\" of {stageCount} stages", $"\"stage 1\" to \"stage {stageCount}\"");

        CaseProblem Without(CaseKey key, string what, string needed) => Problem(key, $"it in a case without {what}", $"{needed} in the file");
        CaseProblem Problem(CaseKey key, string found, string allowed) => new(written.FileName, written.Line, key.Path, found, allowed);
    }

    private static RunEvent EventOf(CaseEvent written) =>
        new(written.AtSeconds, written.LoadTorqueNewtonMetres, written.SupplyVolts, CommandOf(written.Command))
        {
            When = ConditionOf(written),
            Line = written.Line,
            HoistNewtonMetres = written.HoistNewtonMetres,
            OverSeconds = written.OverSeconds,
            LoadInertiaKgM2 = written.LoadInertiaKgM2,
            FieldSupplyVolts = written.FieldSupplyVolts,
            FieldOpen = written.Field is string field ? field == "open" : null,
            SpeedSignal = SignalOf(written.SpeedSignal),
            ShaftLocked = written.Shaft is string shaft ? shaft == "locked" : null,
            ContactFault = ContactFaultOf(written),
            CoilVoltageRatio = written.CoilVoltage,
            Permissives = written.Permissives is int given ? (1 << given) - 1 : null,
            CurrentSensorGain = written.CurrentGain,
            MissingPulseRatio = written.MissingPulses,
            ExtraPulseRatio = written.ExtraPulses,
            ResistorCelsius = written.ResistorCelsius,
            SensorFault = SensorFaultOf(written),
            AmbientCelsius = written.AmbientCelsius,
            CoolingBlocked = written.Cooling is string cooling ? cooling == "blocked" : null,
        };

    /// <summary>What an event of a case waits for; null: its time.</summary>
    public static EventCondition? ConditionOf(CaseEvent written)
    {
        if (written.WhenSpeedAbove is double above) return new EventCondition(EventConditionKind.SpeedAbove, above, written.AfterSeconds);
        if (written.WhenSpeedBelow is double below) return new EventCondition(EventConditionKind.SpeedBelow, below, written.AfterSeconds);
        return written.WhenStage is int stage ? new EventCondition(EventConditionKind.StageReached, stage, written.AfterSeconds) : null;
    }

    private static SpeedSignalState? SignalOf(string? written) => written switch
    {
        null => null,
        "lost" => SpeedSignalState.Lost,
        "stuck" => SpeedSignalState.Stuck,
        "zero" => SpeedSignalState.Zero,
        _ => SpeedSignalState.Sound,
    };

    private static SensorFault? SensorFaultOf(CaseEvent written)
    {
        if (written.Sensor == null || written.SensorFault == null) return null;
        SensorName name = written.Sensor switch
        {
            "supply volts" => SensorName.SupplyVolts,
            "armature current" => SensorName.ArmatureAmps,
            "field current" => SensorName.FieldAmps,
            _ => SensorName.ResistorCelsius,
        };
        SensorFaultKind kind = written.SensorFault switch
        {
            "stuck" => SensorFaultKind.Stuck,
            "open wire" => SensorFaultKind.OpenWire,
            _ => SensorFaultKind.Sound,
        };
        return new SensorFault(name, kind);
    }

    private static ContactFault? ContactFaultOf(CaseEvent written)
    {
        if (written.Contact == null || written.ContactFault == null) return null;
        ContactName name = written.Contact switch
        {
            "line" => ContactName.Line,
            "field" => ContactName.Field,
            "brake" => ContactName.Brake,
            _ => ContactName.Stage,
        };
        ContactFaultKind kind = written.ContactFault switch
        {
            "welded" => ContactFaultKind.Welds,
            "refuses to close" => ContactFaultKind.RefusesToClose,
            "drops out" => ContactFaultKind.DropsOut,
            "auxiliary open" => ContactFaultKind.AuxiliaryStuckOpen,
            "auxiliary closed" => ContactFaultKind.AuxiliaryStuckClosed,
            _ => ContactFaultKind.Sound,
        };
        return new ContactFault(name, kind, StageOf(written));
    }

    private static int StageOf(CaseEvent written) =>
        written.Contact is string contact && contact.StartsWith("stage ", StringComparison.Ordinal) ? int.Parse(contact[6..], System.Globalization.CultureInfo.InvariantCulture) : 0;

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
