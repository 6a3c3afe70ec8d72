using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Where settings that came over the link are kept.</summary>
public interface ISettingsTarget
{
    /// <summary>The settings that were kept last: what the controller runs on, or will once it has been built anew.</summary>
    Settings Kept { get; }

    /// <summary>Their <see cref="SettingsChecksum"/>, worked out when they were kept.</summary>
    int Checksum { get; }

    /// <summary>The case that they were designed from, as it was uploaded.</summary>
    int CaseHash { get; }

    /// <summary>
    /// Keeps a checked set. Called inside a control period while the controller is ready or not set up: take a copy, and build the
    /// controller anew behind that period.
    /// </summary>
    /// <param name="settings">The set; written again by the next upload.</param>
    /// <param name="checksum">Its checksum.</param>
    /// <param name="caseHash">The case that it was designed from.</param>
    /// <returns>False if it could not be kept; then the former one stays.</returns>
    bool TryKeep(Settings settings, int checksum, int caseHash);
}
