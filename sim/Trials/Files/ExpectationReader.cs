using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Judging;
using Tomlyn.Syntax;

namespace StarterCtl.Trials.Files;

/// <summary>Makes an expectation of its table, or says what is wrong with it.</summary>
internal sealed class ExpectationReader(ProblemList problems, IReadOnlyList<CaseEvent> events, double durationSeconds, string duration)
{
    private readonly CaseValueReader _reader = new(problems);
    private readonly SignalValueReader _values = new(problems);

    /// <summary>Reads one expectation; null after a problem.</summary>
    public Expectation? Read(TrialTable table)
    {
        CaseValue? name = Required(table, TrialKeys.ExpectName);
        Window? window = ReadWindow(table);
        string[] kinds = [.. TrialKeys.Kinds.Append(TrialKeys.ExpectFault.Name).Where(table.Values.ContainsKey)];
        if (kinds.Length != 1)
        {
            string found = kinds.Length == 0 ? "nothing that is expected" : $"{string.Join(" and ", kinds)} together";
            problems.Add(kinds.Length == 0 ? table.Line : table.Values[kinds[1]].Line, "expect", found, $"exactly one of {Words.Or(TrialKeys.Kinds.Append(TrialKeys.ExpectFault.Name))}");
            return null;
        }

        if (!Fits(table, kinds[0])) return null;
        Expectation? read = kinds[0] == TrialKeys.ExpectFault.Name ? ReadFault(table) : ReadSignal(table, kinds[0]);
        return read == null || name == null || window == null ? null : read with { Name = name.Written, Window = window, Line = table.Line };
    }

    private static Expectation Bare(ExpectationKind kind) => new("", kind, new Window(0, double.PositiveInfinity, null));

    private Expectation? ReadFault(TrialTable table) => Value(table, TrialKeys.ExpectFault) is not CaseValue fault ? null
        : Bare(ExpectationKind.Fault) with { Fault = fault.Written == "none" ? FaultId.None : Array.Find(FaultTable.Rows, row => row.Name == fault.Written)!.Id };

    private Expectation? ReadSignal(TrialTable table, string kindKey)
    {
        if (Required(table, TrialKeys.ExpectSignal) is not CaseValue written) return null;
        Signal signal = SignalTable.All.First(known => known.Name == written.Written);
        ExpectationKind kind = KindOf(kindKey);
        (int line, ValueSyntax value) = table.Values[kindKey];
        bool isQuantity = signal.Unit.Length > 0;
        if (isQuantity && kind is ExpectationKind.Never or ExpectationKind.Order || signal.Words != null && kind is ExpectationKind.AtLeast or ExpectationKind.AtMost or ExpectationKind.StaysWithin)
        {
            problems.Add(line, $"expect.{kindKey}", $"it for {signal.Name}, {(isQuantity ? "a quantity" : "a word")}", isQuantity ? "at-least, at-most, stays-within, reaches or settles" : "reaches, never, order or settles");
            return null;
        }

        (int fewest, int most) = kind == ExpectationKind.StaysWithin ? (2, 2) : kind == ExpectationKind.Order ? (2, 32) : (1, 1);
        IReadOnlyList<string> words = [];
        IReadOnlyList<double>? numbers = most == 1 ? ReadOne(kindKey, line, signal, value, out words) : _values.ReadList($"expect.{kindKey}", line, signal, value, fewest, most, out words);
        if (numbers == null || !IsSound(kind, kindKey, line, numbers)) return null;
        Expectation read = Bare(kind) with { Signal = signal, Numbers = numbers, Words = words };
        return kind == ExpectationKind.Settles ? ReadSettling(table, read) : read;
    }

    private double[]? ReadOne(string kindKey, int line, Signal signal, ValueSyntax value, out IReadOnlyList<string> words)
    {
        double? number = _values.Read($"expect.{kindKey}", line, signal, value, out string? word);
        words = word == null ? [] : [word];
        return number == null ? null : [number.Value];
    }

    private bool IsSound(ExpectationKind kind, string kindKey, int line, IReadOnlyList<double> numbers)
    {
        if (kind == ExpectationKind.StaysWithin && numbers[0] > numbers[1])
        {
            problems.Add(line, $"expect.{kindKey}", "a lower value above the upper one", "the lower value first");
            return false;
        }

        if (kind != ExpectationKind.Order || numbers.Distinct().Count() == numbers.Count) return true;
        problems.Add(line, $"expect.{kindKey}", "the same twice", "each once: an order is that of the first times");
        return false;
    }

