namespace System.Device.Gpio;

/// <summary>Which edge it was.</summary>
[Flags]
public enum PinEventTypes
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Low to high.</summary>
    Rising = 1,

    /// <summary>High to low.</summary>
    Falling = 2,
}
