using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>A load that stands still and since when it acts in a run.</summary>
/// <param name="Load">The load.</param>
/// <param name="Words">What stands at its curve.</param>
internal sealed record LoadSpan(Load Load, string Words)
{
    // More curves would not be told apart.
    private const int MostLoads = 6;
    private const int MostTimes = 2;

    /// <summary>The loads that stand in a run, in the order in which they first act; of many, the first ones and the last.</summary>
    public static IReadOnlyList<LoadSpan> Of(RunSetup setup)
    {
        RunEvent[] happenings = Changes(setup);
        List<(Load Load, double Seconds)> changes = [(setup.Load, 0)];
        Load load = setup.Load;
        double constantStands = 0, hoistStands = 0;
        for (int i = 0; i < happenings.Length; i++)
        {
            RunEvent happening = happenings[i];
            double arrives = happening.AtSeconds + happening.OverSeconds;
            if (happening.LoadTorqueNewtonMetres != null) constantStands = arrives;
            if (happening.HoistNewtonMetres != null) hoistStands = arrives;
            load = load with
            {
                ConstantNewtonMetres = happening.LoadTorqueNewtonMetres ?? load.ConstantNewtonMetres,
                HoistNewtonMetres = happening.HoistNewtonMetres ?? load.HoistNewtonMetres,
            };
            // One that is still on its way when the next comes never stands.
            double stands = Math.Max(happening.AtSeconds, Math.Max(constantStands, hoistStands));
            double next = i + 1 < happenings.Length ? happenings[i + 1].AtSeconds : setup.DurationSeconds;
            if (stands > happening.AtSeconds && stands >= next) continue;
            if (stands <= changes[^1].Seconds) changes.RemoveAt(changes.Count - 1);
            if (changes.Count == 0 || changes[^1].Load != load) changes.Add((load, stands));
        }

        if (changes.Count == 1) return [new LoadSpan(changes[0].Load, "load")];
        LoadSpan[] spans = [.. changes.GroupBy(change => change.Load, (standing, times) => new LoadSpan(
            standing,
            Name([.. times.Select(time => Quantity.Seconds(time.Seconds))])))];
        return spans.Length <= MostLoads ? spans : [.. spans[..(MostLoads - 1)], spans[^1]];
    }

    /// <summary>When the load is on its way from one value to another, s.</summary>
    public static IEnumerable<(double From, double To)> Ramps(RunSetup setup) =>
        Changes(setup).Where(happening => happening.OverSeconds > 0).Select(happening => (happening.AtSeconds, happening.AtSeconds + happening.OverSeconds));

    private static RunEvent[] Changes(RunSetup setup) =>
    [
        .. setup.Events.Where(happening =>
            happening.AtSeconds < setup.DurationSeconds && (happening.LoadTorqueNewtonMetres != null || happening.HoistNewtonMetres != null)),
    ];

    private static string Name(string[] times) => "load from " + string.Join(", ", times.Take(MostTimes)) + (times.Length > MostTimes ? " …" : "");
}
