using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>
/// The sections and settings with which a peak is kept on every one of some plants and no stage sticks, stage by stage: the least setting
/// with which the stage still ends, then the least resistance behind it that keeps the peak. Both are also what leaves most room to the next
/// stage, so that nothing better is missed. The peak is then lowered until the last section is used up. One lockout current holds for all
/// stages: the least with which each of them still ends.
/// </summary>
/// <param name="plants">The plants.</param>
/// <param name="span">How far real sections may lie off.</param>
/// <param name="spare">Part of the load's torque to be left over at a cutout.</param>
/// <param name="givenLockoutAmps">Lockout current of the case, A; null: it is chosen.</param>
/// <param name="dwellSeconds">Least time in a stage, s.</param>
/// <param name="cancellation">Stops the search.</param>
internal sealed class GradingSearch(IReadOnlyList<PlantPoint> plants, SectionSpan span, double spare, double? givenLockoutAmps, double dwellSeconds, CancellationToken cancellation)
{
    private const double PeakTolerance = 1e-6;
    private const double OhmTolerance = 1e-10;
    private const double RootRounding = 1e-9;
    private const int MostRounds = 60;
    private const int LockoutRounds = 4;

    /// <summary>The grading with the least peak; null where no peak gets the load going.</summary>
    /// <param name="stages">Number of stages, 1 or more.</param>
    public (Grading Grading, double PeakAmps)? Lowest(int stages)
    {
        double high = plants.Max(point => point.Plant.DirectAmps), low = 0;
        Grading? best = Keeping(high, stages);
        if (best == null) return null;
        while (high - low > PeakTolerance * high)
        {
            double middle = (low + high) / 2;
            if (Keeping(middle, stages) is Grading found) (best, high) = (found, middle);
            else low = middle;
        }

        return (best, high);
    }

    /// <summary>The settings with which no stage of given sections sticks and the peak is least.</summary>
    /// <param name="sectionOhms">Nominal sections, ohm.</param>
    /// <param name="peakAmps">Highest current of the start, A.</param>
    /// <returns>Null where the load is not accelerated, or a given lockout current holds a stage for ever.</returns>
    public Grading? Through(IReadOnlyList<double> sectionOhms, double peakAmps)
    {
        Ends[] ends = [.. Enumerable.Range(0, sectionOhms.Count).Select(i => LeastSettings(sectionOhms.Skip(i).Sum(), peakAmps))];
        double lockout = ends.Max(end => end.LockoutAmps);
        if (!double.IsFinite(lockout) || lockout > givenLockoutAmps) return null;
        return new Grading(sectionOhms, [.. ends.Select(end => end.VoltsLeft)], new Lockout(givenLockoutAmps ?? lockout, dwellSeconds));
    }

    // Null where some number of stages is too few for this peak, or the load is not accelerated with it.
    private Grading? Keeping(double peakAmps, int stages)
    {
        if (givenLockoutAmps is double given) return Keeping(peakAmps, stages, new Lockout(given, dwellSeconds), out double asked) is Grading kept && asked <= given ? kept : null;
        // The last stage asks for the most: with no section left the load takes the highest current that any stage ends with.
        double lockout = LeastSettings(0, peakAmps).LockoutAmps * (1 + RootRounding);
        Grading? best = null;
        for (int round = 0; round < LockoutRounds && double.IsFinite(lockout); round++)
        {
            if (Keeping(peakAmps, stages, new Lockout(lockout, dwellSeconds), out double needed) is not Grading found || needed > lockout) break;
            best = found;
            if (lockout <= needed * (1 + 2 * RootRounding)) break;
            lockout = needed * (1 + RootRounding);
        }

        return best;
    }

    private Grading? Keeping(double peakAmps, int stages, Lockout lockout, out double neededAmps)
    {
        cancellation.ThrowIfCancellationRequested();
        neededAmps = 0;
        double ohms = Most(point => point.Plant.SectionsFor(peakAmps, 0)) / span.Low;
        List<double> sections = [], settings = [];
        for (int i = 0; i < stages; i++)
        {
            Ends ends = LeastSettings(ohms, peakAmps);
            if (!double.IsFinite(ends.VoltsLeft)) return null;
            double next = LeastNext(ohms, ends.VoltsLeft, lockout, peakAmps);
            bool isLast = i == stages - 1;
            if (!(next < ohms) || (isLast && next > 0)) return null;
            // Where stages are to spare the last of them have next to nothing to do.
            double kept = isLast ? 0 : Math.Max(next, ohms / 1e6);
            sections.Add(ohms - kept);
            settings.Add(ends.VoltsLeft);
            neededAmps = Math.Max(neededAmps, ends.LockoutAmps);
            ohms = kept;
        }

        return new Grading(sections, settings, lockout);
    }

    // Infinite where one of the plants does not get going.
    private Ends LeastSettings(double ohms, double peakAmps)
    {
        Ends[] all = new Ends[plants.Count];
        for (int i = 0; i < all.Length; i++)
        {
            Ends low = EndsOf(plants[i].Plant, span.Low * ohms, peakAmps), high = EndsOf(plants[i].Plant, span.High * ohms, peakAmps);
            all[i] = new Ends(Math.Max(low.VoltsLeft, high.VoltsLeft), Math.Max(low.LockoutAmps, high.LockoutAmps));
        }

        return new Ends(all.Max(end => end.VoltsLeft), all.Max(end => end.LockoutAmps));
    }

    private Ends EndsOf(StaticPlant plant, double real, double peakAmps)
    {
        if (plant.AcceleratedTo(real, spare, peakAmps) is not double speed) return new Ends(double.PositiveInfinity, double.PositiveInfinity);
        double amps = plant.AmpsAt(real, speed, peakAmps);
        return new Ends(plant.SeenVoltsLeft(speed, amps) + plant.NoiseVolts, plant.SeenAmps(amps) + plant.NoiseAmps);
    }

    // Where the supply sags the speed of the cutout depends a little on the section that is looked for: a few rounds settle it.
    private double LeastNext(double ohms, double voltsLeft, Lockout lockout, double peakAmps)
    {
        double next = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            double before = next;
            next = Most(point => Needed(point.Plant, before));
            if (!(next < ohms) || Math.Abs(next - before) <= OhmTolerance * ohms) break;
        }

        return next;

        double Needed(StaticPlant plant, double supposed)
        {
            double most = double.NegativeInfinity;
            foreach ((double own, double behind) in span.Combinations())
            {
                double speed = plant.EarliestCutout(own * (ohms - supposed) + behind * supposed, voltsLeft, lockout, peakAmps);
                most = Math.Max(most, plant.SectionsFor(peakAmps, speed) / behind);
            }

            return most;
        }
    }

    private double Most(Func<PlantPoint, double> of) => plants.Max(of);

    // With these or more a stage still ends.
    private readonly record struct Ends(double VoltsLeft, double LockoutAmps);
}
