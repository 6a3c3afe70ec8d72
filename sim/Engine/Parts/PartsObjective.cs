namespace StarterCtl.Engine.Parts;

/// <summary>What a choice of parts is to have least of; the others follow in the order of this list.</summary>
public enum PartsObjective
{
    /// <summary>The highest current of the start.</summary>
    Peak,

    /// <summary>The price of all parts.</summary>
    Price,

    /// <summary>The number of parts.</summary>
    Count,
}
