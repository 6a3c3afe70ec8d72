namespace StarterCtl.Engine.Ratings;

/// <summary>What warms up, with its limit.</summary>
/// <param name="Name">"armature winding", "field winding", "section 1".</param>
/// <param name="LimitCelsius">Highest mean temperature that it may have, degC; null: the case gives no limit.</param>
/// <param name="HotSpotFactor">Rise of its hottest spot over its mean rise, 1 or more.</param>
public sealed record WarmBody(string Name, double? LimitCelsius, double HotSpotFactor)
{
    /// <summary>Temperature of its hottest spot, degC.</summary>
    /// <param name="celsius">Its mean temperature, degC.</param>
    /// <param name="ambientCelsius">Temperature around it, degC.</param>
    public double HotSpot(double celsius, double ambientCelsius) => ambientCelsius + HotSpotFactor * (celsius - ambientCelsius);

    /// <summary>Whether a mean temperature passes the limit.</summary>
    public bool IsPassedBy(double celsius) => celsius > LimitCelsius;
}
