namespace StarterCtl.Engine.Runs;

/// <summary>An analogue sensor and what is wrong with it.</summary>
/// <param name="Sensor">The sensor.</param>
/// <param name="Kind">Its state from now on.</param>
public sealed record SensorFault(SensorName Sensor, SensorFaultKind Kind);
