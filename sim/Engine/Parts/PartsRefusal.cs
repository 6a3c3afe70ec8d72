using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>Says why no parts meet a case, what comes nearest, and what would mend it.</summary>
internal sealed class PartsRefusal(CaseFile file, CaseDesign wanted, PartsLimits limits, PartsRequest request, CancellationToken cancellation)
{
    private const long ShortSteps = 300_000;

    private static readonly double[] Shares = [1.1, 1.25, 1.5, 2, 3, 5, 10, 100, double.PositiveInfinity];

    private static readonly double[] PeakRatios = [1.02, 1.05, 1.1, 1.2, 1.5, 2];

    private CaseKey LimitKey => limits.IsPeakGiven ? CaseKeys.StarterPeakCurrent : CaseKeys.StarterSwitchingCurrent;

    private int Stages => wanted.Design.StageCount;

    /// <summary>Refuses limits that sections of no value meet.</summary>
    public void CheckPeak()
    {
        CutoutBounds bounds = new(wanted.Input, limits.SwitchingAmps);
        double least = bounds.LeastPeak(Stages);
        if (!StarterDesigner.Exceeds(least, limits.PeakAmps)) return;
        List<string> more = [];
        for (int stages = Stages + 1; stages <= StarterDesigner.MostStages; stages++)
        {
            double peak = bounds.LeastPeak(stages);
            more.Add($"with {stages} stages {Amps(peak)}");
            if (!StarterDesigner.Exceeds(peak, limits.PeakAmps)) break;
        }

        throw Problem(
            LimitKey,
            $"a peak current of {Amps(limits.PeakAmps)}, which no design meets with {Stages} stages that are cut out at {Amps(limits.SwitchingAmps)}: the least peak is {Amps(least)}{string.Concat(more.Select(text => ", " + text))}",
            $"a peak current of at least {Amps(least)}, more stages, or a lower switching current");
    }

    /// <summary>The reason, from the nearest choice that gives up one thing after the other.</summary>
    /// <param name="problem">What nothing was found for.</param>
    /// <param name="isWhole">False when the search stopped before it had looked through everything.</param>
    public CaseException Of(PartsProblem problem, bool isWhole)
    {
        if (!isWhole) return Problem(LimitKey, $"no choice of {request.SourceText}, {Parts(request.PartsPerSection)} to a section, in the {problem.MostSteps} steps that the search may take, which is no proof that there is none", "fewer parts to a section, a shorter list or objective peak, which are looked through sooner; or other limits");
        PartsProblem nearer = problem with { MostSteps = ShortSteps };
        if (MissingSection(problem) is string missing) return Problem(LimitKey, missing, Mends());
        if (PartsSearch.Find(nearer with { KeepsToQuantities = false }, cancellation).Found is PartsFound many) return OutOfStock(many);
        foreach (double share in Shares)
        {
            PartsProblem overloaded = nearer with { KeepsToQuantities = false, MostShare = share };
            if (PartsSearch.Find(overloaded, cancellation).Found is PartsFound found) return Overloaded(found);
        }

        foreach (double ratio in PeakRatios)
        {
            PartsLimits higher = limits with { PeakAmps = Math.Min(limits.PeakAmps * ratio, 0.999 * wanted.Design.DirectStartAmps) };
            PartsProblem above = PartsDesigner.ProblemOf(file, wanted.Input, higher, Stages, request) with { Objective = PartsObjective.Peak, MostSteps = ShortSteps };
            if (PartsSearch.Find(above, cancellation).Found is PartsFound found) return PeakPassed(found);
        }

        return Problem(LimitKey, $"no choice of {request.SourceText}, {Parts(request.PartsPerSection)} to a section, that gives {Stages} stages within {Amps(limits.PeakAmps)}, not even with twice that peak", Mends());
    }

