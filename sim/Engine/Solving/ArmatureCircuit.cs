namespace StarterCtl.Engine.Solving;

/// <summary>
/// The circuit as the armature sees it: one voltage behind one resistance, and how the line's current follows from the
/// armature's. The brake resistor lies across the armature, behind the starter sections. With the line open it is the whole
/// circuit. Line and brake closed together, which only a fault brings about, make the sections and the brake a divider:
/// V' = V Rb / (Rl + Rb) behind Rl Rb / (Rl + Rb), with Rl = source and sections; the brake draws from the line. Derived here.
/// </summary>
internal readonly record struct ArmatureCircuit
{
    private readonly double _lineAmpsAlone;
    private readonly double _lineShare;

    /// <summary>Looks at a circuit.</summary>
    public ArmatureCircuit(PlantConditions conditions)
    {
        IsLive = conditions.IsLive;
        Volts = conditions.Supply.OpenCircuitVolts;
        Ohms = conditions.CircuitOhms;
        _lineShare = conditions.LineClosed ? 1 : 0;
        if (!conditions.IsBrakeIn) return;

        double brakeOhms = conditions.BrakeOhms, armatureOhms = conditions.Machine.ArmatureOhms;
        if (conditions.LineClosed)
        {
            double lineOhms = Ohms - armatureOhms;
            _lineShare = brakeOhms / (lineOhms + brakeOhms);
            _lineAmpsAlone = Volts / (lineOhms + brakeOhms);
            Volts *= _lineShare;
            Ohms = armatureOhms + lineOhms * _lineShare;
        }
        else
        {
            Volts = 0;
            Ohms = armatureOhms + brakeOhms;
        }
    }

    /// <summary>True while the armature current has a path.</summary>
    public bool IsLive { get; }

    /// <summary>Voltage that drives the armature current against the back-EMF, V.</summary>
    public double Volts { get; }

    /// <summary>Everything that limits the armature current, armature included, ohm.</summary>
    public double Ohms { get; }

    /// <summary>Current from the supply, A.</summary>
    public double LineAmps(double armatureAmps) => _lineAmpsAlone + _lineShare * armatureAmps;

    /// <summary>Integral of the current from the supply over a span, A s.</summary>
    public double LineAmpSeconds(double ampSeconds, double seconds) => _lineAmpsAlone * seconds + _lineShare * ampSeconds;

    /// <summary>Integral of its square over a span, A2 s.</summary>
    public double LineSquareAmpSeconds(double squareAmpSeconds, double ampSeconds, double seconds) =>
        Square(_lineAmpsAlone, _lineShare, squareAmpSeconds, ampSeconds, seconds);

    /// <summary>Integral of the square of the brake resistor's current, which is what the armature leaves of the line's, A2 s.</summary>
    public double BrakeSquareAmpSeconds(double squareAmpSeconds, double ampSeconds, double seconds) =>
        Square(_lineAmpsAlone, _lineShare - 1, squareAmpSeconds, ampSeconds, seconds);

    private static double Square(double alone, double share, double squareAmpSeconds, double ampSeconds, double seconds) =>
        alone * alone * seconds + 2 * alone * share * ampSeconds + share * share * squareAmpSeconds;
}
