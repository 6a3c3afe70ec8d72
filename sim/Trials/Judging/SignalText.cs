using System;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>Values of signals as people write and read them.</summary>
internal static class SignalText
{
    private const double RpmPerRadPerSec = 30 / Math.PI;

    /// <summary>A value with its unit; a speed in r/min.</summary>
    public static string Value(Signal signal, double number) => signal.Unit switch
    {
        "" => Text.Number(number),
        "rad/s" => $"{Text.Number(number * RpmPerRadPerSec)} r/min",
        _ => $"{Text.Number(number)} {signal.Unit}",
    };

    /// <summary>A sample's value, or its word.</summary>
    public static string Of(Signal signal, in Sample sample) => signal.Words?.Word((int)signal.Number(sample)) ?? Value(signal, signal.Number(sample));

    /// <summary>What a signal with a unit measures; null for a word or a plain number.</summary>
    public static Dimension? DimensionOf(Signal signal) => signal.Unit switch
    {
        "" => null,
        "s" or "us" => Dimension.Time,
        "V" => Dimension.Voltage,
        "A" => Dimension.Current,
        "rad/s" => Dimension.Speed,
        "N m" => Dimension.Torque,
        "degC" => Dimension.Temperature,
        _ => throw new ArgumentOutOfRangeException(nameof(signal), signal.Unit, "a unit without a dimension"),
    };

    /// <summary>A value of SI units in those of the signal.</summary>
    public static double FromSi(Signal signal, double number) => signal.Unit == "us" ? number * 1e6 : number;

    /// <summary>The words that a signal can show, by their ids; empty where it is a number.</summary>
    public static string[] WordsOf(Signal signal) => [.. signal.Words?.All ?? []];

    /// <summary>The id of a word out of <see cref="WordsOf"/>.</summary>
    public static double IdOf(Signal signal, string word) => Array.IndexOf(WordsOf(signal), word);
}
