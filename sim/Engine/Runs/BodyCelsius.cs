using System.Collections.Generic;

namespace StarterCtl.Engine.Runs;

/// <summary>Temperatures of everything that warms up, at one moment.</summary>
/// <param name="Armature">Armature winding, degC; of no meaning where it does not warm up.</param>
/// <param name="Field">Field winding, degC; likewise.</param>
/// <param name="Sections">Sections, degC, as many as warm up, first cut out first.</param>
public sealed record BodyCelsius(double Armature, double Field, IReadOnlyList<double> Sections);
