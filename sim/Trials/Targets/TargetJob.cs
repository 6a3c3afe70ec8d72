using StarterCtl.Engine.Runs;

namespace StarterCtl.Trials.Targets;

/// <summary>What a target is to run.</summary>
/// <param name="Run">Machine, events and settings.</param>
/// <param name="CaseSha256">SHA-256 of the case file, hexadecimal, for a board that remembers whose settings it has.</param>
public sealed record TargetJob(PreparedRun Run, string CaseSha256);
