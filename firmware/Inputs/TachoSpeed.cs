namespace StarterCtl.Firmware;

/// <summary>Speed from a tacho generator at an analogue channel in rad/s, of either direction. Error and delay are the channel's.</summary>
public sealed class TachoSpeed : ISpeedSource
{
    private readonly AnalogChannel _channel;

    /// <summary>Builds it.</summary>
    public TachoSpeed(AnalogChannel channel)
    {
        _channel = channel;
    }

    /// <inheritdoc/>
    public float RadPerSec => _channel.Units;

    /// <inheritdoc/>
    public bool IsValid => _channel.Fault == AnalogFault.None;

    /// <inheritdoc/>
    public void Update(int nowMicroseconds, int elapsedMicroseconds, float armatureAmps) => _channel.Update(elapsedMicroseconds);
}