    private CaseException OutOfStock(PartsFound found)
    {
        string[] short_ = [.. found.Sections.SelectMany(network => network.Parts()).GroupBy(share => share.Part)
            .Where(group => group.Count() > group.Key.Quantity).Select(group => $"{group.Count()} of {group.Key.Name}, of which there are {group.Key.Quantity}")];
        return Problem(LimitKey, $"no choice from what is in stock; the nearest takes {string.Join("; ", short_)}: {Text(found)}", "more of them in stock; or " + Mends());
    }

    private CaseException Overloaded(PartsFound found)
    {
        IEnumerable<PartBurden> over = PartsChoice.SectionsOf(wanted.Design, found.Design, found.Sections, request.StartsPerHour)
            .SelectMany(section => section.Burdens).Where(burden => burden.Share > 1);
        string[] lines = [.. over.Select(burden => $"{burden.Part.Name} in section {burden.Stage} would take {Number(burden.Joules!.Value)} J in a start of its {Number(burden.Part.Rating!.Joules)} J and {Number(burden.MeanWatts!.Value)} W in the mean of its {Number(burden.Part.Rating.Watts)} W, {Number(burden.Share!.Value * 100)} % together")];
        return Problem(
            LimitKey,
            $"no choice whose parts can take the start at {Number(request.StartsPerHour)} starts an hour; in the nearest {string.Join("; ", lines)}: {Text(found)}",
            "parts of more joules and watts, fewer starts an hour; or " + Mends());
    }

    private CaseException PeakPassed(PartsFound found)
    {
        double peak = found.Design.WorstPeakAmps;
        return Problem(
            LimitKey,
            $"a peak current of {Amps(limits.PeakAmps)}, which no choice of {request.SourceText}, {Parts(request.PartsPerSection)} to a section, meets with {Stages} stages that are cut out at {Amps(limits.SwitchingAmps)}: the least peak is {Amps(peak)}, {Text(found)}",
            $"a peak current of at least {Amps(PartsLimits.WrittenAbove(peak))}; or {Mends()}");
    }

    private string? MissingSection(PartsProblem problem)
    {
        (double[] lowest, double[] highest) = new CutoutBounds(wanted.Input, limits.SwitchingAmps).Windows(Stages, limits.PeakAmps);
        for (int i = 0; i < Stages; i++)
        {
            double from = Math.Max(0, lowest[i] - highest[i + 1]), to = highest[i] - lowest[i + 1];
            if (problem.Networks.Any(network => network.Ohms >= from && network.Ohms <= to)) continue;
            return $"no value for section {i + 1}, which has to lie between {Number(from)} and {Number(to)} ohm for a peak within {Amps(limits.PeakAmps)}, in {request.SourceText}, {Parts(request.PartsPerSection)} to a section";
        }

        return null;
    }

    // What really mends it, tried; and what may.
    private string Mends()
    {
        List<string> mends = [];
        if (request.PartsPerSection < PartsRequest.MostPartsPerSection && Meets(Stages, request with { PartsPerSection = request.PartsPerSection + 1 })) mends.Add($"{Parts(request.PartsPerSection + 1)} to a section, which meets it");
        if (Stages < StarterDesigner.MostStages && Meets(Stages + 1, request)) mends.Add($"{Stages + 1} stages, which meet it");
        if (mends.Count == 0) mends.Add("more parts to a section, a finer series or a longer list, more stages, a higher peak current or a lower switching current");
        return string.Join("; or ", mends);
    }

    private bool Meets(int stages, PartsRequest other)
    {
        try
        {
            return PartsSearch.Find(PartsDesigner.ProblemOf(file, wanted.Input, limits, stages, other) with { MostSteps = ShortSteps }, cancellation).Found != null;
        }
        catch (CaseException)
        {
            return false;
        }
    }

    private CaseException Problem(CaseKey key, string found, string allowed) => new([file.Problem(key, found, allowed)]);

    private static string Text(PartsFound found) => "sections " + string.Join(", ", found.Sections.Select(network => $"{network}"));

    private static string Parts(int count) => count == 1 ? "1 part" : $"up to {count} parts";

    private static string Number(double number) => Engine.Text.Number(number);

    private static string Amps(double amps) => Number(amps) + " A";
}
