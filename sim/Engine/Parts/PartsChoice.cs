using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>The parts of a starter, and the starter with them.</summary>
/// <param name="Request">What was asked for.</param>
/// <param name="Wanted">The design with sections of any value.</param>
/// <param name="Limits">The two currents that were kept to.</param>
/// <param name="Designed">The case with the chosen sections, designed: thresholds and peaks of the real values.</param>
/// <param name="Sections">The sections, first cut out first.</param>
/// <param name="IsProven">True when nothing better can be made of these parts; false when the search stopped before it knew.</param>
public sealed record PartsChoice(
    PartsRequest Request,
    CaseDesign Wanted,
    PartsLimits Limits,
    CaseDesign Designed,
    IReadOnlyList<BoughtSection> Sections,
    bool IsProven)
{
    /// <summary>The case that carries the parts.</summary>
    public CaseFile File => Designed.File;

    /// <summary>Number of parts.</summary>
    public int Count => Sections.Sum(section => section.Network.Count);

    /// <summary>Price of all parts; null for preferred values.</summary>
    public decimal? Price => Request.Stock == null ? null : Sections.Sum(section => section.Network.Price);

    /// <summary>Each section rounded to the nearest preferred value without a look at the others, and the highest peak that this would give.</summary>
    /// <returns>Null for a stock list.</returns>
    public (IReadOnlyList<double> SectionOhms, double PeakAmps)? RoundedAlone()
    {
        if (Request.Series is not PreferredSeries series) return null;
        double[] sections = [.. Wanted.Design.Stages.Select(stage => PreferredValues.Nearest(series, stage.SectionOhms))];
        double[] totals = StageGrading.TotalsOf(sections, Wanted.Input.ArmatureOhms);
        CutoutBounds bounds = new(Wanted.Input, Limits.SwitchingAmps);
        return (sections, System.Math.Max(bounds.FirstPeak(totals[0]), Enumerable.Range(0, sections.Length).Max(i => bounds.PeakAfter(totals[i], totals[i + 1]))));
    }

    /// <summary>The bill of materials: each part once, with falling resistance.</summary>
    public IReadOnlyList<BillLine> Bill() =>
        [.. Sections.SelectMany(section => section.Burdens).GroupBy(burden => burden.Part).OrderByDescending(group => group.Key.Ohms)
            .Select(group => new BillLine(group.Key, group.Count(), group.Key.Price * group.Count()))];

    /// <summary>The sections of a design made of networks.</summary>
    internal static IReadOnlyList<BoughtSection> SectionsOf(StarterDesign wanted, StarterDesign design, IReadOnlyList<PartNetwork> networks, double startsPerHour)
    {
        double worstAmps = 0;
        List<BoughtSection> sections = [];
        for (int i = 0; i < networks.Count; i++)
        {
            DesignedStage stage = design.Stages[i];
            worstAmps = System.Math.Max(worstAmps, stage.PeakAmps);
            double volts = worstAmps * networks[i].Ohms;
            PartBurden[] burdens = [.. networks[i].Parts().Select(share => BurdenOf(stage, share.Part, share.HeatShare, share.VoltShare * volts, startsPerHour))];
            sections.Add(new BoughtSection(stage.Stage, wanted.Stages[i].SectionOhms, networks[i], volts, burdens));
        }

        return sections;
    }

    private static PartBurden BurdenOf(DesignedStage stage, Part part, double heatShare, double worstVolts, double startsPerHour)
    {
        double? joules = stage.EnergyJoules * heatShare;
        return new PartBurden(stage.Stage, part, joules, joules * startsPerHour / PartRating.HourSeconds, joules is double heat ? part.Rating?.Share(heat, startsPerHour) : null, worstVolts);
    }
}
