namespace StarterCtl.Engine.Records;

/// <summary>Who a signal comes from.</summary>
public enum SignalRole
{
    /// <summary>The record's own clock.</summary>
    Time,

    /// <summary>What the controller was given; a replay feeds it.</summary>
    Reading,

    /// <summary>What the controller made of it; a replay compares it.</summary>
    Decision,

    /// <summary>What only a simulation knows.</summary>
    Plant,
}
