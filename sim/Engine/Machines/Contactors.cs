namespace StarterCtl.Engine.Machines;

/// <summary>Time from a coil's command to its main contact.</summary>
/// <param name="ClosingSeconds">From command to contact closed, s, 0 or more.</param>
/// <param name="OpeningSeconds">From command to contact open, s, 0 or more.</param>
public sealed record Contactors(double ClosingSeconds, double OpeningSeconds);
