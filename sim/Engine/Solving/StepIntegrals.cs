namespace StarterCtl.Engine.Solving;

/// <summary>Integrals over a span of time from which every energy of the run follows.</summary>
public struct StepIntegrals
{
    /// <summary>Integral of the current, A s.</summary>
    public double AmpSeconds;

    /// <summary>Integral of the current squared, A2 s.</summary>
    public double SquareAmpSeconds;

    /// <summary>Integral of the speed, rad.</summary>
    public double Radians;

    /// <summary>Integral of the speed squared, rad2/s.</summary>
    public double SquareSpeedSeconds;

    /// <summary>Integral of the speed's magnitude cubed, rad3/s2.</summary>
    public double CubeSpeedSeconds;
}
