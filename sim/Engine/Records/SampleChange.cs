namespace StarterCtl.Engine.Records;

/// <summary>Puts a number into a sample.</summary>
/// <param name="sample">The sample.</param>
/// <param name="number">The number, as <see cref="Signal.Number"/> gives it.</param>
public delegate void SampleChange(ref Sample sample, double number);
