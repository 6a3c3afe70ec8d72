using System.Collections.Generic;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>Why a start is refused, in words. The one place for these words.</summary>
public static class RefusalText
{
    // In the order of importance: what the operator does, what permits, contacts, supply, shaft, heat, starts, the button.
    private static readonly (Refusal Bit, string Words)[] Order =
    [
        (Refusal.StopPressed, "stop is pressed"),
        (Refusal.PermissiveMissing, "a permissive input is not given"),
        (Refusal.LineNotOpen, "the line contactor is not proven open"),
        (Refusal.StageNotOpen, "a stage contactor is not proven open"),
        (Refusal.BrakeNotOpen, "the brake contactor is not proven open"),
        (Refusal.SupplyLow, "the supply is low"),
        (Refusal.SupplyHigh, "the supply is high"),
        (Refusal.ShaftTurnsBackwards, "the shaft turns backwards"),
        (Refusal.ShaftTurns, "the shaft turns, and a turning shaft may not be started"),
        (Refusal.MotorTooHot, "the motor has not cooled down yet"),
        (Refusal.ResistorTooHot, "the starting resistor has not cooled down yet"),
        (Refusal.TooManyStarts, "as many starts as are permitted in an hour have been made"),
        (Refusal.StartHeld, "start has been held since before the controller was ready"),
    ];

    /// <summary>Every reason of a set, the most important first, parted by commas.</summary>
    public static string List(Refusal refusals)
    {
        List<string> parts = [];
        foreach ((Refusal bit, string words) in Order)
        {
            if (refusals.HasFlag(bit)) parts.Add(words);
        }

        return string.Join(", ", parts);
    }
}
