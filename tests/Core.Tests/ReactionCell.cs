using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>One cell of the fault-reaction matrix, as <see cref="ReactionTable"/> writes it.</summary>
internal sealed record ReactionCell(Outcome Outcome, FaultId Fault, Refusal Refusal, int DeadlineMilliseconds, int WorstAmps, bool IsBlind)
{
    private static readonly Dictionary<string, Outcome> Outcomes = new()
    {
        ["refuses"] = Outcome.Refuses,
        ["stops"] = Outcome.Stops,
        ["runs again"] = Outcome.Runs,
        ["no start"] = Outcome.IsReady,
        ["stays tripped"] = Outcome.StaysTripped,
        ["gets nowhere"] = Outcome.IsSlow,
    };

    /// <summary>Reads a cell such as "FieldLost 30", "refuses SupplyLow", "blind @926" or "harmless".</summary>
    internal static ReactionCell Parse(string text, Meeting meeting)
    {
        string[] parts = text.Split(" @");
        int worst = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
        string said = parts[0];
        if (said is "blind" or "harmless") return new(Undisturbed(meeting), FaultId.None, Refusal.None, 0, worst, said == "blind");
        if (Outcomes.TryGetValue(said, out Outcome outcome)) return new(outcome, FaultId.None, Refusal.None, 0, worst, false);
        string[] words = said.Split(' ');
        Assert.Equal(2, words.Length);
        if (words[0] == "refuses") return new(Outcome.Refuses, FaultId.None, Enum.Parse<Refusal>(words[1]), 0, worst, false);
        int deadline = int.Parse(words[1], CultureInfo.InvariantCulture);
        return words[0] == "stops"
            ? new(Outcome.Stops, FaultId.None, Refusal.None, deadline, worst, false)
            : new(Outcome.Trips, Enum.Parse<FaultId>(words[0]), Refusal.None, deadline, worst, false);
    }

    /// <summary>The cell in the words of the page.</summary>
    internal string Words(Meeting meeting)
    {
        string words = Outcome switch
        {
            Outcome.Trips => $"{FaultTable.RowOf(Fault).Name}, {DeadlineMilliseconds} ms",
            Outcome.Refuses => $"start refused: {Spaced(Refusal.ToString())}",
            Outcome.Stops => $"stops, {DeadlineMilliseconds} ms",
            Outcome.StaysTripped => "reset refused",
            Outcome.IsSlow => "gets nowhere",
            _ => IsBlind ? "**not seen**" : Outcome == Undisturbed(meeting) ? "no fault" : Outcome == Outcome.Runs ? "**runs again**" : "no start",
        };
        return WorstAmps > 0 ? $"{words} ({WorstAmps} A)" : words;
    }

    /// <summary>What a meeting comes to when nothing fails.</summary>
    internal static Outcome Undisturbed(Meeting meeting) => meeting is Meeting.Stopping or Meeting.Tripped ? Outcome.IsReady : Outcome.Runs;

    private static string Spaced(string name) =>
        string.Concat(name.Select((letter, at) => char.IsUpper(letter) ? (at > 0 ? " " : "") + char.ToLowerInvariant(letter) : $"{letter}"));
}
