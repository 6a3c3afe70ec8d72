using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>Holds the trip classes of IEC 60947-4-1 against a start, by the controller's own thermal image.</summary>
internal sealed class OverloadChooser
{
    // Room for a low supply, a stiff load, a sensor that reads high: common practice, no source.
    private const double MostLevel = 0.95;
    private const double MultipleStep = 1.02;

    // Below it the standard does not ask for a trip: CHK-17.
    private const double FirstMultiple = 1.2;

    private readonly PreparedRun _prepared;
    private readonly CaseFile _file;
    private readonly Record _start;
    private readonly double _runningAmps;
    private readonly double _settingAmps;

    private OverloadChooser(PreparedRun prepared, Record start, double runningAmps, double settingAmps)
    {
        _prepared = prepared;
        _file = prepared.Designed.File;
        _start = start;
        _runningAmps = runningAmps;
        _settingAmps = settingAmps;
    }

    /// <summary>Chooses.</summary>
    /// <param name="prepared">The case.</param>
    /// <param name="start">Samples of its start from cold.</param>
    /// <param name="runningAmps">Current that the load takes once it runs, A.</param>
    /// <param name="duty">Times of the case's duty; null: none.</param>
    /// <returns>Null where neither an overload current nor a rated current is given.</returns>
    public static OverloadChoice? Of(PreparedRun prepared, Record start, double runningAmps, CycleTimes? duty)
    {
        CaseFile file = prepared.Designed.File;
        double? setting = file.Has(CaseKeys.ProtectionOverloadCurrent) ? file.Number(CaseKeys.ProtectionOverloadCurrent) : prepared.Designed.Plate.RatedAmps;
        return setting is double amps ? new OverloadChooser(prepared, start, runningAmps, amps).Choose(duty) : null;
    }

    private OverloadChoice Choose(CycleTimes? duty)
    {
        CopperBody? winding = WindingOf(_prepared);
        double? limit = winding != null && _file.Has(CaseKeys.MotorWindingTemperatureLimit) ? _file.Number(CaseKeys.MotorWindingTemperatureLimit) : null;
        double? hot = limit != null && winding!.Steady(_settingAmps) is double steady && steady < limit ? steady : null;
        OverloadRow[] rows = [.. TripClass.All.Select(one => RowOf(one, duty, winding, limit, hot))];
        OverloadRow? chosen = rows.FirstOrDefault(row => row.Objection.Length == 0);
        return new OverloadChoice
        {
            SettingAmps = _settingAmps,
            Rows = rows,
            Chosen = chosen?.Class,
            Why = WhyOf(rows, chosen, limit),
            Set = _file.Has(CaseKeys.ProtectionOverloadCurrent) ? TripClass.Named(_file.Text(CaseKeys.ProtectionOverloadClass)) : null,
            InstantTripAmps = _prepared.Settings.InstantTripAmps,
            DirectAmps = _prepared.Designed.Design.DirectStartAmps,
            Winding = limit == null ? null : winding,
            LimitCelsius = limit,
            HotCelsius = hot,
            Start = [.. _start.Samples.Select(sample => (sample.TimeSeconds, (double)sample.ArmatureAmps))],
        };
    }

    private static CopperBody? WindingOf(PreparedRun prepared) => prepared.Setup.Heat is { Armature: not null } heat
        ? new CopperBody(heat.Armature, prepared.Setup.Machine.ArmatureOhms + (prepared.Setup.Field?.SharedOhms ?? 0), heat.WindingCelsius, heat.AmbientCelsius)
        : null;

    private OverloadRow RowOf(TripClass one, CycleTimes? duty, CopperBody? winding, double? limit, double? hot)
    {
        const double Balance = 1 / (TripClass.UltimateRatio * TripClass.UltimateRatio);
        double cold = HighestLevel(one, 0).Highest, warm = HighestLevel(one, Balance).Highest;
        (double Start, double Highest)? inDuty = duty == null ? null : InDuty(one, duty);
        double? unprotected = limit is double celsius ? Unprotected(one, winding!, celsius, hot) : null;
        string objection = cold > MostLevel ? $"a cold start takes the image to {Text.Number(cold)}"
            : warm > MostLevel ? $"a start after long running at the setting takes the image to {Text.Number(warm)}"
            : inDuty?.Highest > MostLevel ? $"the duty takes the image to {Text.Number(inDuty.Value.Highest)}"
            : inDuty?.Start >= _prepared.Settings.OverloadResetRatio ? $"in the duty the image is still at {Text.Number(inDuty.Value.Start)} when start is pressed, which is refused"
            : unprotected is double multiple ? $"at {Text.Number(multiple)} times the setting it trips later than the winding bears" : "";
        return new OverloadRow(one, cold, warm, inDuty?.Highest, inDuty?.Start, unprotected, objection);
    }

    // The controller's image, fed with what the current was on the way up.
    private (double Highest, double Last) HighestLevel(TripClass one, double from)
    {
        ThermalImage image = new((float)one.Seconds) { Level = (float)from };
        double perSquareAmp = 1 / (TripClass.UltimateRatio * TripClass.UltimateRatio * _settingAmps * _settingAmps);
        double highest = from;
        foreach (Sample sample in _start.Samples)
        {
            image.Advance((int)_start.PeriodMicroseconds, (float)(sample.ArmatureAmps * sample.ArmatureAmps * perSquareAmp));
            highest = Math.Max(highest, image.Level);
        }

        return (highest, image.Level);
    }

    // From start to start the level goes as s L + h: it ends at h / (1 - s).
    private (double Start, double Highest) InDuty(TripClass one, CycleTimes duty)
    {
        double tail = Math.Max(0, duty.RunSeconds - _start.Samples[^1].TimeSeconds);
        double target = _runningAmps * _runningAmps / (TripClass.UltimateRatio * TripClass.UltimateRatio * _settingAmps * _settingAmps);
        double afterRun = Math.Exp(-tail / one.Seconds), afterRest = Math.Exp(-duty.RestSeconds / one.Seconds);
        double Stop(double from) => target + (HighestLevel(one, from).Last - target) * afterRun;
        double at0 = Stop(0) * afterRest, slope = Stop(1) * afterRest - at0, start = at0 / (1 - slope);
        return (start, Math.Max(HighestLevel(one, start).Highest, Stop(start)));
    }

    private double? Unprotected(TripClass one, CopperBody winding, double limit, double? hot)
    {
        double most = _prepared.Settings.InstantTripAmps / _settingAmps;
        for (double multiple = FirstMultiple; multiple <= most; multiple *= MultipleStep)
        {
            double amps = multiple * _settingAmps;
            if (one.TripSeconds(multiple, 0) > winding.SecondsTo(limit, winding.AmbientCelsius, amps)) return multiple;
            if (hot is double from && one.TripSeconds(multiple, 1) > winding.SecondsTo(limit, from, amps)) return multiple;
        }

        return null;
    }

    private static string WhyOf(OverloadRow[] rows, OverloadRow? chosen, double? limit)
    {
        if (chosen == null) return "none of the four: " + string.Join("; ", rows.Select(row => $"{row.Class.Name}: {row.Objection}"));
        string why = chosen == rows[0] ? "the fastest of the four bears every start" : "the fastest that bears every start; " + string.Join("; ", rows.TakeWhile(row => row != chosen).Select(row => $"{row.Class.Name}: {row.Objection}"));
        return why + (limit == null ? "; whether it protects the winding nobody knows without motor.thermal-capacity and motor.winding-temperature-limit"
            : ", and up to the instantaneous trip it trips before the winding is too hot");
    }
}
