namespace StarterCtl.Core;

/// <summary>The one table of faults, in the order of their importance; append only.</summary>
public static class FaultTable
{
    private const string AllOff = "Every contactor was commanded open and the trip is latched until a reset.";

    /// <summary>Every fault, in the order of its id; the first row is no fault.</summary>
    public static readonly FaultRow[] Rows =
    {
        new FaultRow(
            FaultId.None, "no fault", "", FaultSeverity.None,
            "Nothing was wrong.",
            "Nothing.",
            "Nothing."),
        new FaultRow(
            FaultId.EmergencyStop, "emergency stop", "", FaultSeverity.Off,
            "The hard-wired stop chain was open.",
            AllOff,
            "Why the stop was used. Release the stop only when the drive may be live again."),
        new FaultRow(
            FaultId.ReadingInvalid, "reading invalid", "", FaultSeverity.Off,
            "A reading of supply, current or speed was not a number, out of its plausible range, or not fresh.",
            AllOff,
            "Sensor supply and wiring, connector, range setting. A speed sensor that has come loose reads plausibly low: look at it too."),
        new FaultRow(
            FaultId.Overcurrent, "overcurrent", "A", FaultSeverity.Off,
            "The armature current passed the instantaneous trip.",
            AllOff,
            "A welded or drifted starter section, a short in the armature circuit, a jammed load, a threshold set too low."),
        new FaultRow(
            FaultId.ContactDidNotClose, "contact did not close", "", FaultSeverity.Off,
            "A contactor was commanded closed and its auxiliary contact did not follow in time, or dropped out and would have come back to a shaft too slow for it.",
            AllOff,
            "Coil voltage and wiring, mechanical freedom of the contactor, its auxiliary contact."),
        new FaultRow(
            FaultId.ContactDidNotOpen, "contact did not open", "", FaultSeverity.MayBeLive,
            "A contactor was commanded open and its auxiliary contact said closed. It may be welded.",
            AllOff + " A welded line contact keeps the motor live.",
            "Isolate the supply first. Then look for a welded main contact, a jammed mechanism or a faulty auxiliary contact."),
        new FaultRow(
            FaultId.StageTookTooLong, "stage took too long", "s", FaultSeverity.Off,
            "A stage stayed in effect longer than it may, so its resistance was getting hot.",
            AllOff,
            "Load too heavy or jammed, supply low, weak field, threshold too high. Let the resistance cool before the next start."),
    };

    /// <summary>The row of a fault; that of no fault for an id that the table does not know.</summary>
    public static FaultRow RowOf(FaultId id)
    {
        for (int i = 0; i < Rows.Length; i++)
        {
            if (Rows[i].Id == id) return Rows[i];
        }

        return Rows[0];
    }
}
