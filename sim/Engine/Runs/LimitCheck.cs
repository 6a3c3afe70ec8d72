namespace StarterCtl.Engine.Runs;

/// <summary>One limit and what the run made of it.</summary>
/// <param name="Name">What is checked.</param>
/// <param name="Passed">True when it holds.</param>
/// <param name="Seen">What was seen, with unit.</param>
/// <param name="Limit">What is allowed, with unit.</param>
public sealed record LimitCheck(string Name, bool Passed, string Seen, string Limit);