    private Expectation? ReadSettling(TrialTable table, Expectation read)
    {
        double? tolerance = 0;
        if (read.Signal!.Unit.Length > 0)
        {
            if (!table.Values.TryGetValue(TrialKeys.Tolerance, out (int Line, ValueSyntax Value) found))
            {
                problems.Add(table.Line, "expect.tolerance", "nothing", $"{Units.Allowed(SignalText.DimensionOf(read.Signal)!.Value)}, for {read.Signal.Name}");
                return null;
            }

            tolerance = _values.Read("expect.tolerance", found.Line, read.Signal, found.Value, out _);
        }

        return Required(table, TrialKeys.ExpectFor) is CaseValue hold && tolerance != null ? read with { Tolerance = tolerance.Value, HoldSeconds = hold.Number } : null;
    }

    // A key that the kind has no use for is a mistake, not a remark.
    private bool Fits(TrialTable table, string kind)
    {
        bool fits = true;
        Refuse(TrialKeys.ExpectSignal.Name, kind == TrialKeys.ExpectFault.Name, "a fault has no signal");
        Refuse(TrialKeys.Tolerance, kind != "settles", "only settles has one");
        Refuse(TrialKeys.ExpectFor.Name, kind != "settles", "only settles has one");
        return fits;

        void Refuse(string key, bool isWrong, string why)
        {
            if (!isWrong || !table.Values.TryGetValue(key, out (int Line, ValueSyntax Value) found)) return;
            problems.Add(found.Line, $"expect.{key}", $"it beside {kind}", why);
            fits = false;
        }
    }

    private Window? ReadWindow(TrialTable table)
    {
        CaseKey[] keys = [TrialKeys.ExpectFrom, TrialKeys.ExpectTo, TrialKeys.ExpectAfterEvent, TrialKeys.ExpectWithin];
        CaseValue?[] read = [.. keys.Select(key => Value(table, key))];
        if (keys.Where((key, i) => table.Entry(key) != null && read[i] == null).Any()) return null;
        (CaseValue? from, CaseValue? to, CaseValue? number, CaseValue? within) = (read[0], read[1], read[2], read[3]);
        if (number == null && within != null) return Refuse(within, TrialKeys.ExpectWithin, "it without after-event", "after-event beside it, or to instead");
        if (number != null && to != null) return Refuse(to, TrialKeys.ExpectTo, "it beside after-event", "within, since the event");
        if (number != null && number.Number > events.Count) return Refuse(number, TrialKeys.ExpectAfterEvent, $"event {number.Written} of {events.Count}", events.Count == 0 ? "an [[event]] in this file" : $"1 to {events.Count}");
        EventMoment? after = number == null ? null : MomentOf((int)number.Number);
        CaseValue? end = to ?? within;
        Window window = new(from?.Number ?? 0, end?.Number ?? double.PositiveInfinity, after);
        if (end != null && window.FromSeconds > window.ToSeconds) return Refuse(end, to != null ? TrialKeys.ExpectTo : TrialKeys.ExpectWithin, $"an end, {Words.Quote(end.Written)}, before the beginning, {Words.Quote(from!.Written)}", "from before the end");
        if (end != null && window.EndsSeconds > durationSeconds) return Refuse(end, to != null ? TrialKeys.ExpectTo : TrialKeys.ExpectWithin, $"{Words.Quote(end.Written)}, after the end of the run", $"up to {CaseKeys.RunDuration.Path}, {duration}");
        if (from != null && from.Number + (after?.AtSeconds ?? 0) > durationSeconds) return Refuse(from, TrialKeys.ExpectFrom, $"{Words.Quote(from.Written)}, after the end of the run", $"up to {CaseKeys.RunDuration.Path}, {duration}");
        return window;

        Window? Refuse(CaseValue value, CaseKey key, string found, string allowed)
        {
            problems.Add(value.Line, key.Path, found, allowed);
            return null;
        }
    }

    private EventMoment MomentOf(int number)
    {
        CaseEvent happening = events[number - 1];
        double? at = double.IsFinite(happening.AtSeconds) ? happening.AtSeconds : null;
        return new EventMoment(number, at, at == null ? CaseHappenings.ConditionOf(happening) : null);
    }

    private CaseValue? Value(TrialTable table, CaseKey key) => table.Entry(key) is CaseEntry entry ? _reader.Read(entry) : null;

    private CaseValue? Required(TrialTable table, CaseKey key)
    {
        if (table.Entry(key) is CaseEntry entry) return _reader.Read(entry);
        problems.Add(table.Line, key.Path, "nothing", key.Allowed);
        return null;
    }

    private static ExpectationKind KindOf(string key) => key switch
    {
        "reaches" => ExpectationKind.Reaches,
        "never" => ExpectationKind.Never,
        "at-least" => ExpectationKind.AtLeast,
        "at-most" => ExpectationKind.AtMost,
        "stays-within" => ExpectationKind.StaysWithin,
        "order" => ExpectationKind.Order,
        _ => ExpectationKind.Settles,
    };
}
