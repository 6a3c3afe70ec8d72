using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Export;

/// <summary>One figure that the netlist prints and that our own solver has too.</summary>
/// <param name="Name">Its name in the netlist's print-out, with the unit: cutout_1_seconds.</param>
/// <param name="Own">What our own solver says, SI except where the name says otherwise.</param>
public sealed record SpiceFigure(string Name, double Own)
{
    /// <summary>The figures of a run, in the order in which the netlist prints them.</summary>
    /// <param name="run">The run.</param>
    public static IReadOnlyList<SpiceFigure> Of(RunResult run) =>
    [
        .. run.Cutouts.Select(cutout => new SpiceFigure($"cutout_{cutout.Stage}_seconds", cutout.Seconds)),
        .. run.Cutouts.Select(cutout => new SpiceFigure($"peak_after_{cutout.Stage}_amps", cutout.PeakAmpsAfter)),
        new SpiceFigure("peak_amps", run.PeakAmps),
        new SpiceFigure("final_rpm", run.FinalRpm),
        new SpiceFigure("final_amps", run.FinalAmps),
    ];
}
