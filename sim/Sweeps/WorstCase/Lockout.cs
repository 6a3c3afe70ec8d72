namespace StarterCtl.Sweeps.WorstCase;

/// <summary>What holds a cutout back beside the back-EMF.</summary>
/// <param name="Amps">Current above which no stage is cut out, A; infinity: none.</param>
/// <param name="DwellSeconds">Least time in a stage, s: before it ends the current may still be on its way up.</param>
internal readonly record struct Lockout(double Amps, double DwellSeconds);
