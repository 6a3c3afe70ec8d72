using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.Running;

/// <summary>Which starts a sweep consists of.</summary>
/// <param name="Method">How the points are chosen.</param>
/// <param name="Count">Number of starts; null: all that the method has.</param>
/// <param name="Seed">From which points, noise and jitter follow, 0 to 1 000 000 000.</param>
/// <param name="Levels">Levels of each variable of a full factorial, 2 or more.</param>
public sealed record SweepOrder(SamplingMethod Method, long? Count, int Seed, int Levels = 3);
