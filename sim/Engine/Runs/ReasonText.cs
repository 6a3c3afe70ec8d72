using System;
using System.Collections.Generic;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller does and why, as a sentence with its numbers. The one place for these words.</summary>
public static class ReasonText
{
    /// <summary>The sentence for an entry of the timeline, in lower case and without a full stop.</summary>
    public static string Sentence(TimelineEntry entry) =>
        entry.Event is RunEvent happening ? Happening(happening) : Decision(entry);

    private static string Happening(RunEvent happening)
    {
        List<string> parts = [];
        if (happening.LoadTorqueNewtonMetres is double torque) parts.Add($"the load's constant torque becomes {Text.Number(torque)} N m");
        if (happening.SupplyVolts is double volts) parts.Add($"the supply becomes {Text.Number(volts)} V");
        if (happening.Command is OperatorCommand command) parts.Add(Command(command));
        return "event: " + string.Join(", ", parts);
    }

    private static string Command(OperatorCommand command) => command switch
    {
        OperatorCommand.Start => "the operator presses start",
        OperatorCommand.Stop => "the operator presses stop",
        OperatorCommand.Reset => "the operator presses reset",
        OperatorCommand.EmergencyStop => "the emergency stop opens",
        OperatorCommand.ReleaseEmergencyStop => "the emergency stop is released",
        _ => command.ToString(),
    };

    private static string Decision(TimelineEntry entry)
    {
        string quantity = Text.Number(entry.Quantity), limit = Text.Number(entry.Limit), left = Left(entry.SecondsLeft);
        return entry.Reason switch
        {
            Reason.None => "no decision yet",
            Reason.SettingsInvalid => $"nothing closes: the setting {(SettingId)(int)entry.Quantity} is not usable",
            Reason.WaitingForStart => "ready, waits for start",
            Reason.StartRefused => "start is refused: " + Refused((Refusal)(int)entry.Quantity),
            Reason.WaitingForLineContact => $"line contactor is commanded closed; its contact has {left} to follow",
            Reason.BackEmfBelowThreshold => $"stage {entry.Stage} waits: back-EMF {quantity} V of {limit} V",
            Reason.BackEmfAboveSupply => $"stage {entry.Stage} waits: back-EMF {quantity} V is above {limit} V, so the current back would pass the peak",
            Reason.CurrentAboveLockout => $"stage {entry.Stage} waits: current {quantity} A is above the lockout of {limit} A",
            Reason.MinimumDwell => $"stage {entry.Stage} holds: back-EMF {quantity} V has passed {limit} V, but {left} of the minimum dwell are left",
            Reason.Confirming => $"stage {entry.Stage} confirms: back-EMF {quantity} V has passed {limit} V and must stay so for {left}",
            Reason.StageCutOut => $"stage {entry.Stage} is cut out: back-EMF {quantity} V has passed {limit} V",
            Reason.WaitingForStageContact => $"contactor of stage {quantity} is commanded closed; its contact has {left} to follow",
            Reason.AllStagesCutOut => $"all resistance is out: back-EMF {quantity} V of {limit} V",
            Reason.WaitingForContactsToOpen => $"every contactor is commanded open; the contacts have {left} to follow",
            Reason.FaultLatched => $"tripped: {FaultTable.RowOf((FaultId)(int)entry.Quantity).Name}",
            Reason.ResetRefused => $"reset is refused: the cause of {FaultTable.RowOf((FaultId)(int)entry.Quantity).Name} is still there, or start is held",
            _ => entry.Reason.ToString(),
        };
    }

    private static string Refused(Refusal refusals)
    {
        List<string> parts = [];
        if (refusals.HasFlag(Refusal.StopPressed)) parts.Add("stop is pressed");
        if (refusals.HasFlag(Refusal.LineNotOpen)) parts.Add("the line contactor is not proven open");
        if (refusals.HasFlag(Refusal.StageNotOpen)) parts.Add("a stage contactor is not proven open");
        if (refusals.HasFlag(Refusal.StartHeld)) parts.Add("start has been held since before the controller was ready");
        return string.Join(", ", parts);
    }

    private static string Left(double seconds) =>
        Math.Abs(seconds) < 1 ? $"{Text.Number(Math.Round(seconds * 1000, 3))} ms" : $"{Text.Number(seconds)} s";
}
