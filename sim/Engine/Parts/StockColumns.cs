using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Parts;

/// <summary>Where the columns of a stock list stand.</summary>
internal sealed class StockColumns
{
    internal const string Part = "part", Ohm = "ohm", Watts = "watts", Joules = "joules", TimeConstant = "time-constant", Price = "price", Quantity = "quantity";

    private static readonly string[] Known = [Part, Ohm, Watts, Joules, TimeConstant, Price, Quantity];

    private readonly string[] _names;

    private StockColumns(string[] names) => _names = names;

    /// <summary>How many there are.</summary>
    internal int Count => _names.Length;

    /// <summary>Columns that mean nothing here.</summary>
    internal IReadOnlyList<string> Unused => [.. _names.Where(name => !Known.Contains(name)).Select(Words.Safe)];

    /// <summary>Reads the first row.</summary>
    /// <exception cref="CaseException">A column is missing or there twice.</exception>
    internal static StockColumns Of(string file, int line, string[] names)
    {
        StockColumns columns = new(names);
        List<CaseProblem> problems = [];
        foreach (string name in Known.Where(name => names.Count(other => other == name) > 1)) problems.Add(new CaseProblem(file, line, name, "the column twice", "once"));
        foreach (string name in (string[])[Ohm, Watts, Price]) if (!names.Contains(name)) problems.Add(columns.Missing(file, line, name, name));
        if (!names.Contains(Joules) && !names.Contains(TimeConstant)) problems.Add(columns.Missing(file, line, Joules, $"{Joules}, or {TimeConstant}"));
        if (problems.Count > 0) throw new CaseException(problems);
        return columns;
    }

    /// <summary>The place of a column; -1 where the list has none.</summary>
    internal int IndexOf(string name) => Array.IndexOf(_names, name);

    private CaseProblem Missing(string file, int line, string name, string wanted)
    {
        string? near = Words.Nearest(name, _names.Except(Known));
        string hint = near == null ? "" : $"; {Words.Quote(near)} is near it";
        string separated = _names.Length == 1 && _names[0].Contains(';') ? "; columns are parted by commas" : "";
        return new CaseProblem(file, line, name, $"no such column in {Words.Quote(string.Join(',', _names))}", $"a column {wanted}{hint}{separated}");
    }
}
