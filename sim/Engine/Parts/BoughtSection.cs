using System.Collections.Generic;

namespace StarterCtl.Engine.Parts;

/// <summary>A section made of parts.</summary>
/// <param name="Stage">The stage whose contactor shorts it.</param>
/// <param name="WantedOhms">What the design with sections of any value has there, ohm.</param>
/// <param name="Network">The parts.</param>
/// <param name="WorstVolts">Voltage across it when the current is highest while it is in, V.</param>
/// <param name="Burdens">What each part has to take.</param>
public sealed record BoughtSection(int Stage, double WantedOhms, PartNetwork Network, double WorstVolts, IReadOnlyList<PartBurden> Burdens);
