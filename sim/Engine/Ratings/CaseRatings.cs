using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>What the parts around a start must bear: bus and cable, sections and windings, overload protection, contactors.</summary>
public sealed record CaseRatings
{
    /// <summary>Bus and cable; null where the case gives neither cable nor permitted dip.</summary>
    public required SupplyLoading? Supply { get; init; }

    /// <summary>Sections and windings; null where nothing of the case warms up.</summary>
    public required DutyStudy? Heat { get; init; }

    /// <summary>Overload protection; null where no current to set it to is known.</summary>
    public required OverloadChoice? Overload { get; init; }

    /// <summary>Contactors; empty where nothing but the supply was asked for.</summary>
    public required IReadOnlyList<ContactorDemand> Contactors { get; init; }

    /// <summary>Samples of the start from cold; null where none was simulated.</summary>
    public required Record? ColdStart { get; init; }

    /// <summary>What passes a limit that the case gives; empty where nothing does.</summary>
    public required IReadOnlyList<string> Excesses { get; init; }

    /// <summary>Looks at a case.</summary>
    /// <param name="designed">The designed case.</param>
    /// <param name="cancellation">Ends it with an <see cref="System.OperationCanceledException"/>.</param>
    /// <returns>Null where the case has no key that asks for it.</returns>
    /// <exception cref="CaseException">Keys contradict each other, or the start does not come to its end; names file, line and key.</exception>
    public static CaseRatings? Of(CaseDesign designed, CancellationToken cancellation = default)
    {
        CaseFile file = designed.File;
        bool asksForParts = file.HasAnyOf(CaseKeys.DutyRunTime.Table) || Asking.Any(file.Has);
        SupplyLoading? supply = SupplyLoading.Of(designed);
        if (!asksForParts) return supply == null ? null : new CaseRatings { Supply = supply, Heat = null, Overload = null, Contactors = [], ColdStart = null, Excesses = [.. Excess(file, supply, null, null, [])] };

        PreparedRun prepared = CaseRunner.Prepare(file);
        ThrowIfAny(RatingsProblems.Of(file, prepared));
        StartRunner runner = new(prepared, cancellation);
        (HeatedStart settled, double aloneSeconds) = runner.Settled(prepared.Designed.Design.Stages.Sum(stage => stage.ExpectedSeconds), out string failure);
        if (failure.Length > 0) throw new CaseException([file.Problem(AskedBy(file), $"a start from cold that does not come to its end: {failure}", "a case whose start from cold reaches the full supply")]);
        ThrowIfAny(RatingsProblems.ShortRun(file, aloneSeconds));

        DutyStudy? heat = prepared.Setup.Heat == null ? null : new DutyPlanner(file, prepared, runner, settled, aloneSeconds).Study();
        Record coldStart = runner.NewRecord();
        runner.Run(runner.Cold, settled.Seconds, coldStart);
        OverloadChoice? overload = OverloadChooser.Of(prepared, coldStart, settled.Result.FinalAmps, heat?.Duty?.Times);
        IReadOnlyList<ContactorDemand> contactors = ContactorDemands.Of(prepared, settled);
        return new CaseRatings { Supply = supply, Heat = heat, Overload = overload, Contactors = contactors, ColdStart = coldStart, Excesses = [.. Excess(file, supply, heat, overload, contactors)] };
    }

    private static IReadOnlyList<CaseKey> Asking { get; } =
        [CaseKeys.StarterSectionHotSpotLimit, CaseKeys.StarterSectionHotSpotFactor, CaseKeys.MotorWindingTemperatureLimit, CaseKeys.ContactorsRatedCurrent];

    private static CaseKey AskedBy(CaseFile file) => Asking.Append(CaseKeys.DutyRunTime).First(file.Has);

    private static void ThrowIfAny(IEnumerable<CaseProblem> found)
    {
        CaseProblem[] problems = [.. found];
        if (problems.Length > 0) throw new CaseException(problems);
    }

    private static IEnumerable<string> Excess(CaseFile file, SupplyLoading? supply, DutyStudy? heat, OverloadChoice? overload, IReadOnlyList<ContactorDemand> contactors)
    {
        if (supply is { IsExceeded: true })
            yield return $"At the peak the bus dips by {Text.Number(100 * supply.Points[^1].BusDipFraction)} %, more than the permitted {Text.Number(100 * supply.PermittedDip!.Value)} %.";
        if (heat is { ConsecutiveStarts: 0 }) yield return $"Not even one start from cold is permitted: {heat.ConsecutiveExcess}.";
        if (heat?.Duty is { Excess.Length: > 0 } duty) yield return $"The duty is not permitted: {duty.Excess}.";
        if (heat?.Duty is GivenDuty asked && file.Has(CaseKeys.ProtectionStartsPerHour) && asked.Times.StartsPerHour > file.Count(CaseKeys.ProtectionStartsPerHour))
            yield return $"The duty asks for {Text.Number(asked.Times.StartsPerHour)} starts an hour, protection.starts-per-hour permits {file.Count(CaseKeys.ProtectionStartsPerHour)}.";
        if (overload is { Set: not null } && overload.Rows.First(row => row.Class == overload.Set) is { Objection.Length: > 0 } row)
            yield return $"The overload class {row.Class.Name} does not fit: {row.Objection}.";
        foreach (ContactorDemand contactor in contactors.Where(one => one.IsExceeded))
            yield return $"The contactor of {contactor.Name} is rated {Text.Number(contactor.GivenAmps!.Value)} A and takes at least {Text.Number(contactor.RatedAmps)} A in {contactor.Category.Name}: {contactor.Decides}.";
    }
}
