using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>Finds how many starts a case permits.</summary>
internal sealed class DutyPlanner
{
    private const int MostDrawn = 60;
    private const double DrawnKelvin = 0.5;

    private readonly CaseFile _file;
    private readonly PreparedRun _prepared;
    private readonly HeatedStart _settled;
    private readonly HeatLaw _law;
    private readonly DutyCycles _cycles;
    private readonly CycleTimes _alone;
    private readonly double _runSeconds;

    /// <summary>Takes over what is known of the start.</summary>
    /// <param name="file">The case.</param>
    /// <param name="prepared">The case, prepared.</param>
    /// <param name="runner">Simulates starts of it.</param>
    /// <param name="settled">Its start from cold.</param>
    /// <param name="aloneSeconds">Length of a start that is stopped as soon as the full supply is reached, s.</param>
    public DutyPlanner(CaseFile file, PreparedRun prepared, StartRunner runner, HeatedStart settled, double aloneSeconds)
    {
        _file = file;
        _prepared = prepared;
        _settled = settled;
        _law = new HeatLaw(file, prepared.Setup, settled);
        _alone = new CycleTimes(aloneSeconds, 0);
        _runSeconds = file.Has(CaseKeys.DutyRunTime) ? file.Number(CaseKeys.DutyRunTime) : aloneSeconds;
        _cycles = new DutyCycles(runner, _law, settled.Seconds);
    }

    /// <summary>Looks at everything.</summary>
    public DutyStudy Study()
    {
        (int? consecutive, string consecutiveExcess, CycleHeat first) = Consecutive();
        (int starts, CycleHeat? atStarts, string startsExcess) = StartsPerHour();
        GivenDuty? duty = TimesOf() is CycleTimes times ? Duty(times) : null;
        return new DutyStudy
        {
            Bodies = _law.Bodies,
            AmbientCelsius = _law.AmbientCelsius,
            FirstStart = first,
            StartSeconds = _alone.RunSeconds,
            ConsecutiveStarts = consecutive,
            ConsecutiveExcess = consecutiveExcess,
            RunSeconds = _runSeconds,
            StartsPerHour = starts,
            AtStartsPerHour = atStarts,
            StartsExcess = startsExcess,
            Duty = duty,
            SimulatedStarts = _cycles.Simulated,
        };
    }

    private (int? Count, string Excess, CycleHeat First) Consecutive()
    {
        CycleHeat? first = null;
        int count = 0;
        foreach (CycleHeat cycle in _cycles.FromCold(_alone, DutyStudy.MostConsecutive))
        {
            first ??= cycle;
            string excess = _cycles.Excess(cycle);
            if (excess.Length > 0) return (count, excess, first);
            count++;
        }

        return (null, "", first!);
    }

    // More starts never leave anything cooler, so the last count without an excess is found by halving.
    private (int Starts, CycleHeat? Steady, string Excess) StartsPerHour()
    {
        int permitted = 0, refused = CycleTimes.MostStarts(_runSeconds) + 1;
        CycleHeat? at = null;
        string excess = "";
        // Most answers are small numbers: doubling finds their neighbourhood sooner than the middle of the hour.
        for (int tried = 1; refused - permitted > 1; tried = refused > 2 * Math.Max(permitted, 1) + 1 && excess.Length == 0 ? 2 * permitted : (permitted + refused) / 2)
        {
            CycleHeat? steady = _cycles.Steady(CycleTimes.Evenly(_runSeconds, tried));
            string found = _cycles.Excess(steady);
            if (found.Length == 0) (permitted, at) = (tried, steady);
            else (refused, excess) = (tried, found);
        }

        return (permitted, at, excess);
    }

    private CycleTimes? TimesOf()
    {
        if (_file.Has(CaseKeys.DutyStartsPerHour)) return CycleTimes.Evenly(_runSeconds, _file.Count(CaseKeys.DutyStartsPerHour));
        return _file.Has(CaseKeys.DutyRest) ? new CycleTimes(_runSeconds, _file.Number(CaseKeys.DutyRest)) : null;
    }

    private GivenDuty Duty(CycleTimes times)
    {
        CycleHeat? steady = _cycles.Steady(times);
        List<CycleHeat> drawn = [];
        int? count = null;
        int done = 0;
        bool isPermitted = _cycles.Excess(steady).Length == 0;
        foreach (CycleHeat cycle in _cycles.FromCold(times, DutyStudy.MostConsecutive))
        {
            if (count == null && _cycles.Excess(cycle).Length > 0) count = done;
            if (drawn.Count < MostDrawn) drawn.Add(cycle);
            done++;
            bool hasSettled = cycle.StartCelsius.Zip(cycle.EndCelsius).All(pair => Math.Abs(pair.First - pair.Second) < DrawnKelvin);
            if (count != null || hasSettled || (isPermitted && drawn.Count == MostDrawn)) break;
        }

        return new GivenDuty(times, steady, drawn, isPermitted ? null : count, _cycles.Excess(steady), ClassOf(times, steady));
    }

    private DutyClass ClassOf(CycleTimes times, CycleHeat? steady)
    {
        Machine machine = _prepared.Setup.Machine;
        double? above = steady != null && _law.Armature != null ? steady.StartCelsius[0] - _law.AmbientCelsius : null;
        // What the start adds to the current that the load takes anyhow.
        double amps = _settled.Result.FinalAmps, start = _settled.Result.RmsAmps * _settled.Result.RmsAmps * _settled.Seconds;
        double run = amps * amps * Math.Max(0, times.RunSeconds - _settled.Seconds);
        double share = Math.Max(0, start - amps * amps * _settled.Seconds) / (start + run);
        double load = _prepared.Setup.LoadInertiaKgM2;
        return DutyClass.Of(times, machine.InertiaKgM2 - load, load, _prepared.Setup.BrakeOhms != null, above, share);
    }
}
