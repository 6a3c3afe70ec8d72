namespace StarterCtl.Firmware;

/// <summary>One digital input of the board.</summary>
public interface IDigitalInput
{
    /// <summary>The level at the pin: true is high.</summary>
    bool Read();
}
