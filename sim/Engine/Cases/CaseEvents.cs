using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Cases;

/// <summary>Puts the keys of events together and checks each event and their order.</summary>
internal sealed class CaseEvents(ProblemList problems)
{
    private static readonly CaseKey[] Conditions = [CaseKeys.EventWhenSpeedAbove, CaseKeys.EventWhenSpeedBelow, CaseKeys.EventWhenStage];

    private static readonly CaseKey[] Moments = [CaseKeys.EventAt, .. Conditions];

    private static readonly CaseKey[] Ramps = [CaseKeys.EventLoadTorque, CaseKeys.EventHoistTorque, CaseKeys.EventSupplyVoltage];

    // What says when or how and does nothing by itself.
    private static readonly CaseKey[] Manners = [.. Moments, CaseKeys.EventAfter, CaseKeys.EventOver];

    /// <summary>Builds the events.</summary>
    /// <param name="lines">The line of each event.</param>
    /// <param name="written">The keys that each event has in the file, readable or not.</param>
    /// <param name="values">The values of each event that could be read.</param>
    /// <param name="run">The run's duration; null when it could not be read.</param>
    /// <returns>The events that are complete, as written.</returns>
    internal List<CaseEvent> Build(
        IReadOnlyList<int> lines,
        ISet<(CaseKey Key, int Event)> written,
        IReadOnlyDictionary<(CaseKey Key, int Event), CaseValue> values,
        CaseValue? run)
    {
        List<CaseEvent> events = [];
        CaseValue? before = null;
        for (int i = 0; i < lines.Count; i++)
        {
            CheckComplete(lines[i], i, written);
            CheckMoment(lines[i], i, written, values);
            if (!Moments.Any(moment => values.ContainsKey((moment, i)))) continue;
            if (values.TryGetValue((CaseKeys.EventAt, i), out CaseValue? at))
            {
                CheckTime(at, before, run);
                before = at;
            }

            events.Add(new CaseEvent(at?.Number ?? double.PositiveInfinity, Number(CaseKeys.EventLoadTorque), Number(CaseKeys.EventSupplyVoltage), Word(CaseKeys.EventCommand), lines[i])
            {
                FileName = problems.File,
                WhenSpeedAbove = Number(CaseKeys.EventWhenSpeedAbove),
                WhenSpeedBelow = Number(CaseKeys.EventWhenSpeedBelow),
                WhenStage = (int?)Number(CaseKeys.EventWhenStage),
                AfterSeconds = Number(CaseKeys.EventAfter) ?? 0,
                HoistNewtonMetres = Number(CaseKeys.EventHoistTorque),
                OverSeconds = Number(CaseKeys.EventOver) ?? 0,
                LoadInertiaKgM2 = Number(CaseKeys.EventLoadInertia),
                FieldSupplyVolts = Number(CaseKeys.EventFieldSupplyVoltage),
                Field = Word(CaseKeys.EventField),
                SpeedSignal = Word(CaseKeys.EventSpeedSignal),
                Shaft = Word(CaseKeys.EventShaft),
                Contact = Word(CaseKeys.EventContact),
                ContactFault = Word(CaseKeys.EventContactFault),
                CoilVoltage = Number(CaseKeys.EventCoilVoltage),
                Permissives = (int?)Number(CaseKeys.EventPermissives),
                CurrentGain = Number(CaseKeys.EventCurrentGain),
                MissingPulses = Number(CaseKeys.EventMissingPulses),
                ExtraPulses = Number(CaseKeys.EventExtraPulses),
                ResistorCelsius = Number(CaseKeys.EventResistorTemperature),
                Sensor = Word(CaseKeys.EventSensor),
                SensorFault = Word(CaseKeys.EventSensorFault),
                AmbientCelsius = Number(CaseKeys.EventAmbientTemperature),
                Cooling = Word(CaseKeys.EventCooling),
            });

            double? Number(CaseKey key) => values.GetValueOrDefault((key, i))?.Number;
            string? Word(CaseKey key) => values.GetValueOrDefault((key, i))?.Written;
        }

        return events;
    }

    private void CheckComplete(int line, int index, ISet<(CaseKey Key, int Event)> written)
    {
        CheckPair(line, index, CaseKeys.EventContact, CaseKeys.EventContactFault, written);
        CheckPair(line, index, CaseKeys.EventContactFault, CaseKeys.EventContact, written);
        CheckPair(line, index, CaseKeys.EventSensor, CaseKeys.EventSensorFault, written);
        CheckPair(line, index, CaseKeys.EventSensorFault, CaseKeys.EventSensor, written);
        CaseKey[] actions = [.. CaseKeys.All.Where(key => key.Table == CaseKeys.EventAt.Table && !Manners.Contains(key))];
        if (actions.Any(action => written.Contains((action, index)))) return;
        string allowed = $"at least one of {string.Join(", ", actions[..^1].Select(key => key.Name))} and {actions[^1].Name}";
        problems.Add(line, CaseKeys.EventAt.Table, "an event in which nothing happens", allowed);
    }

    // Exactly one of the keys that say when, and a delay only behind a condition.
    private void CheckMoment(
        int line, int index, ISet<(CaseKey Key, int Event)> written, IReadOnlyDictionary<(CaseKey Key, int Event), CaseValue> values)
    {
        CaseKey[] given = [.. Moments.Where(moment => written.Contains((moment, index)))];
        string conditions = Words.Or(Conditions.Select(key => key.Name));
        if (given.Length == 0) problems.Add(line, CaseKeys.EventAt.Path, "nothing", $"{CaseKeys.EventAt.AllowedInFull}; or {conditions} instead");
        foreach (CaseKey second in given.Skip(1))
        {
            problems.Add(LineOf(second), second.Path, $"it beside {given[0].Path}", $"exactly one of {CaseKeys.EventAt.Name}, {conditions}");
        }

        if (written.Contains((CaseKeys.EventAfter, index)) && !given.Any(Conditions.Contains))
        {
            problems.Add(LineOf(CaseKeys.EventAfter), CaseKeys.EventAfter.Path, "it without a condition", $"{conditions} beside it");
        }

        if (written.Contains((CaseKeys.EventOver, index)) && !Ramps.Any(key => written.Contains((key, index))))
        {
            problems.Add(LineOf(CaseKeys.EventOver), CaseKeys.EventOver.Path, "it without anything that could take its time", $"{Words.Or(Ramps.Select(key => key.Name))} beside it");
        }

        int LineOf(CaseKey key) => values.GetValueOrDefault((key, index))?.Line ?? line;
    }

    private void CheckPair(int line, int index, CaseKey key, CaseKey needed, ISet<(CaseKey Key, int Event)> written)
    {
        if (!written.Contains((key, index)) || written.Contains((needed, index))) return;
        problems.Add(line, needed.Path, $"nothing beside {key.Path}", needed.AllowedInFull);
    }

    private void CheckTime(CaseValue at, CaseValue? before, CaseValue? run)
    {
        if (before is not null && at.Number < before.Number)
        {
            string found = $"{Words.Quote(at.Written)} after {Words.Quote(before.Written)}";
            problems.Add(at.Line, CaseKeys.EventAt.Path, found, "events in the order of time");
        }

        if (run is not null && at.Number > run.Number)
        {
            string found = $"{Words.Quote(at.Written)}, after the end of the run";
            problems.Add(at.Line, CaseKeys.EventAt.Path, found, $"up to {CaseKeys.RunDuration.Path}, {run.Written}");
        }
    }
}
