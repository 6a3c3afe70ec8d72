using System.Collections.Generic;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Bundles;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a bundle's check. Extend, never rename.</summary>
public sealed record BundleJson(string Verdict, IReadOnlyList<LimitCheck> Checks, BundleManifest Manifest);
