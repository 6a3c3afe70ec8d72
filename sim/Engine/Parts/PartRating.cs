namespace StarterCtl.Engine.Parts;

/// <summary>What a resistor can take.</summary>
/// <param name="Watts">Power that it can take for ever, W.</param>
/// <param name="Joules">Energy of one pulse from cold, too short to give heat off, J.</param>
/// <remarks>
/// A time constant T stands for W T joules: a body of one temperature that W watts hold at its rated rise has stored just that
/// much. Any textbook on heating, as the first-order one-body rise.
/// </remarks>
public sealed record PartRating(double Watts, double Joules)
{
    /// <summary>Seconds between two starts.</summary>
    public const double HourSeconds = 3600;

    /// <summary>Part of the rating that starts of equal heat take.</summary>
    /// <param name="joules">Heat in one start, J.</param>
    /// <param name="startsPerHour">Starts an hour, evenly spread.</param>
    /// <returns>1 where the rating is just used up.</returns>
    /// <remarks>
    /// The mean power warms the part by its share of the rated watts before the start comes on top with its share of the joules.
    /// With x = E/(W T) and y the rest between starts over T, the exact highest rise is x/(1 - e^(-y)) of the rated; this is x + x/y,
    /// which is never less.
    /// </remarks>
    public double Share(double joules, double startsPerHour) =>
        joules / Joules + joules * startsPerHour / HourSeconds / Watts;
}
