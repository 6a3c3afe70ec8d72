namespace StarterCtl.Engine.Machines;

/// <summary>What one body of one temperature does with heat.</summary>
/// <param name="JoulesPerKelvin">Thermal capacity C, J/K, above 0.</param>
/// <param name="CoolingSeconds">Time constant C Rth with which it cools, s, above 0; infinity: it keeps its heat.</param>
public sealed record ThermalMass(double JoulesPerKelvin, double CoolingSeconds);
