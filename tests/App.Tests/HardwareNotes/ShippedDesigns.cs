using System;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>The three cases that the building pages take their figures from.</summary>
internal static class ShippedDesigns
{
    public static string[] Names { get; } = ["line-shaft.toml", "bench-rig.toml", "rig-24v.toml"];

    /// <summary>A shipped case, read as a run would.</summary>
    public static PreparedRun Prepared(string name) => CaseRunner.Prepare(CaseFile.Parse(name, ShippedCases.Text(name)));

    /// <summary>The design of a shipped case with lines of its file replaced.</summary>
    public static StarterDesign Changed(string name, params (string Found, string Replacement)[] changes) => CaseDesign.Of(ChangedCase(name, changes)).Design;

    /// <summary>A shipped case with lines of its file replaced.</summary>
    public static CaseFile ChangedCase(string name, params (string Found, string Replacement)[] changes)
    {
        string text = ShippedCases.Text(name);
        foreach ((string found, string replacement) in changes)
        {
            if (!text.Contains(found, StringComparison.Ordinal)) throw new ArgumentException($"{name} has no '{found}'", nameof(changes));
            text = text.Replace(found, replacement, StringComparison.Ordinal);
        }

        return CaseFile.Parse(name, text);
    }
}
