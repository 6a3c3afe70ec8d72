using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>One thing that a trial expects, as read from its file and checked.</summary>
/// <param name="Name">Its name, one of its kind in the trial.</param>
/// <param name="Kind">What is expected.</param>
/// <param name="Window">When.</param>
public sealed record Expectation(string Name, ExpectationKind Kind, Window Window)
{
    /// <summary>The signal; null for a fault.</summary>
    public Signal? Signal { get; init; }

    /// <summary>Numbers that it is held against, in the signal's unit: one, or lower and upper, or an order; for words their ids.</summary>
    public IReadOnlyList<double> Numbers { get; init; } = [];

    /// <summary>The words of <see cref="Numbers"/>, empty where the signal is a number.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Half the width of the band in which the signal settles, in its unit.</summary>
    public double Tolerance { get; init; }

    /// <summary>Time for which it has to stay there, s.</summary>
    public double HoldSeconds { get; init; }

    /// <summary>The expected fault; <see cref="FaultId.None"/>: none.</summary>
    public FaultId Fault { get; init; }

    /// <summary>Line of the trial's file.</summary>
    public int Line { get; init; }

    /// <summary>What is allowed, in words with units and window.</summary>
    public string Limit
    {
        get
        {
            string window = Window.Words;
            return Wanted + (window.Length > 0 ? ", " + window : "");
        }
    }

    private string Wanted => Kind switch
    {
        ExpectationKind.Reaches => $"{Signal!.Name} reaches {Shown(0)}",
        ExpectationKind.Never => $"{Signal!.Name} never {Shown(0)}",
        ExpectationKind.AtLeast => $"{Signal!.Name} at least {Shown(0)}",
        ExpectationKind.AtMost => $"{Signal!.Name} at most {Shown(0)}",
        ExpectationKind.StaysWithin => $"{Signal!.Name} within {Shown(0)} and {Shown(1)}",
        ExpectationKind.Order => $"{Signal!.Name} in the order {string.Join(", ", Numbers.Select((_, i) => Shown(i)))}",
        ExpectationKind.Settles => $"{Signal!.Name} settles at {Shown(0)}{(Tolerance > 0 ? $" within {SignalText.Value(Signal, Tolerance)}" : "")} for {Text.Number(HoldSeconds)} s",
        _ => Fault == FaultId.None ? "no fault" : $"{FaultTable.RowOf(Fault).Name} as the first fault",
    };

    private string Shown(int index) => Words.Count > 0 ? Words[index] : SignalText.Value(Signal!, Numbers[index]);
}
