namespace StarterCtl.Link;

/// <summary>One thing that the noise of a channel shows.</summary>
/// <param name="Pattern">Name of the pattern.</param>
/// <param name="Found">What was found, with its numbers and the limit.</param>
/// <param name="Meaning">What it usually means.</param>
/// <param name="Remedy">What to do.</param>
public sealed record NoiseFinding(string Pattern, string Found, string Meaning, string Remedy);
