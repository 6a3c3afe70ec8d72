namespace System.Device.Gpio;

/// <summary>What happened at a pin.</summary>
public class PinValueChangedEventArgs
{
    /// <summary>Builds it.</summary>
    public PinValueChangedEventArgs(PinEventTypes changeType, int pinNumber)
    {
        ChangeType = changeType;
        PinNumber = pinNumber;
    }

    /// <summary>Which edge it was.</summary>
    public PinEventTypes ChangeType { get; }

    /// <summary>Which pin.</summary>
    public int PinNumber { get; }
}
