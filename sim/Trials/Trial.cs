using System;
using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials;

/// <summary>One trial, ready to run: a file, or one row of its parameters.</summary>
public sealed record Trial
{
    /// <summary>Stem of the file, with the row in brackets where there are rows: "field-lost [lathe]".</summary>
    public required string Name { get; init; }

    /// <summary>Title of the file; its stem where it has none.</summary>
    public required string Title { get; init; }

    /// <summary>The trial's file as the user named it.</summary>
    public required string FileName { get; init; }

    /// <summary>Its bytes.</summary>
    public required ReadOnlyMemory<byte> FileBytes { get; init; }

    /// <summary>Bytes of the case file.</summary>
    public required ReadOnlyMemory<byte> CaseBytes { get; init; }

    /// <summary>SHA-256 of its bytes, hexadecimal.</summary>
    public required string FileSha256 { get; init; }

    /// <summary>Name of the row of parameters; empty where there are none.</summary>
    public required string Row { get; init; }

    /// <summary>Tags by which it is picked.</summary>
    public required IReadOnlyList<string> Tags { get; init; }

    /// <summary>The case with what the trial sets and lets happen.</summary>
    public required CaseFile Case { get; init; }

    /// <summary>What a target is given.</summary>
    public required TargetJob Job { get; init; }

    /// <summary>What is expected, in the order of the file.</summary>
    public required IReadOnlyList<Expectation> Expectations { get; init; }

    /// <summary>The number from which all noise follows.</summary>
    public int Seed => Case.Has(CaseKeys.SensorsSeed) ? Case.Count(CaseKeys.SensorsSeed) : 1;
}
