namespace System.Device.Gpio;

/// <summary>An open pin.</summary>
public sealed class GpioPin
{
    internal GpioPin()
    {
    }

    /// <summary>Is called when the pin has changed.</summary>
    public event PinValueChangedEventHandler ValueChanged
    {
        add => throw new NotSupportedException();
        remove => throw new NotSupportedException();
    }

    /// <summary>Its level.</summary>
    public PinValue Read() => throw new NotSupportedException();

    /// <summary>Drives it.</summary>
    /// <exception cref="InvalidOperationException">It is no output.</exception>
    public void Write(PinValue value) => throw new NotSupportedException();
}
