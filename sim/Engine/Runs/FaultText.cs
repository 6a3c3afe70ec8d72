using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>A fault in words. One row per id; the texts are shared by everything that shows a fault.</summary>
/// <param name="Name">Short name.</param>
/// <param name="Cause">What the controller saw.</param>
/// <param name="Done">What the controller did about it.</param>
/// <param name="Check">What to check before a reset.</param>
public sealed record FaultText(string Name, string Cause, string Done, string Check)
{
    private const string AllOff = "Every contactor was commanded open and the trip is latched until a reset.";

    /// <summary>The words for a fault.</summary>
    public static FaultText Of(FaultId id) => id switch
    {
        FaultId.None => new("no fault", "Nothing was wrong.", "Nothing.", "Nothing."),
        FaultId.EmergencyStop => new(
            "emergency stop",
            "The hard-wired stop chain was open.",
            AllOff,
            "Why the stop was used. Release the stop only when the drive may be live again."),
        FaultId.ReadingInvalid => new(
            "reading invalid",
            "A reading of supply, current or speed was not a number, out of its plausible range, or not fresh.",
            AllOff,
            "Sensor supply and wiring, connector, range setting. A speed sensor that has come loose reads plausibly low: look at it too."),
        FaultId.Overcurrent => new(
            "overcurrent",
            "The armature current passed the instantaneous trip.",
            AllOff,
            "A welded or drifted starter section, a short in the armature circuit, a jammed load, a threshold set too low."),
        FaultId.ContactDidNotClose => new(
            "contact did not close",
            "A contactor was commanded closed and its auxiliary contact did not follow in time.",
            AllOff,
            "Coil voltage and wiring, mechanical freedom of the contactor, its auxiliary contact."),
        FaultId.ContactDidNotOpen => new(
            "contact did not open",
            "A contactor was commanded open and its auxiliary contact did not follow in time. It may be welded.",
            AllOff + " A welded line contact keeps the motor live.",
            "Isolate the supply first. Then look for a welded main contact, a jammed mechanism or a faulty auxiliary contact."),
        FaultId.StageTookTooLong => new(
            "stage took too long",
            "A stage stayed in effect longer than it may, so its resistance was getting hot.",
            AllOff,
            "Load too heavy or jammed, supply low, weak field, threshold too high. Let the resistance cool before the next start."),
        _ => new(id.ToString(), "A fault without a description.", AllOff, "The controller's documentation."),
    };

    /// <summary>What was measured and what it was held against, in words; empty where the fault has no number.</summary>
    public static string Measured(FaultEntry fault) => fault.Id switch
    {
        FaultId.Overcurrent => $"{Text.Number(fault.Value)} A, limit {Text.Number(fault.Limit)} A",
        FaultId.StageTookTooLong => $"stage {Text.Number(fault.Value)}, limit {Text.Number(fault.Limit)} s",
        FaultId.ContactDidNotClose or FaultId.ContactDidNotOpen => fault.Value == 0 ? "line contactor" : $"contactor of stage {Text.Number(fault.Value)}",
        FaultId.ReadingInvalid => $"read {Text.Number(fault.Value)}, largest believed {Text.Number(fault.Limit)}",
        _ => "",
    };
}
