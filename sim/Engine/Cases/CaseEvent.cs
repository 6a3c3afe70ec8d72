namespace StarterCtl.Engine.Cases;

/// <summary>Something that happens to the drive during a run. What is null does not change.</summary>
/// <param name="AtSeconds">Time since the run began, s; 0 or more.</param>
/// <param name="LoadTorqueNewtonMetres">New constant load torque, N m; 0 or more.</param>
/// <param name="SupplyVolts">New open-circuit supply voltage, V; 0 or more.</param>
/// <param name="Command">What the operator does, one of the choices of <see cref="CaseKeys.EventCommand"/>.</param>
/// <param name="Line">Line of the case file on which the event begins.</param>
public sealed record CaseEvent(
    double AtSeconds, double? LoadTorqueNewtonMetres, double? SupplyVolts, string? Command, int Line);
