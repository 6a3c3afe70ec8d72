using System.Collections.Generic;

namespace StarterCtl.Engine.Runs;

/// <summary>What a replay came to.</summary>
public sealed record ReplayResult
{
    /// <summary>Ticks that were replayed.</summary>
    public required long Ticks { get; init; }

    /// <summary>Ticks on which any decision differs.</summary>
    public required long DifferentTicks { get; init; }

    /// <summary>The first difference; null where there is none.</summary>
    public required ReplayDifference? First { get; init; }

    /// <summary>Rows before, at and behind the first difference.</summary>
    public required IReadOnlyList<ReplayRow> Around { get; init; }

    /// <summary>What was decided then.</summary>
    public required ReplayCourse Recorded { get; init; }

    /// <summary>What is decided now.</summary>
    public required ReplayCourse Replayed { get; init; }

    /// <summary>True where other settings than the record's own were used: then differences are an answer, not a failure.</summary>
    public required bool IsWithOtherSettings { get; init; }

    /// <summary>What speaks against taking the result as it is; null: nothing.</summary>
    public required string? Warning { get; init; }

    /// <summary>True where every decision of every tick is the recorded one, bit for bit.</summary>
    public bool IsSame => DifferentTicks == 0;

    /// <summary>"same" or "different", with the warning where there is one.</summary>
    public string Verdict => (IsSame ? "same" : "different") + (Warning == null ? "" : $", but {Warning}");
}
