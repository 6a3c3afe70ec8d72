namespace StarterCtl.Trials.Targets;

/// <summary>What a target says of itself after a trial.</summary>
/// <param name="CoreVersion">Version of the core that decided, as the target reports it.</param>
/// <param name="SettingsChecksum">Checksum of the settings that it ran with, as it reports them, 0x and eight digits.</param>
public sealed record TargetReport(string CoreVersion, string SettingsChecksum)
{
    /// <summary>The board as it calls itself, with the version of its program; null where there is none.</summary>
    public string? Board { get; init; }

    /// <summary>How the link did; null where there is none, as in the simulator.</summary>
    public LinkFigures? Link { get; init; }
}
