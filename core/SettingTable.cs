namespace StarterCtl.Core;

/// <summary>The one table of settings. Text form, check, checksum and catalogue all go by it; append only.</summary>
public static class SettingTable
{
    /// <summary>Version of the set; changes with every row.</summary>
    public const int Version = 1;

    /// <summary>Every setting, in the order of its id.</summary>
    public static readonly SettingRow[] Rows =
    {
        Whole(SettingId.StageCount, "stage-count", "", 1, Settings.MostStages, "", "Number of stages. One contactor and one section each; more than 16 do not fit the coil bits."),
        Above(SettingId.StageOhms, "stage-ohms", "ohm", 0f, "", "Armature-circuit total while each stage is in effect, and last of the armature alone. Falls from stage to stage; used for the resistive estimate."),
        Above(SettingId.VoltsLeft, "volts-left", "V", 0f, "", "Voltage that may be left across the next stage at a cutout: the permitted peak times the next total. Falls from stage to stage."),
        Above(SettingId.MachineConstant, "machine-constant", "V s/rad", 0f, "", "Back-EMF per speed. An error in it is the same error in every threshold."),
        From(SettingId.BrushDropVolts, "brush-drop", "V", 0f, "0", "Drop of both brushes. Left at 0 the peaks come out lower than designed."),
        Above(SettingId.LockoutAmps, "lockout-current", "A", 0f, "1000000 (off)", "No stage is cut out above this magnitude. Off unless wanted: the threshold alone keeps the peak."),
        Above(SettingId.InstantTripAmps, "instant-trip", "A", 0f, "", "Magnitude that trips at once. Above the permitted peak, below what the hardware's own device lets through."),
        Above(SettingId.HighestSupplyVolts, "highest-supply", "V", 0f, "", "A reading above it, or below 0 by more than a tenth of it, is not believed."),
        Above(SettingId.HighestSpeedRadPerSec, "highest-speed", "rad/s", 0f, "", "A reading of larger magnitude is not believed."),
        Above(SettingId.SteadyAmpsPerSec, "steady-slope", "A/s", 0f, "1000000 (always)", "Current slope up to which the resistive estimate leaves the inductance out."),
        Whole(SettingId.ConfirmMicroseconds, "confirm-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which all conditions of a cutout must hold. 0 decides on the first control period."),
        Whole(SettingId.MinimumDwellMicroseconds, "minimum-dwell", "us", 0, Settings.LongestMicroseconds, "0", "Shortest time in a stage. 0.1 to 0.5 s is common practice."),
        Whole(SettingId.MaximumStageMicroseconds, "maximum-stage-time", "us", 1, Settings.LongestMicroseconds, "1000000000", "Longest time in a stage, above the minimum dwell. Three to four times the expected time is common practice; the resistors' heat sets the end."),
        Whole(SettingId.ContactMicroseconds, "contact-time", "us", 1, Settings.LongestMicroseconds, "500000", "Time within which a contact must follow its coil. Twice the contactor's own time is common practice."),
    };

    private static SettingRow Above(SettingId id, string name, string unit, float lowest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, false, Settings.Largest, false, defaultText, reason);

    private static SettingRow From(SettingId id, string name, string unit, float lowest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, true, Settings.Largest, false, defaultText, reason);

    private static SettingRow Whole(SettingId id, string name, string unit, int lowest, int highest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, true, highest, true, defaultText, reason);
}
