namespace StarterCtl.Firmware;

/// <summary>A contact at a digital input, by its wiring and without its bounces.</summary>
public sealed class ContactInput
{
    private readonly IDigitalInput _input;
    private readonly bool _isActiveLow;
    private readonly Debounce _debounce;

    /// <summary>Builds it.</summary>
    /// <param name="input">The pin.</param>
    /// <param name="isActiveLow">True where the closed contact pulls the pin low.</param>
    /// <param name="debounce">Its times, and what counts before it is first read.</param>
    public ContactInput(IDigitalInput input, bool isActiveLow, Debounce debounce)
    {
        _input = input;
        _isActiveLow = isActiveLow;
        _debounce = debounce;
    }

    /// <summary>Reads the contact.</summary>
    /// <param name="elapsedMicroseconds">Time since the last reading.</param>
    /// <returns>True while it counts as closed.</returns>
    public bool IsClosed(int elapsedMicroseconds)
    {
        _debounce.Update(_input.Read() != _isActiveLow, elapsedMicroseconds);
        return _debounce.IsClosed;
    }
}
