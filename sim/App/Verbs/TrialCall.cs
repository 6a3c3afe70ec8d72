using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Trials;
using StarterCtl.Trials.Running;

namespace StarterCtl.App.Verbs;

/// <summary>One call of the verb trial.</summary>
/// <param name="Files">Trials' files, and folders of them.</param>
/// <param name="Folder">Where the products go.</param>
/// <param name="Target">What they are run against.</param>
/// <param name="Tags">Tags of which a trial must have one; none: any trial.</param>
/// <param name="Filter">Text that a trial's name must contain; null: any.</param>
/// <param name="Running">How they are run.</param>
/// <param name="HasBundles">True to keep every attempt in a bundle.</param>
/// <param name="AsJson">True to print the result as JSON.</param>
internal sealed record TrialCall(IReadOnlyList<string> Files, string Folder, TrialTargets Target, IReadOnlyList<string> Tags, string? Filter, TrialOptions Running, bool HasBundles, bool AsJson)
{
    /// <summary>What picks the trials, for a message.</summary>
    public string PickText => Tags.Count == 0 && Filter == null ? "no trial at all"
        : string.Join(" and ", Tags.Select(tag => $"--tag {tag}").Concat(Filter == null ? [] : [$"--filter \"{Filter}\""])) + ", which picks none";

    /// <summary>Whether a trial is to be run.</summary>
    public bool Picks(Trial trial) =>
        (Tags.Count == 0 || Tags.Any(trial.Tags.Contains)) && (Filter == null || trial.Name.Contains(Filter, StringComparison.OrdinalIgnoreCase));
}
