using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Ratings;

/// <summary>
/// A copper winding at a constant current: C dT/dt = I^2 R0 (235 + T)/(235 + T0) - (T - Ta)/Rth. With T' = A - m T it is linear again, and
/// T goes by (1 - e^(-m t))/m. Derived here; tests/published/SOURCES.md, CHK-24 and CHK-37.
/// </summary>
/// <param name="Mass">What it does with heat.</param>
/// <param name="Ohms">Its resistance at <paramref name="OhmsCelsius"/>, ohm.</param>
/// <param name="OhmsCelsius">Temperature at which its resistance holds, degC.</param>
/// <param name="AmbientCelsius">Temperature around it, degC.</param>
public sealed record CopperBody(ThermalMass Mass, double Ohms, double OhmsCelsius, double AmbientCelsius)
{
    private const double SmallPart = 1e-8;

    /// <summary>Temperature after a time, degC.</summary>
    /// <param name="celsius">Temperature at its begin, degC.</param>
    /// <param name="amps">Current, A.</param>
    /// <param name="seconds">Time, s, 0 or more.</param>
    public double After(double celsius, double amps, double seconds)
    {
        (double a, double m) = Law(amps);
        double part = m * seconds;
        return celsius + (a - m * celsius) * (Math.Abs(part) < SmallPart ? seconds * (1 - part / 2) : (1 - Math.Exp(-part)) / m);
    }

    /// <summary>Temperature at which it stays, degC; infinity where cooling never catches up.</summary>
    public double Steady(double amps)
    {
        (double a, double m) = Law(amps);
        return m > 0 ? a / m : double.PositiveInfinity;
    }

    /// <summary>Time to a temperature above, s; infinity where it is never reached, 0 where it is passed already.</summary>
    public double SecondsTo(double limitCelsius, double celsius, double amps)
    {
        if (celsius >= limitCelsius) return 0;
        (double a, double m) = Law(amps);
        double slope = a - m * celsius, part = m * (limitCelsius - celsius) / slope;
        if (!(slope > 0) || part >= 1) return double.PositiveInfinity;
        return Math.Abs(part) < SmallPart ? (limitCelsius - celsius) / slope : -Math.Log(1 - part) / m;
    }

    private (double A, double M) Law(double amps)
    {
        // Copper's resistance is a straight line over its temperature: two points give it.
        double at0 = CopperTemperature.ResistanceRatio(OhmsCelsius, 0), perKelvin = CopperTemperature.ResistanceRatio(OhmsCelsius, 1) - at0;
        double kelvinPerSecond = amps * amps * Ohms / Mass.JoulesPerKelvin, cooling = 1 / Mass.CoolingSeconds;
        return (kelvinPerSecond * at0 + AmbientCelsius * cooling, cooling - kelvinPerSecond * perKelvin);
    }
}
