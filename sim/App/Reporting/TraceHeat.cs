using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting;

/// <summary>Heat of the armature circuit, summed over the trace of a run.</summary>
internal static class TraceHeat
{
    /// <summary>Heat in armature and brushes from the begin of the run to a time, J.</summary>
    /// <param name="study">The study.</param>
    /// <param name="endSeconds">The time, s; the sum ends there and not at the nearest sample.</param>
    public static double ArmatureJoules(StartStudy study, double endSeconds)
    {
        Machine machine = study.Setup.Machine;
        double sharedOhms = study.Setup.Field?.SharedOhms ?? 0;
        double joules = 0;
        Sample? last = null;
        foreach (Sample sample in study.Trace.Samples)
        {
            if (last is Sample before && sample.TimeSeconds > before.TimeSeconds)
            {
                double span = sample.TimeSeconds - before.TimeSeconds, part = Math.Min(1, (endSeconds - before.TimeSeconds) / span);
                double watts = Watts(machine, sharedOhms, before), change = Watts(machine, sharedOhms, sample) - watts;
                joules += span * part * (watts + change * part / 2);
            }

            if (sample.TimeSeconds >= endSeconds) break;
            last = sample;
        }

        return joules;
    }

    // A short shunt's series winding carries both currents.
    private static double Watts(Machine machine, double sharedOhms, Sample sample)
    {
        double amps = Math.Abs((double)sample.ArmatureAmps);
        return amps * (amps * machine.ArmatureOhms + machine.BrushDropVolts) + sharedOhms * (amps + sample.FieldAmps) * (amps + sample.FieldAmps);
    }
}
