using StarterCtl.Engine.Parts;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what a part has to take. Extend, never rename.</summary>
public sealed record PartBurdenJson(string Part, double Ohms, double? RatedWatts, double? RatedJoules, double? Joules, double? MeanWatts, double? RatingShare, double WorstVolts)
{
    /// <summary>The shape of a burden.</summary>
    public static PartBurdenJson Of(PartBurden burden) =>
        new(burden.Part.Name, burden.Part.Ohms, burden.Part.Rating?.Watts, burden.Part.Rating?.Joules, burden.Joules, burden.MeanWatts, burden.Share, burden.WorstVolts);
}
