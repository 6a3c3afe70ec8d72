using System.Text;
using StarterCtl.Core;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>What a board says of itself.</summary>
/// <param name="BoardName">Its name.</param>
/// <param name="Version">Version of firmware and core, such as 0.1.0.</param>
/// <param name="SettingsVersion">Version of its table of settings.</param>
/// <param name="SettingsChecksum">Checksum of the settings that it keeps.</param>
/// <param name="CaseHash">The case that they were designed from, as it was uploaded.</param>
/// <param name="BootCheckHash">What its boot check came to.</param>
/// <param name="ResetCause">Why it began anew.</param>
/// <param name="Phase">Phase of its controller.</param>
/// <param name="Capabilities">What its link can do.</param>
/// <param name="LocalPermit">True while a start over the link is permitted at the machine.</param>
public sealed record BoardGreeting(
    string BoardName, string Version, int SettingsVersion, int SettingsChecksum, int CaseHash, int BootCheckHash, ResetCause ResetCause,
    Phase Phase, LinkCapabilities Capabilities, bool LocalPermit)
{
    /// <summary>True if the board computes as this desk does.</summary>
    public bool ComputesAlike => BootCheckHash == BootCheck.Expected;

    internal static BoardGreeting Of(HelloAnswer hello) => new(
        Encoding.ASCII.GetString(hello.BoardName).TrimEnd('\0'),
        $"{hello.VersionMajor}.{hello.VersionMinor}.{hello.VersionPatch}",
        hello.SettingsVersion,
        hello.SettingsSum,
        hello.CaseHash,
        hello.BootCheckHash,
        hello.ResetCause,
        hello.Phase,
        hello.Capabilities,
        hello.LocalPermit);
}
