using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Parts;

/// <summary>Chooses parts for the sections of a case.</summary>
public static class PartsDesigner
{
    // Preferred values beside the section's own: ten times as much in parallel changes a value by a tenth, a tenth in series too.
    private const double ValueRange = 10;

    /// <summary>Chooses the parts of a case and designs it with them.</summary>
    /// <param name="file">The case, without sections or thresholds of its own.</param>
    /// <param name="request">What the sections may be made of.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <exception cref="CaseException">The case cannot be designed, or no parts meet it: then with what is nearest and what would mend it.</exception>
    public static PartsChoice Choose(CaseFile file, PartsRequest request, CancellationToken cancellation = default)
    {
        CaseProblem[] problems = [.. ((CaseKey[])[CaseKeys.StarterSections, CaseKeys.StarterCutoutVoltages]).Where(file.Has)
            .Select(key => file.Problem(key, "it in a case whose parts are to be chosen", "the case without it: sections and thresholds follow from the parts"))];
        if (problems.Length > 0) throw new CaseException(problems);

        CaseDesign wanted = CaseDesign.Of(file);
        PartsLimits limits = PartsLimits.Of(wanted.Input, wanted.Design, request.Give);
        PartsRefusal refusal = new(file, wanted, limits, request, cancellation);
        refusal.CheckPeak();
        PartsProblem problem = ProblemOf(file, wanted.Input, limits, wanted.Design.StageCount, request) with { WantedSquares = SquaresOf(wanted.Design) };
        (PartsFound? best, bool isWhole) = PartsSearch.Find(problem, cancellation);
        PartsFound found = best ?? throw refusal.Of(problem, isWhole);
        CaseDesign designed = CaseDesign.Of(CaseFile.Parse(file.FileName, PartsCase.Write(file, found, limits, request.SourceText)));
        return new PartsChoice(
            request,
            wanted,
            limits,
            designed,
            PartsChoice.SectionsOf(wanted.Design, designed.Design, found.Sections, request.StartsPerHour),
            found.IsProven);
    }

    /// <summary>What the search has to work on.</summary>
    /// <exception cref="CaseException">There are too many networks.</exception>
    internal static PartsProblem ProblemOf(CaseFile file, DesignInput input, PartsLimits limits, int stages, PartsRequest request)
    {
        (double[] lowest, double[] highest) = new CutoutBounds(input, limits.SwitchingAmps).Windows(stages, limits.PeakAmps);
        double from = Enumerable.Range(0, stages).Min(i => lowest[i] - highest[i + 1]), to = Enumerable.Range(0, stages).Max(i => highest[i] - lowest[i + 1]);
        // Where a window reaches down to nothing the smallest section that is wanted says how small parts may be.
        from = System.Math.Max(from, to / (ValueRange * ValueRange));
        IReadOnlyList<Part> parts = request.PartsPerSection == 1 ? request.PartsBetween(from, to) : request.PartsBetween(from / ValueRange, to * ValueRange);
        IReadOnlyList<PartNetwork> networks = NetworkCatalogue.Between(parts, request.PartsPerSection, request.StartsPerHour, from, to)
            ?? throw new CaseException([new CaseProblem(file.FileName, 0, "", $"more than {NetworkCatalogue.Most} networks of up to {request.PartsPerSection} of {parts.Count} parts", "fewer parts per section, a coarser series or a shorter list")]);
        return new PartsProblem(input, limits, stages, networks, request.Objective);
    }

    private static double[]? SquaresOf(StarterDesign design) =>
        design.Stages[0].EnergyJoules == null ? null : [.. design.Stages.Select(stage => stage.EnergyJoules!.Value / stage.SectionOhms)];
}
