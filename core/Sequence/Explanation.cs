namespace StarterCtl.Core;

/// <summary>The reason of this tick with its numbers, so that any display can say why without knowing the logic.</summary>
public sealed class Explanation
{
    /// <summary>Why.</summary>
    public Reason Reason;

    /// <summary>Measured quantity or id that belongs to the reason; unit in the reason's description.</summary>
    public float Quantity;

    /// <summary>What the quantity is held against.</summary>
    public float Limit;

    /// <summary>Time left until the reason runs out, microseconds; 0 where no time runs.</summary>
    public int MicrosecondsLeft;

    /// <summary>Sets all four at once.</summary>
    public void Set(Reason reason, float quantity, float limit, int microsecondsLeft)
    {
        Reason = reason;
        Quantity = quantity;
        Limit = limit;
        MicrosecondsLeft = microsecondsLeft;
    }
}
