using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>
/// Chooses the networks of all sections together: depth first from the last section to the first, with everything cut off that
/// provably holds nothing better.
/// </summary>
/// <remarks>
/// Going from the last section, each choice fixes one more total, and with it the peak of the cutout between the two. Cut off is what
/// passes the peak limit or the best choice so far even if the sections to come had the best of all values at their least price and
/// count; what leaves the windows of the totals; and what its heat in any possible start would overload. What is left is designed in
/// full: only then is it counted. A first look among parts with heat to spare finds a choice to beat. Among choices with the same peak, price and count the first one holds; sections are tried from the
/// last, values from the nearest to equal peaks.
/// </remarks>
internal sealed class PartsSearch
{
    private const int DesignSteps = 20;
    private const int HeatSteps = 20;
    private const int StepsPerLook = 4096;

    // What a section of any value takes and a quarter more: seldom too little whatever the other sections are.
    private const double HeatToSpare = 1.25;

    // Bounds are as good as a few roundings.
    private const double Rounding = 1e-9;

    private readonly PartsProblem _problem;
    private readonly CancellationToken _cancellation;
    private readonly CutoutBounds _bounds;
    private readonly double[] _lowest;
    private readonly double[] _highest;
    private readonly decimal[] _priceBefore;
    private readonly int[] _countBefore;
    private readonly bool _areRated;
    private SectionCandidates[] _sections = [];
    private readonly PartNetwork[] _chosen;
    private readonly double[] _totals;
    private readonly Dictionary<Part, int> _used = [];
    private PartsFound? _best;
    private long _steps;
    private long _mostSteps;

    private PartsSearch(PartsProblem problem, CancellationToken cancellation)
    {
        _problem = problem;
        _cancellation = cancellation;
        _bounds = new CutoutBounds(problem.Input, problem.Limits.SwitchingAmps);
        (_lowest, _highest) = _bounds.Windows(problem.Stages, MostAmps);
        _priceBefore = new decimal[problem.Stages];
        _countBefore = new int[problem.Stages];
        _areRated = problem.Networks.Any(network => double.IsFinite(network.CapabilityJoules)) && problem.Input.InertiaKgM2 != null;
        _chosen = new PartNetwork[problem.Stages];
        _totals = [.. _lowest];
    }

    private bool IsCut => _steps >= _mostSteps;

    /// <summary>Finds the best choice.</summary>
    /// <returns>Null when none meets the limits; and whether everything was looked through that could be better.</returns>
    public static (PartsFound? Found, bool IsWhole) Find(PartsProblem problem, CancellationToken cancellation)
    {
        PartsSearch search = new(problem, cancellation);
        double[] leastSquares = HeatBound.Of(problem.Input, search._lowest, search._highest, problem.Limits.SwitchingAmps, search.MostAmps);
        int mostParts = problem.Networks.Count == 0 ? 0 : problem.Networks.Max(network => network.Count);
        for (int parts = 1; parts <= mostParts; parts++)
        {
            // Few parts are looked through soon, and what they give is to be beaten by more.
            long mostSteps = problem.MostSteps * parts / mostParts;
            if (search._areRated && problem.WantedSquares != null) search.Look([.. problem.WantedSquares.Select(squares => squares * HeatToSpare)], parts, mostSteps - problem.MostSteps / (2 * mostParts));
            search.Look(leastSquares, parts, mostSteps);
        }

        return (search._best is PartsFound best ? best with { IsProven = !search.IsCut } : null, !search.IsCut);
    }

    private double MostAmps => _problem.Limits.PeakAmps * (1 + StarterDesigner.PeakRounding);

    // Looks among the networks of some parts that can take at least some heat.
    private void Look(double[] leastSquares, int mostParts, long mostSteps)
    {
        _mostSteps = mostSteps;
        _sections = [.. Enumerable.Range(0, _problem.Stages).Select(i => new SectionCandidates(CandidatesOf(i, leastSquares[i], mostParts), _problem.Objective))];
        for (int i = 1; i < _problem.Stages; i++)
        {
            _priceBefore[i] = _priceBefore[i - 1] + _sections[i - 1].LeastPrice;
            _countBefore[i] = _countBefore[i - 1] + _sections[i - 1].LeastCount;
        }

        if (_sections.All(section => section.Groups.Count > 0)) Descend(_problem.Stages - 1, _problem.Input.ArmatureOhms, 0, 0, 0);
    }

    private IReadOnlyList<PartNetwork> CandidatesOf(int section, double leastSquares, int mostParts)
    {
        double from = _lowest[section] - _highest[section + 1], to = _highest[section] - _lowest[section + 1];
        return [.. _problem.Networks.Where(network => network.Ohms >= from * (1 - Rounding) && network.Ohms <= to * (1 + Rounding)
            && network.Count <= mostParts && network.Ohms * leastSquares <= network.CapabilityJoules * _problem.MostShare)];
    }

