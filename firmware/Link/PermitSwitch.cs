namespace StarterCtl.Firmware;

/// <summary>The local permit as a switch at a pin. Where none is wired it is never given.</summary>
public sealed class PermitSwitch : ILocalPermit
{
    private readonly IDigitalInput? _input;
    private readonly bool _isActiveLow;

    /// <summary>Builds it.</summary>
    /// <param name="input">The pin; none where no switch is wired.</param>
    /// <param name="isActiveLow">True where the closed switch pulls the pin low.</param>
    public PermitSwitch(IDigitalInput? input, bool isActiveLow)
    {
        _input = input;
        _isActiveLow = isActiveLow;
    }

    /// <inheritdoc/>
    public bool IsGiven() => _input != null && _input.Read() != _isActiveLow;
}
