namespace StarterCtl.Engine.Records;

/// <summary>Takes a number out of a sample.</summary>
/// <param name="sample">The sample.</param>
public delegate double SampleNumber(in Sample sample);
