namespace StarterCtl.Firmware;

/// <summary>
/// How a board is wired: which pin does what, and how each input is read. Filled once, checked by <see cref="BoardCheck"/> on desk and
/// board alike, not changed afterwards but for the calibrations.
/// </summary>
public sealed class PinMap
{
    /// <summary>A role without a pin.</summary>
    public const int NotFitted = -1;

    /// <summary>Number of roles, with room between the groups.</summary>
    public const int RoleCount = 80;

    /// <summary>Most permissive inputs.</summary>
    public const int MostPermissives = 16;

    private readonly int[] _pins = new int[RoleCount];
    private readonly int[] _activeLow = new int[RoleCount];

    /// <summary>Supply voltage, V.</summary>
    public AnalogSetup Supply = new AnalogSetup();

    /// <summary>Armature current, A.</summary>
    public AnalogSetup Armature = new AnalogSetup();

    /// <summary>Field current, A.</summary>
    public AnalogSetup Field = new AnalogSetup();

    /// <summary>Temperature of the starting resistor, degC.</summary>
    public AnalogSetup Resistor = new AnalogSetup();

    /// <summary>Tacho generator, rad/s.</summary>
    public AnalogSetup Tacho = new AnalogSetup();

    /// <summary>Pick-up or encoder.</summary>
    public PulseSetup Pulses = new PulseSetup();

    /// <summary>When the shaft stands and when its speed is unknown, by whatever it is measured.</summary>
    public StandstillSetup Standstill = new StandstillSetup();

    /// <summary>Time for which an auxiliary contact or a permissive must stand to count, both ways, microseconds.</summary>
    public int ContactDebounceMicroseconds = 5000;

    /// <summary>
    /// Time for which a press of start and reset, and the release of stop and stop chain, must stand to count, microseconds. A press of
    /// stop and an opening of the stop chain count at once.
    /// </summary>
    public int ButtonDebounceMicroseconds = 20000;

    /// <summary>Control period, microseconds; above 0.</summary>
    public int PeriodMicroseconds = 1000;

    /// <summary>How much later than its time a period may begin, microseconds; a later one gets no watchdog pulse.</summary>
    public int LateMicroseconds = 500;

    /// <summary>Builds a board without any pin.</summary>
    public PinMap()
    {
        for (int i = 0; i < RoleCount; i++) _pins[i] = NotFitted;
    }

    /// <summary>Gives a role its pin.</summary>
    /// <param name="role">What it is for.</param>
    /// <param name="pin">The board's number of the pin, 0 or more.</param>
    /// <param name="isActiveLow">True where a closed contact, or an energised coil or lamp, is the low level.</param>
    public void Wire(PinRole role, int pin, bool isActiveLow)
    {
        _pins[(int)role] = pin;
        _activeLow[(int)role] = isActiveLow ? 1 : 0;
    }

    /// <summary>A role's pin, or <see cref="NotFitted"/>.</summary>
    public int Pin(PinRole role) => _pins[(int)role];

    /// <summary>True if the role has a pin.</summary>
    public bool IsFitted(PinRole role) => _pins[(int)role] != NotFitted;

    /// <summary>True where the low level means closed, energised or lit.</summary>
    public bool IsActiveLow(PinRole role) => _activeLow[(int)role] != 0;
}
