using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Runs;

/// <summary>A run held against its limits.</summary>
/// <param name="Checks">Every limit, in a fixed order.</param>
public sealed record Verdict(IReadOnlyList<LimitCheck> Checks)
{
    /// <summary>True when every check passed.</summary>
    public bool Passed => Checks.All(check => check.Passed);

    /// <summary>"pass" or "fail".</summary>
    public string Word => Passed ? "pass" : "fail";
}
