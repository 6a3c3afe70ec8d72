namespace StarterCtl.Sweeps.WorstCase;

/// <summary>The highest peak that was found, and where.</summary>
/// <param name="Amps">Armature current, A.</param>
/// <param name="TorqueNewtonMetres">Torque of this current on that plant, N m.</param>
/// <param name="Cutout">Number of the cutout behind which it flows, from 1; 0: when the line closes.</param>
/// <param name="Point">The plant.</param>
internal sealed record PeakFound(double Amps, double TorqueNewtonMetres, int Cutout, PlantPoint Point);
