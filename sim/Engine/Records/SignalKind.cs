namespace StarterCtl.Engine.Records;

/// <summary>What the values of a signal are.</summary>
public enum SignalKind
{
    /// <summary>Numbers in double precision.</summary>
    LongReal,

    /// <summary>Numbers in single precision, as the controller has them.</summary>
    Real,

    /// <summary>Whole numbers.</summary>
    Whole,

    /// <summary>Up to 16 switches in one number, bit 0 the first.</summary>
    Bits,

    /// <summary>On or off.</summary>
    Switch,

    /// <summary>One of the words of a list.</summary>
    Id,
}
