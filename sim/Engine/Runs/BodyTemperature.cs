namespace StarterCtl.Engine.Runs;

/// <summary>The course of a body's temperature over a run.</summary>
/// <param name="Body">What it is: "armature winding", "field winding", "section 1".</param>
/// <param name="StartCelsius">Temperature at the beginning, degC.</param>
/// <param name="HighestCelsius">Highest temperature, degC.</param>
/// <param name="FinalCelsius">Temperature at the end, degC.</param>
public sealed record BodyTemperature(string Body, double StartCelsius, double HighestCelsius, double FinalCelsius);