    private void Descend(int section, double total, double peak, decimal price, int count)
    {
        if (section < 0)
        {
            Count(price, count);
            return;
        }

        double most = Math.Min(_bounds.MostBefore(total, MostAmps), _highest[section]) * (1 + Rounding);
        double wanted = _bounds.MostBefore(total, _bounds.LeastPeak(total, section + 1)) - total;
        foreach (SectionCandidates.Group group in _sections[section].Groups)
        {
            // Groups come cheapest first.
            if (_steps++ >= _mostSteps || !CouldBeBetter(peak, price + group.LeastPrice + _priceBefore[section], count + group.LeastCount + _countBefore[section])) return;
            int up = group.FirstNotBelow(wanted), down = up - 1;
            while (!IsCut && (up < group.Networks.Length || down >= 0))
            {
                bool isUp = down < 0 || (up < group.Networks.Length && group.Networks[up].Ohms - wanted <= wanted - group.Networks[down].Ohms);
                PartNetwork network = group.Networks[isUp ? up++ : down--];
                if (Try(section, network, total, most, peak, price, count, group)) continue;
                // The farther from the wanted value, the higher the peak: nothing better is left on this side.
                if (isUp) up = group.Networks.Length;
                else down = -1;
            }
        }
    }

    // False where every value farther out is worse.
    private bool Try(int section, PartNetwork network, double total, double most, double peak, decimal price, int count, SectionCandidates.Group group)
    {
        if (_steps++ % StepsPerLook == 0) _cancellation.ThrowIfCancellationRequested();
        double before = total + network.Ohms;
        if (before > most || before < _lowest[section] * (1 - Rounding)) return false;
        double reached = Math.Max(peak, _bounds.PeakAfter(before, total)), least = reached;
        // Where it is a search it only pays if the peak decides; the windows of the totals keep to the limit without it.
        if (_bounds.IsConstantFlux || section == 0 || _problem.Objective == PartsObjective.Peak) least = Math.Max(reached, _bounds.LeastPeak(before, section));
        if (StarterDesigner.Exceeds(least * (1 - Rounding), _problem.Limits.PeakAmps)
            || !CouldBeBetter(least, price + group.LeastPrice + _priceBefore[section], count + group.LeastCount + _countBefore[section])) return false;
        if (!CouldBeBetter(least, price + network.Price + _priceBefore[section], count + network.Count + _countBefore[section]) || !Use(network)) return true;
        _chosen[section] = network;
        _totals[section] = before;
        if (section == 0 || !_areRated || CanTakeHeat(section)) Descend(section - 1, before, reached, price + network.Price, count + network.Count);
        Free(network);
        return true;
    }

    // The sections chosen so far, held against what is the least whatever the others will be.
    private bool CanTakeHeat(int section)
    {
        _steps += HeatSteps;
        double[] lowest = [.. _lowest[..section], .. _totals[section..]], highest = [.. _highest[..section], .. _totals[section..]];
        for (int i = section - 1; i >= 0; i--) highest[i] = Math.Min(highest[i], _bounds.MostBefore(highest[i + 1], MostAmps));
        double[] squares = HeatBound.Of(_problem.Input, lowest, highest, _problem.Limits.SwitchingAmps, MostAmps);
        for (int i = section; i < _chosen.Length; i++) if (_chosen[i].Ohms * squares[i] > _chosen[i].CapabilityJoules * _problem.MostShare) return false;
        return true;
    }

    private bool CouldBeBetter(double peak, decimal price, int count) =>
        _best == null || PartsKey.Of(_problem.Objective, peak * (1 - Rounding), _problem.Limits.PeakAmps, price, count).CompareTo(_best.Key) < 0;

    private void Count(decimal price, int count)
    {
        _steps += DesignSteps;
        StarterDesign design;
        try
        {
            design = StarterDesigner.Design(_problem.InputOf([.. _chosen.Select(network => network.Ohms)]));
        }
        catch (DesignException)
        {
            return;
        }

        double worst = design.WorstPeakAmps;
        if (StarterDesigner.Exceeds(worst, _problem.Limits.PeakAmps)) return;
        for (int i = 0; i < _chosen.Length; i++) if (design.Stages[i].EnergyJoules > _chosen[i].CapabilityJoules * _problem.MostShare) return;
        PartsKey key = PartsKey.Of(_problem.Objective, worst, _problem.Limits.PeakAmps, price, count);
        if (_best == null || key.CompareTo(_best.Key) < 0) _best = new PartsFound([.. _chosen], design, key, true);
    }

    private bool Use(PartNetwork network)
    {
        if (!_problem.KeepsToQuantities) return true;
        bool isThere = true;
        foreach ((Part part, _, _) in network.Parts())
        {
            if (part.Quantity is not int quantity) continue;
            int used = _used[part] = _used.GetValueOrDefault(part) + 1;
            isThere &= used <= quantity;
        }

        if (!isThere) Free(network);
        return isThere;
    }

    private void Free(PartNetwork network)
    {
        if (!_problem.KeepsToQuantities) return;
        foreach ((Part part, _, _) in network.Parts()) if (part.Quantity != null) _used[part]--;
    }
}
