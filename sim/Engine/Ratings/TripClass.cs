using System;
using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>A trip class of an overload protection and the time constant of the thermal image that keeps to it.</summary>
/// <param name="Name">"10A", "10", "20" or "30".</param>
/// <param name="Seconds">Time constant, s.</param>
/// <remarks>IEC 60947-4-1; tests/published/SOURCES.md, CHK-17. The time constants are those of the controller's catalogue of settings.</remarks>
public sealed record TripClass(string Name, double Seconds)
{
    /// <summary>Current, as a multiple of the setting, at which the controller's image just reaches its limit.</summary>
    public const double UltimateRatio = Core.HeatWatch.UltimateRatio;

    /// <summary>All of them, the fastest first.</summary>
    public static IReadOnlyList<TripClass> All { get; } = [new("10A", 125), new("10", 290), new("20", 580), new("30", 870)];

    /// <summary>The class with a name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is none.</exception>
    public static TripClass Named(string name)
    {
        foreach (TripClass one in All)
        {
            if (one.Name == name) return one;
        }

        throw new ArgumentOutOfRangeException(nameof(name), name, "10A, 10, 20 or 30");
    }

    /// <summary>Time to the trip at a constant current: t = tau ln((x^2 - p^2)/(x^2 - 1)), in multiples of the ultimate current.</summary>
    /// <param name="multiple">Current over the setting.</param>
    /// <param name="multipleBefore">Steady current before, over the setting; 0 from cold.</param>
    /// <returns>s; infinity where it never trips, 0 where it has tripped before.</returns>
    /// <remarks>IEC 60255-149; tests/published/SOURCES.md, CHK-16.</remarks>
    public double TripSeconds(double multiple, double multipleBefore)
    {
        double square = multiple * multiple, limit = UltimateRatio * UltimateRatio, before = multipleBefore * multipleBefore;
        if (before >= limit) return 0;
        return square <= limit ? double.PositiveInfinity : Seconds * Math.Log((square - before) / (square - limit));
    }
}
