using System;

namespace StarterCtl.Engine.Design;

/// <summary>A starter that cannot be designed as asked, and what would mend it.</summary>
public sealed class DesignException : Exception
{
    /// <summary>Names the quantity at fault.</summary>
    /// <param name="quantity">The quantity whose change would mend it first.</param>
    /// <param name="found">What was found, with numbers.</param>
    /// <param name="allowed">What is allowed, with numbers.</param>
    public DesignException(DesignQuantity quantity, string found, string allowed)
        : base($"{quantity}: found {found}; allowed: {allowed}")
    {
        Quantity = quantity;
        Found = found;
        Allowed = allowed;
    }

    /// <summary>The quantity at fault.</summary>
    public DesignQuantity Quantity { get; }

    /// <summary>What was found.</summary>
    public string Found { get; }

    /// <summary>What is allowed.</summary>
    public string Allowed { get; }
}
