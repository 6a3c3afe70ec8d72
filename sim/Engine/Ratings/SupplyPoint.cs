namespace StarterCtl.Engine.Ratings;

/// <summary>What one current does to bus and cable.</summary>
/// <param name="Name">What the current is: "rated", "peak".</param>
/// <param name="LineAmps">Current from the bus, A, a shunt winding's included.</param>
/// <param name="CableVolts">Drop in the cable there and back, V.</param>
/// <param name="CableFraction">The same as a part of the supply voltage.</param>
/// <param name="BusDipFraction">Drop in the supply's own resistance as a part of its voltage: the dip that everybody on the bus sees.</param>
/// <param name="TerminalVolts">What is left at the starter's input terminals, V.</param>
public sealed record SupplyPoint(string Name, double LineAmps, double CableVolts, double CableFraction, double BusDipFraction, double TerminalVolts);
