namespace StarterCtl.Engine.Cases;

/// <summary>What the limits of a tolerance are counted from.</summary>
public enum ToleranceBasis
{
    /// <summary>From nothing: they are values of the quantity, SI.</summary>
    Value,

    /// <summary>From the nominal value, SI.</summary>
    Deviation,

    /// <summary>From the nominal value, as a part of it.</summary>
    Ratio,
}
