using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Parts;

/// <summary>Writes a case that carries the chosen parts: the case as it is, with its sections and what they need beside its other keys.</summary>
internal static class PartsCase
{
    /// <summary>The case with sections.</summary>
    /// <param name="file">The case without.</param>
    /// <param name="found">The parts.</param>
    /// <param name="limits">What they were chosen for.</param>
    /// <param name="source">Where the parts come from, in words.</param>
    /// <exception cref="CaseException">The case's starter stands in no table of its own.</exception>
    public static string Write(CaseFile file, PartsFound found, PartsLimits limits, string source)
    {
        List<string> comments = [$"# Bought parts of {source}, chosen by starterctl design:"];
        for (int i = 0; i < found.Sections.Count; i++) comments.Add($"#   section {Number(i + 1)}: {found.Sections[i]} = {Number(found.Sections[i].Ohms)} ohm");
        List<(CaseKey Key, string Value)> pairs = [(CaseKeys.StarterSections, $"[{string.Join(", ", found.Sections.Select(network => Quoted(network.Ohms, "ohm")))}]")];
        if (!limits.IsSwitchingGiven) pairs.Add((CaseKeys.StarterSwitchingCurrent, Quoted(limits.SwitchingAmps, "A")));
        if (!limits.IsPeakGiven) pairs.Add((CaseKeys.StarterPeakCurrent, Quoted(PartsLimits.WrittenAbove(found.Design.WorstPeakAmps), "A")));
        return CaseAddition.To(file, comments, pairs);
    }

    private static string Quoted(double number, string unit) => $"\"{Number(number)} {unit}\"";

    private static string Number(double number) => number.ToString("0.#################", CultureInfo.InvariantCulture);
}
