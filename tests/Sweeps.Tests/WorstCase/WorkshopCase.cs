using System;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Sweeps.Tests.WorstCase;

/// <summary>A machine of constant flux with next to nothing around it, so that everything about its worst case can be written down.</summary>
internal static class WorkshopCase
{
    /// <summary>Machine constant, V s/rad.</summary>
    public const double Constant = 2.5;

    /// <summary>The case: 250 V, 0.05 ohm, no brush drop, no source resistance; the load takes what 350 A give less a tenth of it.</summary>
    public const string Text = """
        [supply]
        voltage = "250 V"
        resistance = "0 ohm"

        [motor]
        kind = "separately excited"
        rated-current = "350 A"
        armature-resistance = "0.05 ohm"
        inertia = "4 kg m2"
        constant = "2.5 V s/rad"

        [load]
        constant-torque = "795.4545454545455 N m"

        [starter]
        peak-current = "2000 A"
        stages = 3

        [control]
        period = "1 ms"

        [run]
        duration = "8 s"

        [tolerances]
        """;

    /// <summary>The case with tolerances, and texts replaced by others.</summary>
    public static CaseFile With(string tolerances, params (string Found, string Replacement)[] changes)
    {
        string text = Text;
        foreach ((string found, string replacement) in changes)
        {
            if (!text.Contains(found, StringComparison.Ordinal)) throw new ArgumentException($"the case has no '{found}'", nameof(changes));
            text = text.Replace(found, replacement, StringComparison.Ordinal);
        }

        return CaseFile.Parse("workshop.toml", $"{text}\n{tolerances}\n");
    }
}
