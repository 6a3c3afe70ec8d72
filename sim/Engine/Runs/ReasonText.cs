using System;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller does and why, as a sentence with its numbers. The one place for these words.</summary>
public static class ReasonText
{
    /// <summary>The sentence for an entry of the timeline, in lower case and without a full stop.</summary>
    public static string Sentence(TimelineEntry entry) =>
        entry.Event is RunEvent happening ? EventText.Sentence(happening) : Decision(entry);

    private static string Decision(TimelineEntry entry)
    {
        string quantity = Text.Number(entry.Quantity), limit = Text.Number(entry.Limit), left = Left(entry.SecondsLeft);
        return entry.Reason switch
        {
            Reason.None => "no decision yet",
            Reason.SettingsInvalid => $"nothing closes: the setting {FaultText.SettingName((SettingId)(int)entry.Quantity)} is not usable",
            Reason.WaitingForStart => "ready, waits for start",
            Reason.StartRefused => "start is refused: " + RefusalText.List((Refusal)(int)entry.Quantity),
            Reason.WaitingForLineContact => $"line contactor is commanded closed; its contact has {left} to follow",
            Reason.BackEmfBelowThreshold => $"stage {entry.Stage} waits: back-EMF {quantity} V of {limit} V",
            Reason.BackEmfAboveSupply => $"stage {entry.Stage} waits: back-EMF {quantity} V is above {limit} V, so the current back would pass the peak",
            Reason.CurrentAboveLockout => $"stage {entry.Stage} waits: current {quantity} A is above the lockout of {limit} A",
            Reason.MinimumDwell => $"stage {entry.Stage} holds: back-EMF {quantity} V has passed {limit} V, but {left} of the minimum dwell are left",
            Reason.Confirming => $"stage {entry.Stage} confirms: back-EMF {quantity} V has passed {limit} V and must stay so for {left}",
            Reason.StageCutOut => $"stage {entry.Stage} is cut out: back-EMF {quantity} V has passed {limit} V",
            Reason.WaitingForStageContact when entry.Quantity < 1 => $"resistance is put back from stage {entry.Stage}",
            Reason.WaitingForStageContact => $"contactor of stage {quantity} is commanded closed; its contact has {left} to follow",
            Reason.AllStagesCutOut => $"all resistance is out: back-EMF {quantity} V of {limit} V",
            Reason.WaitingForContactsToOpen => OpeningOf(entry, left),
            Reason.FaultLatched => Tripped(entry),
            Reason.ResetRefused => $"reset is refused: the cause of {FaultTable.RowOf((FaultId)(int)entry.Quantity).Name} is still there, or start is held",
            Reason.FieldBelowMinimum => $"the field is {(entry.Limit > 0 ? $"at {quantity} A of {limit} A" : "not in yet")}; it has {left} to stand",
            Reason.FieldBuilding => $"the field is in{(entry.Quantity > 0 ? $" at {quantity} A" : "")} and must stand for {left} before the line closes",
            Reason.PresettingStages => Presetting(entry, left),
            Reason.WaitingForShaft => entry.Quantity < entry.Limit
                ? $"the line waits: the shaft may not be started while it turns, back-EMF {quantity} V"
                : $"the line waits: back-EMF {quantity} V, at most {limit} V, {(entry.Limit == 0 ? "because the shaft turns backwards" : "or the current back would pass the peak")}",
            Reason.SpeedUnknown => $"stage {entry.Stage} waits: the speed is unknown{(entry.SecondsLeft > 0 ? $" and counts as lost in {left}" : "")}",
            Reason.RunningWithoutSpeed => $"keeps running without a speed signal: back-EMF {quantity} V of {limit} V by voltage and current",
            Reason.SupplyDip => $"the supply is low: {quantity} V, at least {limit} V; the line opens in {left}",
            Reason.BrakeDelay => $"the line is open; the brake closes in {left}, when the arc is out",
            Reason.BackEmfAboveBrake => $"the brake waits: back-EMF {quantity} V, at most {limit} V, or its current would pass the peak",
            Reason.Braking => $"brakes: {Rpm(entry.Quantity)}, released at {Rpm(entry.Limit)}; it has {left}",
            Reason.ProvingByCurrent => $"the current has to prove the contact: {quantity} A, {limit} A expected; it has {left}",
            Reason.WaitingForBrakeContact => $"brake contactor is commanded closed; its contact has {left} to follow",
            _ => entry.Reason.ToString(),
        };
    }

    private static string Tripped(TimelineEntry entry)
    {
        string tripped = $"tripped: {FaultTable.RowOf((FaultId)(int)entry.Quantity).Name}";
        if (entry.Fault is not FaultEntry fault) return tripped;
        string measured = FaultText.Measured(fault);
        return measured.Length > 0 ? $"{tripped}, {measured}" : tripped;
    }

    private static string Presetting(TimelineEntry entry, string left) => entry.Quantity > entry.Limit
        ? $"the shaft has become too slow for stage {Text.Number(entry.Quantity)}, which opens again before the line closes; it has {left}"
        : $"the shaft turns: stage{(entry.Limit == 1 ? " 1 closes" : $"s 1 to {Text.Number(entry.Limit)} close")} before the line, with {left} for the next";

    // In a stop everything opens; while running it is a stage whose resistance is put back.
    private static string OpeningOf(TimelineEntry entry, string left) => entry.Phase is Phase.Accelerating or Phase.Running
        ? $"resistance is put back from stage {entry.Stage}; the contacts have {left} to open"
        : $"every contactor is commanded open; the contacts have {left} to follow";

    private static string Rpm(double radPerSec) => $"{Text.Number(radPerSec * 30 / Math.PI)} r/min";

    private static string Left(double seconds) =>
        Math.Abs(seconds) < 1 ? $"{Text.Number(Math.Round(seconds * 1000, 3))} ms" : $"{Text.Number(seconds)} s";
}
