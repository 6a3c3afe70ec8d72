using System.Collections.Generic;
using System.IO;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Link;

namespace StarterCtl.App.Tables;

/// <summary>What a board says, in lines.</summary>
internal static class BoardTable
{
    /// <summary>Shows who a board is and how it stands.</summary>
    public static void Show(TextWriter writer, BoardGreeting greeting, BoardLock? atPowerUp)
    {
        writer.WriteLine($"board       {greeting.BoardName}, version {greeting.Version}");
        writer.WriteLine($"phase       {PhaseText.Name(greeting.Phase)}");
        if (atPowerUp is { IsOpen: false }) writer.WriteLine($"locked      {atPowerUp.Sentence}");
        writer.WriteLine($"settings    {Settings(greeting)}");
        writer.WriteLine($"boot check  {(greeting.ComputesAlike ? "the board computes as this desk does" : "THE BOARD COMPUTES DIFFERENTLY: it starts nothing")}");
        writer.WriteLine($"permit      {(greeting.LocalPermit ? "a start over the link is permitted at the machine" : "a start over the link is not permitted at the machine")}");
    }

    /// <summary>Shows a log, oldest first.</summary>
    public static void Show(TextWriter writer, IReadOnlyList<LoggedEvent> events)
    {
        foreach (LoggedEvent logged in events) writer.WriteLine($"{logged.Seconds,6} s  {Event(logged)}");
    }

    private static string Settings(BoardGreeting greeting) => greeting.Phase == Phase.NotSetUp
        ? $"none that can be used, table of version {greeting.SettingsVersion}"
        : $"of case {CaseHash.Shown(greeting.CaseHash)}, checksum {greeting.SettingsChecksum:x8}, table of version {greeting.SettingsVersion}";

    private static string Event(LoggedEvent logged) => logged.Kind switch
    {
        EventKind.Fault => $"fault {FaultTable.RowOf((FaultId)logged.Number).Name}, {Text.Number(logged.Value)} measured",
        EventKind.Phase => $"phase {PhaseText.Name((Phase)logged.Number)}",
        EventKind.Cutout => $"stage {logged.Number} cut out at a back-EMF of {Text.Number(logged.Value)} V",
        EventKind.Reset => $"reset of fault {FaultTable.RowOf((FaultId)logged.Number).Name}",
        EventKind.PutBack => $"resistance put back to stage {logged.Number} at {Text.Number(logged.Value)} V",
        _ => $"event {(int)logged.Kind}, which this program does not know",
    };
}
