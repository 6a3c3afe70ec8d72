using System.Collections.Generic;
using StarterCtl.Link;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a channel's noise.</summary>
/// <param name="Noise">What the board recorded, counts.</param>
/// <param name="Findings">What it shows; empty where all is well.</param>
public sealed record ChannelNoiseJson(ChannelNoise Noise, IReadOnlyList<NoiseFinding> Findings);
