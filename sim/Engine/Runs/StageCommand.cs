namespace StarterCtl.Engine.Runs;

/// <summary>A stage that the controller commanded out.</summary>
/// <param name="Stage">1 for the first.</param>
/// <param name="Seconds">When, s.</param>
public sealed record StageCommand(int Stage, double Seconds);
