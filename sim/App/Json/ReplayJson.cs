using System.Collections.Generic;
using StarterCtl.Engine;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a replay. Extend, never rename.</summary>
public sealed record ReplayJson(
    string Verdict,
    bool Same,
    bool WithOtherSettings,
    long Ticks,
    long DifferentTicks,
    ReplayDifferenceJson? First,
    ReplayCourseJson Recorded,
    ReplayCourseJson Replayed,
    RecordBreak? Stopped,
    IReadOnlyList<string> Warnings,
    string Case,
    string CaseSha256,
    string RecordCoreVersion,
    string CoreVersion)
{
    /// <summary>The shape of a replay.</summary>
    /// <param name="header">The record's header.</param>
    /// <param name="result">What the replay came to.</param>
    /// <param name="stopped">Where the record could not be read further; null: it was whole.</param>
    /// <param name="verdict">The verdict in words.</param>
    /// <param name="warnings">What speaks against taking it as it is.</param>
    public static ReplayJson Of(RecordHeader header, ReplayResult result, RecordBreak? stopped, string verdict, IReadOnlyList<string> warnings) => new(
        verdict,
        result.IsSame,
        result.IsWithOtherSettings,
        result.Ticks,
        result.DifferentTicks,
        result.First is ReplayDifference first ? new(first.Row, first.Seconds, first.Signal.Name, first.Signal.Show(first.Recorded), first.Signal.Show(first.Replayed)) : null,
        ReplayCourseJson.Of(result.Recorded),
        ReplayCourseJson.Of(result.Replayed),
        stopped,
        warnings,
        header.Case,
        header.CaseSha256,
        header.CoreVersion,
        CoreIdentity.Version);
}
