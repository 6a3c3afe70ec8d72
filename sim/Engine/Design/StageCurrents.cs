namespace StarterCtl.Engine.Design;

/// <summary>The two currents and the stage count after the slack has been used.</summary>
/// <param name="PeakAmps">I1, A; null when sections are given without it.</param>
/// <param name="SwitchingAmps">I2, A; null when sections are given without it.</param>
/// <param name="StageCount">Number of stages.</param>
/// <param name="ExactCount">The count before rounding; null when a current was computed from the count.</param>
/// <param name="Slack">How the slack was used; null for given sections.</param>
/// <param name="AreSectionsGiven">True when the sections are there already.</param>
internal sealed record StageCurrents(
    double? PeakAmps,
    double? SwitchingAmps,
    int StageCount,
    double? ExactCount,
    Slack? Slack,
    bool AreSectionsGiven)
{
    /// <summary>Sections are there: their number is the count, and the limits stay as given.</summary>
    public static StageCurrents OfSections(DesignInput input, int sectionCount)
    {
        if (sectionCount > StarterDesigner.MostStages || sectionCount < 1)
        {
            throw new DesignException(DesignQuantity.Sections, $"{sectionCount} sections", $"1 to {StarterDesigner.MostStages}");
        }

        if (input.StageCount is int count && count != sectionCount)
        {
            throw new DesignException(DesignQuantity.Stages, $"{count}", $"{sectionCount}, the number of sections given; or leave it out");
        }

        if (input.PeakAmps == null && input.SwitchingAmps == null && input.CutoutVolts == null)
        {
            throw new DesignException(DesignQuantity.PeakCurrent, "no current and no threshold", "a peak current, a switching current or cutout voltages for the given sections");
        }

        return new StageCurrents(input.PeakAmps, input.SwitchingAmps, sectionCount, null, null, true);
    }

    /// <summary>Computes what the slack leaves open.</summary>
    public static StageCurrents Resolve(DesignInput input, GradingRule rule)
    {
        Slack slack = input.Slack ?? Infer(input);
        double? exact = input.PeakAmps is double i1 && input.SwitchingAmps is double i2
            ? CountBetween(input, rule, slack, i1, i2)
            : null;
        int count = input.StageCount ?? input.CutoutVolts?.Count ?? CountOf(exact, slack);
        if (count > StarterDesigner.MostStages)
        {
            throw new DesignException(
                input.SwitchingAmps == null ? DesignQuantity.Stages : DesignQuantity.SwitchingCurrent,
                $"limits so close together that {count} stages are needed",
                $"limits that need at most {StarterDesigner.MostStages} stages: lower the switching current or raise the peak current");
        }

        return slack switch
        {
            Design.Slack.RaiseSwitchingCurrent => new(
                Required(input.PeakAmps, DesignQuantity.PeakCurrent, slack),
                rule.RaisedSwitchingAmps(input.PeakAmps!.Value, count),
                count, exact, slack, false),
            Design.Slack.LowerPeakCurrent => LowerPeak(input, rule, count, exact),
            _ => LastSection(input, count, exact),
        };
    }

    // A given count with one current free does not need the exact one: then it is only left out.
    private static double? CountBetween(DesignInput input, GradingRule rule, Slack slack, double peakAmps, double switchingAmps)
    {
        double exact = rule.ExactCount(peakAmps, switchingAmps);
        if (double.IsFinite(exact)) return exact;
        bool isCountGiven = input.StageCount != null || input.CutoutVolts != null;
        return isCountGiven && slack != Design.Slack.LastSection ? null : throw rule.NeverReachesArmature(peakAmps, switchingAmps);
    }

    private static Slack Infer(DesignInput input)
    {
        if (input.SwitchingAmps == null) return Design.Slack.RaiseSwitchingCurrent;
        return input.PeakAmps == null ? Design.Slack.LowerPeakCurrent : Design.Slack.LastSection;
    }

    private static int CountOf(double? exact, Slack slack)
    {
        if (exact is double count) return StageGrading.WholeCount(count);
        throw new DesignException(
            DesignQuantity.Stages,
            $"no number of stages, with a current left open for slack = \"{Name(slack)}\"",
            "a number of stages, or both the peak and the switching current");
    }

    private static StageCurrents LowerPeak(DesignInput input, GradingRule rule, int count, double? exact)
    {
        double switching = Required(input.SwitchingAmps, DesignQuantity.SwitchingCurrent, Design.Slack.LowerPeakCurrent);
        double peak = rule.LoweredPeakAmps(switching, count);
        return new StageCurrents(peak, switching, count, exact, Design.Slack.LowerPeakCurrent, false);
    }

    private static StageCurrents LastSection(DesignInput input, int count, double? exact)
    {
        double peak = Required(input.PeakAmps, DesignQuantity.PeakCurrent, Design.Slack.LastSection);
        double switching = Required(input.SwitchingAmps, DesignQuantity.SwitchingCurrent, Design.Slack.LastSection);
        int needed = StageGrading.WholeCount(exact!.Value);
        // Too few stages still make a starter: its last peak passes the limit, which a warning and the verdict say.
        if (count > needed)
        {
            throw new DesignException(
                input.StageCount == null ? DesignQuantity.CutoutVoltages : DesignQuantity.Stages,
                $"{count}, but with both currents kept {needed} already reach the armature alone (exactly {Text.Number(exact.Value)})",
                $"{needed}; or slack = \"raise switching current\" or \"lower peak current\" to use the others");
        }

        return new StageCurrents(peak, switching, count, exact, Design.Slack.LastSection, false);
    }

    private static double Required(double? amps, DesignQuantity quantity, Slack slack) =>
        amps ?? throw new DesignException(quantity, "nothing", $"a current; slack = \"{Name(slack)}\" keeps it as given");

    /// <summary>The name of a use of the slack as the case file writes it.</summary>
    internal static string Name(Slack slack) => slack switch
    {
        Design.Slack.RaiseSwitchingCurrent => "raise switching current",
        Design.Slack.LowerPeakCurrent => "lower peak current",
        _ => "last section",
    };
}
