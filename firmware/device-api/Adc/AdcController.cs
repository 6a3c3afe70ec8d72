namespace System.Device.Adc;

/// <summary>The converters of the processor.</summary>
public class AdcController
{
    /// <summary>Largest count.</summary>
    public int MaxValue => throw new NotSupportedException();

    /// <summary>Opens a channel.</summary>
    public AdcChannel OpenChannel(int channelNumber) => throw new NotSupportedException();
}
