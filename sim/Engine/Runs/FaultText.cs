using System;
using System.Collections.Generic;
using System.Numerics;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>The numbers of a fault in words; everything else about a fault stands in <see cref="FaultTable"/>.</summary>
public static class FaultText
{
    private const double RpmPerRadPerSec = 30 / Math.PI;

    /// <summary>What was measured and what it was held against; empty where the fault has no number.</summary>
    public static string Measured(FaultEntry fault) => fault.Id switch
    {
        FaultId.ReadingInvalid => Reading(fault),
        FaultId.Overcurrent => Against(fault, "armature current", "A", "at most"),
        FaultId.ContactDidNotClose or FaultId.ContactDidNotOpen => ContactText.Name(fault.Value),
        FaultId.StageTookTooLong => $"stage {Text.Number(fault.Value)}, limit {Text.Number(fault.Limit)} s",
        FaultId.SequenceIncomplete => $"in stage {Text.Number(fault.Value)}, limit {Text.Number(fault.Limit)} s",
        FaultId.NoField or FaultId.FieldLost => Against(fault, "field current", "A", "at least"),
        FaultId.SupplyLow => Against(fault, "supply", "V", "at least"),
        FaultId.SupplyHigh => Against(fault, "supply", "V", "at most"),
        FaultId.Overload => $"armature current {Text.Number(fault.Value)} A on the last look, setting {Text.Number(fault.Limit)} A",
        FaultId.Stalled => $"{Text.Number(fault.Value)} A into a standing shaft, stalled above {Text.Number(fault.Limit)} A",
        FaultId.BackEmfDisagreement => $"apart by {Text.Number(fault.Value)} V, at most {Text.Number(fault.Limit)} V",
        FaultId.Overspeed or FaultId.BrakeDidNotFinish => $"{Rpm(fault.Value)}, at most {Rpm(fault.Limit)}",
        FaultId.ReverseRotation => $"{Rpm(fault.Value)}, not below {Rpm(fault.Limit)}",
        FaultId.ResistorTooHot when fault.Channel == Channel.ResistorTemperature => Against(fault, "resistor", "degC", "at most"),
        FaultId.ResistorTooHot => Against(fault, "heat in the resistor", "J", "at most"),
        FaultId.PermissiveLost => "input " + Inputs((int)fault.Limit & ~(int)fault.Value),
        FaultId.LoopLate => $"{Text.Number(fault.Value)} s between two periods, at most {Text.Number(fault.Limit)} s",
        FaultId.SettingsInvalid => "setting " + SettingName((SettingId)(int)fault.Value),
        FaultId.CurrentWhileOpen => Against(fault, "armature current", "A", "no current is at most"),
        FaultId.SectionDrifted => $"{Text.Number(fault.Value)} A instead of {Text.Number(fault.Limit)} A",
        _ => "",
    };

    /// <summary>What stood around a fault when it was latched, in one line; empty without a snapshot.</summary>
    public static string Surroundings(FaultEntry fault)
    {
        if (fault.Snapshot is not FaultSnapshot seen) return "";
        List<string> parts = [$"supply {Text.Number(seen.SupplyVolts)} V", $"armature {Text.Number(seen.ArmatureAmps)} A"];
        parts.Add(seen.SpeedValid ? Rpm(seen.SpeedRadPerSec) : "speed unknown");
        if (seen.FieldAmps != 0) parts.Add($"field {Text.Number(seen.FieldAmps)} A");
        if (seen.SpeedValid) parts.Add($"back-EMF {Text.Number(seen.BackEmfVolts)} V");
        parts.Add("coils on: " + Contacts(seen.LineCommanded, seen.StagesCommanded));
        parts.Add("contacts closed: " + Contacts(seen.LineClosed, seen.StagesClosed));
        return string.Join("; ", parts);
    }

    /// <summary>Name of a setting as catalogue and texts show it; that of its id where the table does not know it.</summary>
    public static string SettingName(SettingId id) =>
        Array.Find(SettingTable.Rows, row => row.Id == id)?.Name ?? id.ToString();

    /// <summary>Name of a reading in words.</summary>
    public static string ChannelName(Channel channel) => channel switch
    {
        Channel.Supply => "supply voltage",
        Channel.ArmatureCurrent => "armature current",
        Channel.Speed => "speed",
        Channel.FieldCurrent => "field current",
        Channel.ResistorTemperature => "resistor temperature",
        Channel.All => "every reading",
        _ => "a reading",
    };

    private static string Reading(FaultEntry fault)
    {
        if (fault.Channel == Channel.All) return "the board could not read";
        string unit = fault.Channel switch
        {
            Channel.Supply => " V",
            Channel.ArmatureCurrent or Channel.FieldCurrent => " A",
            Channel.Speed => " rad/s",
            Channel.ResistorTemperature => " degC",
            _ => "",
        };
        string bound = fault.Value < fault.Limit ? "least" : "largest";
        return $"{ChannelName(fault.Channel)} reads {Text.Number(fault.Value)}{unit}, {bound} believed {Text.Number(fault.Limit)}{unit}";
    }

    private static string Against(FaultEntry fault, string what, string unit, string bound) =>
        $"{what} {Text.Number(fault.Value)} {unit}, {bound} {Text.Number(fault.Limit)} {unit}";

    private static string Rpm(double radPerSec) => $"{Text.Number(radPerSec * RpmPerRadPerSec)} r/min";

    private static string Inputs(int bits)
    {
        List<string> inputs = [];
        for (int i = 0; i < 32; i++)
        {
            if ((bits & (1 << i)) != 0) inputs.Add($"{i + 1}");
        }

        return string.Join(", ", inputs);
    }

    private static string Contacts(bool line, int stages)
    {
        List<string> parts = [];
        if (line) parts.Add("line");
        if (stages != 0) parts.Add($"stage{(BitOperations.IsPow2(stages) ? "" : "s")} {Inputs(stages)}");
        return parts.Count == 0 ? "none" : string.Join(", ", parts);
    }
}
