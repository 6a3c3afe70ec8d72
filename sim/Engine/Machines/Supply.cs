namespace StarterCtl.Engine.Machines;

/// <summary>A DC supply: an open-circuit voltage behind a resistance.</summary>
/// <param name="OpenCircuitVolts">Voltage without current, V, 0 or more.</param>
/// <param name="SourceOhms">Resistance up to the starter's input terminals, ohm, 0 or more.</param>
public sealed record Supply(double OpenCircuitVolts, double SourceOhms);
