using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>A case designed, run and judged: everything that a record, a table or a report shows.</summary>
public sealed record StartStudy
{
    /// <summary>The case's title.</summary>
    public required string Title { get; init; }

    /// <summary>Name of the case file, without folders.</summary>
    public required string CaseName { get; init; }

    /// <summary>SHA-256 of the case file's bytes, hexadecimal.</summary>
    public required string CaseSha256 { get; init; }

    /// <summary>The plate.</summary>
    public required Plate Plate { get; init; }

    /// <summary>What the armature is made of; null where the case does not say.</summary>
    public Construction? Construction { get; init; }

    /// <summary>Speed at which the case measured its magnetisation curve, rad/s; null where it gives constants or no curve.</summary>
    public double? CurveRadPerSec { get; init; }

    /// <summary>What the starter was designed from.</summary>
    public required DesignInput DesignInput { get; init; }

    /// <summary>The designed starter.</summary>
    public required StarterDesign Design { get; init; }

    /// <summary>Machine, load, supply, contactors and events of the run.</summary>
    public required RunSetup Setup { get; init; }

    /// <summary>What the controller was given.</summary>
    public required Settings Settings { get; init; }

    /// <summary>What the run came to.</summary>
    public required RunResult Result { get; init; }

    /// <summary>Its samples at a fixed period, for the record.</summary>
    public required Record Record { get; init; }

    /// <summary>Its samples where something happened, for pictures and sums.</summary>
    public required Trace Trace { get; init; }

    /// <summary>The run held against its limits.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Warnings of case and design.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
