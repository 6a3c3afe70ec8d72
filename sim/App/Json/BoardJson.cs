using System.Globalization;
using StarterCtl.Core;
using StarterCtl.Link;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what a board says of itself.</summary>
public sealed record BoardJson(
    string Board, string Version, int SettingsVersion, string SettingsChecksum, string CaseHash, bool ComputesAlike, string ResetCause, Phase Phase, bool LocalPermit, string? Locked)
{
    /// <summary>Makes it of a greeting.</summary>
    public static BoardJson Of(BoardGreeting greeting, BoardLock? atPowerUp) => new(
        greeting.BoardName,
        greeting.Version,
        greeting.SettingsVersion,
        greeting.SettingsChecksum.ToString("x8", CultureInfo.InvariantCulture),
        Engine.Cases.CaseHash.Shown(greeting.CaseHash),
        greeting.ComputesAlike,
        greeting.ResetCause.ToString(),
        greeting.Phase,
        greeting.LocalPermit,
        atPowerUp is { IsOpen: false } ? atPowerUp.Sentence : null);
}
