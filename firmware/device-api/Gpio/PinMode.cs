namespace System.Device.Gpio;

/// <summary>What a pin is.</summary>
public enum PinMode
{
    /// <summary>Input.</summary>
    Input,

    /// <summary>Input with a resistor to 0 V.</summary>
    InputPullDown,

    /// <summary>Input with a resistor to the supply.</summary>
    InputPullUp,

    /// <summary>Output.</summary>
    Output,
}
