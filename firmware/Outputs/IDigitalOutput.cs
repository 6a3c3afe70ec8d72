namespace StarterCtl.Firmware;

/// <summary>One digital output of the board.</summary>
public interface IDigitalOutput
{
    /// <summary>Drives the pin: true is high.</summary>
    void Write(bool isHigh);

    /// <summary>The level that the pin really has: true is high.</summary>
    bool Read();
}
