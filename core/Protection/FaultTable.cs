namespace StarterCtl.Core;

/// <summary>The one table of faults. Where two come on the same tick, the one that stands first is latched.</summary>
public static class FaultTable
{
    private const string AllOff = "Line, stage and brake contactors were commanded open, the field's once the line was proven open; latched until a reset.";

    /// <summary>Every fault, in the order of importance; the first row is no fault.</summary>
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
            FaultId.SettingsInvalid, "settings invalid", "", FaultSeverity.Off,
            "A setting failed its check when the controller was built.",
            "Nothing closes until the controller is built with sound settings; a reset does not help.",
            "The setting that is named, against its range in the settings page."),
        new FaultRow(
            FaultId.ReadingInvalid, "reading invalid", "", FaultSeverity.Off,
            "A reading was not a number or out of its plausible range, or the board could not read; the channel is named.",
            AllOff,
            "Sensor supply and wiring, connector, range setting. A speed sensor that has come loose reads plausibly low: look at it too."),
        new FaultRow(
            FaultId.Overcurrent, "overcurrent", "A", FaultSeverity.Off,
            "The armature current passed the instantaneous trip.",
            AllOff,
            "A welded or drifted starter section, a short in the armature circuit, a jammed load, a threshold set too low."),
        new FaultRow(
            FaultId.FieldLost, "field lost", "A", FaultSeverity.Off,
            "The field current fell below the least permitted while the line was closed. An unloaded motor runs away without it.",
            AllOff,
            "Field supply and fuse, field circuit, rheostat, field sensor. Look at the shaft before a reset: it may have overspeeded."),
        new FaultRow(
            FaultId.Overspeed, "overspeed", "rad/s", FaultSeverity.Off,
            "The shaft turned faster than it may. A series machine that loses its load and a shunt machine that loses its field do so.",
            AllOff,
            "Coupling and load, field, and the armature's bindings before the next start."),
        new FaultRow(
            FaultId.CurrentWhileOpen, "current while open", "A", FaultSeverity.MayBeLive,
            "Current flowed in the armature while every contact said open.",
            AllOff + " The motor may be live all the same.",
            "Isolate the supply first. Then a welded main contact with a sound auxiliary one, a fault to earth, the zero of the current sensor."),
        new FaultRow(
            FaultId.ContactDidNotOpen, "contact did not open", "", FaultSeverity.MayBeLive,
            "A contactor was commanded open and its contact, or the current, said closed. It may be welded.",
            AllOff + " A welded line contact keeps the motor live.",
            "Isolate the supply first. Then look for a welded main contact, a jammed mechanism or a faulty auxiliary contact."),
        new FaultRow(
            FaultId.ContactDidNotClose, "contact did not close", "", FaultSeverity.Off,
            "A contactor was commanded closed and neither its contact nor the current followed in time, or it dropped out and would have come back to a shaft too slow for it.",
            AllOff,
            "Coil voltage and wiring, mechanical freedom of the contactor, its main and auxiliary contacts."),
        new FaultRow(
            FaultId.SectionDrifted, "section drifted", "A", FaultSeverity.Off,
            "After a closing the current showed a resistance that is neither the designed one nor that of a single welded or open contact.",
            AllOff,
            "The starting resistor's sections and links, its temperature, the designed values, the current sensor's gain."),
        new FaultRow(
            FaultId.SpeedSignalLost, "speed signal lost", "", FaultSeverity.Off,
            "The speed was unknown for longer than it may be.",
            AllOff,
            "Pick-up and its gap, cable, sensor supply, coupling of the sensor to the shaft."),
        new FaultRow(
            FaultId.BackEmfDisagreement, "back-EMF disagreement", "V", FaultSeverity.Off,
            "The back-EMF from the speed and the one from voltage and current differed for longer than they may.",
            AllOff,
            "Speed sensor slipping, pulses per turn, a stage contact that does not conduct, field current, resistance settings, scale of volts and amperes."),
        new FaultRow(
            FaultId.ReverseRotation, "reverse rotation", "rad/s", FaultSeverity.Off,
            "The shaft turned against the direction of the start while the line was closed.",
            AllOff,
            "An overhauling load, crossed armature or field leads, the sign of the speed sensor."),
        new FaultRow(
            FaultId.Stalled, "stalled", "A", FaultSeverity.Off,
            "Current flowed and the shaft stood for longer than it may.",
            AllOff,
            "A jammed load, a brake that holds, a weak field, a broken coupling to the speed sensor. Let commutator and resistor cool."),
        new FaultRow(
            FaultId.Overload, "overload", "A", FaultSeverity.Off,
            "The thermal image of the motor reached its limit.",
            AllOff + " The image keeps its heat through the reset.",
            "Load, number of starts, ventilation. A reset is accepted once the image has cooled down."),
        new FaultRow(
            FaultId.ResistorTooHot, "resistor too hot", "", FaultSeverity.Off,
            "The starting resistor reached its permitted heat, by its image or by its sensor.",
            AllOff,
            "Starts too close together, a start that takes too long, a stage contact that does not conduct. A reset is accepted once it has cooled down."),
        new FaultRow(
            FaultId.SupplyHigh, "supply high", "V", FaultSeverity.Off,
            "The supply was high for longer than it may be.",
            AllOff,
            "Supply regulation, another machine that feeds back, scale of the voltage sensor."),
        new FaultRow(
            FaultId.SupplyLow, "supply low", "V", FaultSeverity.Off,
            "The supply was low for longer than a dip may last.",
            AllOff,
            "Supply, fuses, leads, other large loads; scale of the voltage sensor."),
        new FaultRow(
            FaultId.PermissiveLost, "permissive lost", "", FaultSeverity.Off,
            "An input that permits running was withdrawn.",
            AllOff,
            "What stands behind the missing input: lubrication, ventilation, guard, door."),
        new FaultRow(
            FaultId.LoopLate, "control loop late", "s", FaultSeverity.Off,
            "The time between two control periods was too long while a coil was on.",
            AllOff,
            "Other work on the board, its clock, the link; the setting of the longest period."),
        new FaultRow(
            FaultId.NoField, "no field", "A", FaultSeverity.Off,
            "The field did not stand within its time; the line was never closed.",
            AllOff,
            "Field supply and fuse, field contactor, field circuit, field sensor."),
        new FaultRow(
            FaultId.BrakeDidNotFinish, "brake did not finish", "rad/s", FaultSeverity.Off,
            "The shaft did not come down to the release speed in time.",
            AllOff + " The shaft may still turn.",
            "Brake resistor and contactor, field while braking, a load that drives."),
        new FaultRow(
            FaultId.StageTookTooLong, "stage took too long", "s", FaultSeverity.Off,
            "A stage stayed in effect longer than it may, so its resistance was getting hot.",
            AllOff,
            "Load too heavy or jammed, supply low, weak field, threshold too high. Let the resistance cool before the next start."),
        new FaultRow(
            FaultId.SequenceIncomplete, "start took too long", "s", FaultSeverity.Off,
            "The start as a whole took longer than it may.",
            AllOff,
            "Load too heavy, supply low, thresholds too high. Let the resistance cool before the next start."),
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
