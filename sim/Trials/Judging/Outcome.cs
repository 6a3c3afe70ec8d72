namespace StarterCtl.Trials.Judging;

/// <summary>What became of an expectation.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Passed">True when it holds.</param>
/// <param name="Seen">What was seen and when, with unit.</param>
/// <param name="Limit">What is allowed, with unit.</param>
public sealed record Outcome(string Name, bool Passed, string Seen, string Limit);
