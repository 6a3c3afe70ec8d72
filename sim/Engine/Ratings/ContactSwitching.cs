namespace StarterCtl.Engine.Ratings;

/// <summary>One way in which a contact makes or breaks a current.</summary>
/// <param name="When">What happens: "makes the first peak", "breaks at a stop while running".</param>
/// <param name="IsMaking">True where it closes onto the current.</param>
/// <param name="Amps">Current, A.</param>
/// <param name="Volts">Voltage that drives it at that moment, V: supply less back-EMF, or a section's drop.</param>
/// <param name="TimeConstantSeconds">L/R of the circuit at that moment, s; 0 where a section takes the current over.</param>
public sealed record ContactSwitching(string When, bool IsMaking, double Amps, double Volts, double TimeConstantSeconds);
