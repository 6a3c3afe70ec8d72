namespace System.Device.Adc;

/// <summary>An open channel.</summary>
public class AdcChannel
{
    internal AdcChannel()
    {
    }

    /// <summary>Converts once.</summary>
    /// <exception cref="ObjectDisposedException">It was closed.</exception>
    public int ReadValue() => throw new NotSupportedException();
}
