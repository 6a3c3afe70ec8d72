using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Trials.Judging;

namespace StarterCtl.Trials.Files;

/// <summary>Finds expectations of one trial of which at most one can hold, whatever happens.</summary>
internal static class Contradictions
{
    /// <summary>Reports every pair, at the later of the two.</summary>
    /// <param name="expectations">All of one trial.</param>
    /// <param name="events">All events of its run.</param>
    /// <param name="problems">Receives what is found.</param>
    public static void Report(IReadOnlyList<Expectation> expectations, IReadOnlyList<CaseEvent> events, ProblemList problems)
    {
        // A trip stays until a reset; without one the end of a trial with a fault is known.
        bool canReset = events.Any(happening => happening.Command == "reset");
        for (int later = 1; later < expectations.Count; later++)
        {
            for (int earlier = 0; earlier < later; earlier++)
            {
                Expectation one = expectations[earlier], other = expectations[later];
                if ((Clash(one, other, canReset) ?? Clash(other, one, canReset)) is not string why) continue;
                problems.Add(other.Line, "expect", $"{Quoted(other)} beside {Quoted(one)} on line {Text.Number(one.Line)}, which cannot both hold", why);
            }
        }
    }

    private static string Quoted(Expectation expectation) => Words.Quote(expectation.Name);

    private static string? Clash(Expectation one, Expectation other, bool canReset)
    {
        if (one.Kind == ExpectationKind.Fault) return other.Kind == ExpectationKind.Fault ? ClashOfFaults(one, other) : ClashWithFault(one, other, canReset);
        if (one.Signal == null || one.Signal != other.Signal) return null;
        if (one.Kind == ExpectationKind.Never) return ClashWithNever(one, other);
        return IsBand(one) ? ClashWithBand(one, other) : null;
    }

    private static string? ClashOfFaults(Expectation one, Expectation other) => one.Fault == other.Fault ? null
        : one.Fault != FaultId.None && other.Fault != FaultId.None ? "one first fault in a trial"
        : other.Fault == FaultId.None && one.Window.LiesIn(other.Window) ? "no fault expected only where none is"
        : null;

    private static string? ClashWithFault(Expectation fault, Expectation other, bool canReset)
    {
        if (other.Signal is not { Name: "phase" or "fault" }) return null;
        string tripped = other.Signal.Name == "phase" ? nameof(Phase.Tripped) : fault.Fault.ToString();
        if (fault.Fault == FaultId.None)
        {
            bool asksForATrip = other.Signal.Name == "phase" && other.Words.Contains(nameof(Phase.Tripped)) || other.Signal.Name == "fault" && !other.Words.Contains(nameof(FaultId.None));
            return asksForATrip && other.Kind != ExpectationKind.Never && other.Window.LiesIn(fault.Window) ? "a trip only where a fault is expected" : null;
        }

        if (other.Kind == ExpectationKind.Never) return other.Words[0] == tripped && fault.Window.LiesIn(other.Window) ? $"{tripped}, for the fault leads there" : null;
        bool isLast = double.IsPositiveInfinity(other.Window.ToSeconds);
        return other.Kind == ExpectationKind.Settles && isLast && !canReset && other.Words[0] != tripped ? $"{tripped}: nothing resets the fault" : null;
    }

    private static string? ClashWithNever(Expectation never, Expectation other)
    {
        bool isAsked = other.Kind is ExpectationKind.Reaches or ExpectationKind.Order or ExpectationKind.Settles && other.Numbers.Contains(never.Numbers[0]);
        return isAsked && other.Window.LiesIn(never.Window) ? "one of the two, or windows that differ" : null;
    }

    private static string? ClashWithBand(Expectation band, Expectation other)
    {
        (double least, double most) = BandOf(band);
        bool isOutside = other.Kind switch
        {
            ExpectationKind.Reaches => other.Numbers[0] < least || other.Numbers[0] > most,
            ExpectationKind.Settles => other.Numbers[0] + other.Tolerance < least || other.Numbers[0] - other.Tolerance > most,
            _ => IsBand(other) && (BandOf(other).Most < least || BandOf(other).Least > most),
        };
        return isOutside && (other.Window.LiesIn(band.Window) || IsBand(other) && band.Window.LiesIn(other.Window)) ? "values that can be had together, or windows that differ" : null;
    }

    private static bool IsBand(Expectation expectation) => expectation.Kind is ExpectationKind.AtLeast or ExpectationKind.AtMost or ExpectationKind.StaysWithin;

    private static (double Least, double Most) BandOf(Expectation band) => band.Kind switch
    {
        ExpectationKind.AtLeast => (band.Numbers[0], double.PositiveInfinity),
        ExpectationKind.AtMost => (double.NegativeInfinity, band.Numbers[0]),
        _ => (band.Numbers[0], band.Numbers[1]),
    };
}
