namespace System.Device.Gpio;

/// <summary>A level.</summary>
public readonly struct PinValue
{
    private readonly byte _level;

    private PinValue(byte level) => _level = level;

    /// <summary>High.</summary>
    public static PinValue High => new PinValue(1);

    /// <summary>Low.</summary>
    public static PinValue Low => new PinValue(0);

    /// <summary>True if they are the same.</summary>
    public static bool operator ==(PinValue a, PinValue b) => a._level == b._level;

    /// <summary>True if they differ.</summary>
    public static bool operator !=(PinValue a, PinValue b) => a._level != b._level;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PinValue && (PinValue)obj == this;

    /// <inheritdoc/>
    public override int GetHashCode() => _level;
}
