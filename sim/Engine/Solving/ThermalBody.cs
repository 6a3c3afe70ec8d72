using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// A body of one temperature T: <c>C dT/dt = P - (T - Ta) / Rth</c>. Over a span of constant power exactly
/// <c>T = Ta + P Rth + (T0 - Ta - P Rth) e^(-t/tau)</c> with tau = C Rth; as a rise <c>P t / C (1 - e^(-x)) / x</c> with x = t / tau it
/// holds without cooling too. Any textbook on heating of machines, as the first-order one-body rise.
/// </summary>
public sealed class ThermalBody
{
    // Below it the next term of the series is less than rounding.
    private const double SmallPart = 1e-5;

    private readonly ThermalMass _mass;

    /// <summary>Builds it.</summary>
    /// <param name="mass">What it does with heat.</param>
    /// <param name="celsius">Its temperature at the beginning, degC.</param>
    public ThermalBody(ThermalMass mass, double celsius)
    {
        _mass = mass;
        StartCelsius = celsius;
        HighestCelsius = celsius;
        Celsius = celsius;
    }

    /// <summary>Temperature at the beginning, degC.</summary>
    public double StartCelsius { get; }

    /// <summary>Highest temperature at the end of any span so far, degC.</summary>
    public double HighestCelsius { get; private set; }

    /// <summary>Temperature now, degC.</summary>
    public double Celsius { get; private set; }

    /// <summary>False while no heat leaves it, whatever its cooling time.</summary>
    public bool IsCooled { get; set; } = true;

    /// <summary>Temperature after a span of constant power, degC.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    /// <param name="watts">Power, W.</param>
    /// <param name="ambientCelsius">Temperature around it, degC.</param>
    public double CelsiusAfter(double seconds, double watts, double ambientCelsius)
    {
        double rise = watts * seconds / _mass.JoulesPerKelvin;
        if (!IsCooled) return Celsius + rise;
        double part = seconds / _mass.CoolingSeconds, left = Math.Exp(-part);
        double kept = part < SmallPart ? 1 - part / 2 + part * part / 6 : (1 - left) / part;
        return ambientCelsius + (Celsius - ambientCelsius) * left + rise * kept;
    }

    /// <summary>dT/dt with a power, K/s.</summary>
    public double KelvinPerSecond(double watts, double ambientCelsius)
    {
        double cooling = IsCooled ? (Celsius - ambientCelsius) / _mass.CoolingSeconds : 0;
        return watts / _mass.JoulesPerKelvin - cooling;
    }

    /// <summary>Goes over a span at the mean of its power.</summary>
    /// <param name="seconds">Span, s, above 0.</param>
    /// <param name="joules">Heat that came in over it, J.</param>
    /// <param name="ambientCelsius">Temperature around it, degC.</param>
    public void Advance(double seconds, double joules, double ambientCelsius)
    {
        Celsius = CelsiusAfter(seconds, joules / seconds, ambientCelsius);
        HighestCelsius = Math.Max(HighestCelsius, Celsius);
    }
}
