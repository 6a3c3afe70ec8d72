using StarterCtl.Engine;

namespace StarterCtl.Trials.Judging;

/// <summary>The time over which an expectation looks, both ends included.</summary>
/// <param name="FromSeconds">Its beginning, s after the beginning of the case, or after the event.</param>
/// <param name="ToSeconds">Its end, s, likewise; infinity: the end of the run.</param>
/// <param name="After">The event from which both count; null: the beginning of the case.</param>
public sealed record Window(double FromSeconds, double ToSeconds, EventMoment? After)
{
    /// <summary>Whether everything that this window shows is seen in the other one too.</summary>
    public bool LiesIn(Window other) =>
        BeginsSeconds is double from && EndsSeconds is double to && other.BeginsSeconds is double otherFrom && other.EndsSeconds is double otherTo
            ? from >= otherFrom && to <= otherTo
            : Equals(After, other.After) && FromSeconds >= other.FromSeconds && ToSeconds <= other.ToSeconds;

    /// <summary>Its end since the beginning of the case, s; null where only the run will show it.</summary>
    public double? EndsSeconds => After == null ? ToSeconds : After.AtSeconds + ToSeconds;

    /// <summary>In words, empty for the whole run.</summary>
    public string Words
    {
        get
        {
            string after = After == null ? "" : $" after event {After.Number}";
            bool hasEnd = double.IsFinite(ToSeconds), hasBeginning = FromSeconds > 0;
            string from = Text.Number(FromSeconds), to = Text.Number(ToSeconds);
            if (hasEnd && hasBeginning) return $"from {from} to {to} s{after}";
            if (hasEnd) return After == null ? $"up to {to} s" : $"within {to} s{after}";
            return hasBeginning ? $"from {from} s{after} on" : after.TrimStart();
        }
    }

    private double? BeginsSeconds => After == null ? FromSeconds : After.AtSeconds + FromSeconds;
}
