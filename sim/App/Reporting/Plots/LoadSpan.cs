using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>A load and since when it acts in a run.</summary>
/// <param name="Load">The load.</param>
/// <param name="Words">What stands at its curve.</param>
internal sealed record LoadSpan(Load Load, string Words)
{
    // More curves would not be told apart.
    private const int MostLoads = 6;
    private const int MostTimes = 2;

    /// <summary>The loads of a run in the order in which they first act; of many, the first ones and the last.</summary>
    public static IReadOnlyList<LoadSpan> Of(RunSetup setup)
    {
        List<(double Torque, double Seconds)> changes = [(setup.Load.ConstantNewtonMetres, 0)];
        foreach (RunEvent happening in setup.Events.Where(happening => happening.AtSeconds < setup.DurationSeconds))
        {
            if (happening.LoadTorqueNewtonMetres is not double torque) continue;
            if (happening.AtSeconds <= changes[^1].Seconds) changes.RemoveAt(changes.Count - 1);
            if (changes.Count == 0 || changes[^1].Torque != torque) changes.Add((torque, happening.AtSeconds));
        }

        if (changes.Count == 1) return [new LoadSpan(setup.Load with { ConstantNewtonMetres = changes[0].Torque }, "load")];
        LoadSpan[] spans = [.. changes.GroupBy(change => change.Torque, (torque, times) => new LoadSpan(
            setup.Load with { ConstantNewtonMetres = torque },
            Name([.. times.Select(time => Quantity.Seconds(time.Seconds))])))];
        return spans.Length <= MostLoads ? spans : [.. spans[..(MostLoads - 1)], spans[^1]];
    }

    private static string Name(string[] times) => "load from " + string.Join(", ", times.Take(MostTimes)) + (times.Length > MostTimes ? " …" : "");
}
