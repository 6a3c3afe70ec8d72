using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Json;

/// <summary>What was decided over a record, in short.</summary>
public sealed record ReplayCourseJson(IReadOnlyList<StageCommand> Cutouts, IReadOnlyList<PhaseEntry> Phases, FaultId Fault, double? FaultSeconds)
{
    /// <summary>The shape of a course.</summary>
    public static ReplayCourseJson Of(ReplayCourse course) =>
        new(course.Cutouts, course.Phases, course.Fault, course.Fault == FaultId.None ? null : course.FaultSeconds);
}
