namespace System.Device.Gpio;

/// <summary>The pins of the processor.</summary>
public sealed class GpioController
{
    /// <summary>Opens a pin.</summary>
    /// <exception cref="InvalidOperationException">It is open already.</exception>
    /// <exception cref="ArgumentException">It cannot be this.</exception>
    public GpioPin OpenPin(int pinNumber, PinMode mode) => throw new NotSupportedException();
}
