using System.Collections.Generic;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>A simulated start from given temperatures, by the real controller on the real circuit.</summary>
/// <param name="Result">What it came to.</param>
/// <param name="Seconds">Its length, s.</param>
/// <param name="FullSupplySeconds">When all resistance was out, s; null: never within its length.</param>
public sealed record HeatedStart(RunResult Result, double Seconds, double? FullSupplySeconds)
{
    /// <summary>Temperature of each body at the beginning, degC.</summary>
    public IReadOnlyList<BodyTemperature> Bodies => Result.Temperatures;
}
