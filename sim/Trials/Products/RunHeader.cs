using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Products;

/// <summary>What stands at the beginning of every product, before the first trial has ended.</summary>
/// <param name="Target">Name of the target.</param>
/// <param name="CoreVersion">Version of this program's core; a target's own stands with each trial.</param>
/// <param name="Trials">What is going to be run.</param>
public sealed record RunHeader(string Target, string CoreVersion, IReadOnlyList<RunHeader.Planned> Trials)
{
    /// <summary>A trial that is going to be run.</summary>
    /// <param name="Trial">Its name.</param>
    /// <param name="File">Its file.</param>
    /// <param name="FileSha256">SHA-256 of the file, hexadecimal.</param>
    /// <param name="Case">Its case.</param>
    /// <param name="CaseSha256">SHA-256 of the case, hexadecimal.</param>
    /// <param name="SettingsChecksum">Checksum of the settings.</param>
    /// <param name="Seed">The number from which all noise follows.</param>
    public sealed record Planned(string Trial, string File, string FileSha256, string Case, string CaseSha256, string SettingsChecksum, int Seed);

    /// <summary>True where machine and board kept to clocks of their own.</summary>
    public bool ByTheClock { get; init; }

    /// <summary>The header of a run.</summary>
    public static RunHeader Of(ITrialTarget target, IEnumerable<Trial> trials) =>
        new(target.Name, CoreIdentity.Version, [.. trials.Select(Plan)]) { ByTheClock = target.IsByTheClock };

    /// <summary>The line of one trial.</summary>
    public static Planned Plan(Trial trial) => new(
        trial.Name, trial.FileName, trial.FileSha256, trial.Case.FileName, trial.Case.Sha256, SettingsText.Checksum(trial.Job.Run.Settings), trial.Seed);
}
