namespace StarterCtl.Engine.Cases;

/// <summary>How the value of a key is written.</summary>
public enum CaseValueKind
{
    /// <summary>Free text on one line, in quotes.</summary>
    Text,

    /// <summary>One of a few fixed texts, in quotes.</summary>
    Choice,

    /// <summary>A number with its unit, in quotes.</summary>
    Quantity,

    /// <summary>A list of numbers, each with its unit.</summary>
    Quantities,

    /// <summary>A whole number without quotes or unit.</summary>
    Count,

    /// <summary>A plain number without quotes or unit.</summary>
    Ratio,
}
