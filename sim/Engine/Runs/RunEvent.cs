namespace StarterCtl.Engine.Runs;

/// <summary>Something that happens to the machine or the panel at a time. What is null does not change.</summary>
/// <param name="AtSeconds">When, s from the start of the case.</param>
/// <param name="LoadTorqueNewtonMetres">New constant load torque, N m.</param>
/// <param name="SupplyVolts">New open-circuit voltage, V.</param>
/// <param name="Command">What the operator does.</param>
public sealed record RunEvent(double AtSeconds, double? LoadTorqueNewtonMetres, double? SupplyVolts, OperatorCommand? Command);
