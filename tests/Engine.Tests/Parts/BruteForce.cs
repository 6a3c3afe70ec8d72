using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Parts;

namespace StarterCtl.Engine.Tests.Parts;

/// <summary>Tries every combination of one or two parts to a section: no bounds, no windows, networks and burdens of its own.</summary>
internal static class BruteForce
{
    /// <summary>The best choice; null when none is possible.</summary>
    public static Choice? Best(CaseFile file, PartsRequest request)
    {
        CaseDesign wanted = CaseDesign.Of(file);
        (double peakLimit, double switching) = Limits(wanted, request.Give);
        Piece[] pieces = [.. Pieces(request)];
        int stages = wanted.Design.StageCount;
        Choice? best = null;
        foreach (Piece[] chosen in Combinations(pieces, stages))
        {
            Choice? choice = Try(wanted.Input, chosen, peakLimit, switching, request);
            if (choice != null && (best == null || Compare(choice, best, peakLimit, request.Objective) < 0)) best = choice;
        }

        return best;
    }

    // What the case gives holds; what it leaves open may differ from the computed by a part of it, but stays a tenth over the load.
    private static (double PeakAmps, double SwitchingAmps) Limits(CaseDesign wanted, double give)
    {
        double load = wanted.Design.Stages.Max(stage => stage.LoadAmps!.Value);
        double lowered = Math.Min(wanted.Design.SwitchingAmps, Math.Max(wanted.Design.SwitchingAmps * (1 - give), 1.1 * load));
        return (wanted.Input.PeakAmps!.Value, wanted.Input.SwitchingAmps ?? double.Parse(lowered.ToString("G6", null), null));
    }

    private static IEnumerable<Piece> Pieces(PartsRequest request)
    {
        IReadOnlyList<Part> parts = request.Stock!.Parts;
        for (int i = 0; i < parts.Count; i++)
        {
            yield return new Piece(parts[i].Ohms, [(parts[i], 1)]);
            for (int j = i; j < parts.Count && request.PartsPerSection == 2; j++)
            {
                double a = parts[i].Ohms, b = parts[j].Ohms;
                yield return new Piece(a + b, [(parts[i], a / (a + b)), (parts[j], b / (a + b))]);
                yield return new Piece(a * b / (a + b), [(parts[i], b / (a + b)), (parts[j], a / (a + b))]);
            }
        }
    }

    private static IEnumerable<Piece[]> Combinations(Piece[] pieces, int stages)
    {
        int[] at = new int[stages];
        while (true)
        {
            yield return [.. at.Select(i => pieces[i])];
            int place = 0;
            while (place < stages && ++at[place] == pieces.Length) at[place++] = 0;
            if (place == stages) yield break;
        }
    }

    private static Choice? Try(DesignInput input, Piece[] chosen, double peakLimit, double switching, PartsRequest request)
    {
        double[] sections = [.. chosen.Select(piece => piece.Ohms)];
        double first = (input.SupplyVolts - input.BrushDropVolts) / (sections.Sum() + input.ArmatureOhms);
        // Nothing that is designed in full can be kept beyond this: it only saves time.
        if (first > peakLimit * 1.001 || first <= switching) return null;
        if (chosen.SelectMany(piece => piece.Parts).GroupBy(share => share.Part).Any(group => group.Count() > group.Key.Quantity)) return null;
        StarterDesign design;
        try
        {
            design = StarterDesigner.Design(input with { PeakAmps = peakLimit, SwitchingAmps = switching, SectionOhms = sections, StageCount = null, Slack = null });
        }
        catch (DesignException)
        {
            return null;
        }

        // Where both limits cannot be kept the designer keeps the peak, and switches at less.
        if (design.WorstPeakAmps > peakLimit * (1 + 1e-4) || design.Stages.Any(stage => stage.SwitchingAmps < switching / (1 + 1e-4))) return null;
        for (int i = 0; i < chosen.Length; i++)
        {
            foreach ((Part part, double share) in chosen[i].Parts)
            {
                double joules = design.Stages[i].EnergyJoules!.Value * share;
                if (joules / part.Rating!.Joules + joules * request.StartsPerHour / 3600 / part.Rating.Watts > 1) return null;
            }
        }

        return new Choice(design.WorstPeakAmps, chosen.Sum(piece => piece.Parts.Sum(share => share.Part.Price!.Value)), chosen.Sum(piece => piece.Parts.Length));
    }

    private static int Compare(Choice a, Choice b, double peakLimit, PartsObjective objective)
    {
        int peak = Math.Round(a.PeakAmps / peakLimit * 1e6).CompareTo(Math.Round(b.PeakAmps / peakLimit * 1e6)), price = a.Price.CompareTo(b.Price), count = a.Count.CompareTo(b.Count);
        int[] order = objective switch
        {
            PartsObjective.Price => [price, peak, count],
            PartsObjective.Count => [count, peak, price],
            _ => [peak, price, count],
        };
        return order.FirstOrDefault(sign => sign != 0);
    }

    /// <summary>A choice by what counts.</summary>
    internal sealed record Choice(double PeakAmps, decimal Price, int Count);

    private sealed record Piece(double Ohms, (Part Part, double Share)[] Parts);
}
