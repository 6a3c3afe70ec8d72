using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Speed from a tacho generator at an analogue channel in rad/s, of either direction. Error and delay are the channel's. Near zero it cannot
/// tell a shaft that stands from one that turns slowly, nor from a coupling that slips: there time and current decide.
/// </summary>
/// <remarks>
/// Above the least speed what is read is known. Below it what is read still counts until the time-out, and then the speed is unknown.
/// Zero only without current for the standstill time; from there a current that comes finds the shaft at rest until the time-out. A
/// channel that was not read, and power-up, leave the speed unknown until one of the two is seen.
/// </remarks>
public sealed class TachoSpeed : ISpeedSource
{
    private readonly AnalogChannel _channel;
    private readonly StandstillSetup _setup;
    private readonly Persistence _withoutCurrent = new Persistence();
    private int _belowMicroseconds = Elapsed.Ceiling;

    /// <summary>Builds it.</summary>
    /// <param name="channel">The generator's channel.</param>
    /// <param name="setup">What it cannot tell, and what holds then.</param>
    public TachoSpeed(AnalogChannel channel, StandstillSetup setup)
    {
        _channel = channel;
        _setup = setup;
    }

    /// <inheritdoc/>
    public float RadPerSec { get; private set; }

    /// <inheritdoc/>
    public bool IsValid { get; private set; }

    /// <inheritdoc/>
    public void Update(int nowMicroseconds, int elapsedMicroseconds, float armatureAmps)
    {
        elapsedMicroseconds = Elapsed.Clamp(elapsedMicroseconds);
        _channel.Update(elapsedMicroseconds);
        bool isRead = _channel.Fault == AnalogFault.None;
        bool isBelow = isRead && Magnitude.Of(_channel.Units) <= _setup.LeastRadPerSec;
        bool isStill = isBelow && Magnitude.Of(armatureAmps) <= _setup.ZeroAmps;
        bool stands = _withoutCurrent.Lasts(isStill, elapsedMicroseconds, _setup.StandstillMicroseconds);
        if (!isRead) _belowMicroseconds = Elapsed.Ceiling;
        else if (stands || !isBelow) _belowMicroseconds = 0;
        else _belowMicroseconds = Elapsed.Add(_belowMicroseconds, elapsedMicroseconds);

        IsValid = isRead && _belowMicroseconds <= _setup.TimeOutMicroseconds;
        RadPerSec = stands ? 0f : _channel.Units;
    }
}
