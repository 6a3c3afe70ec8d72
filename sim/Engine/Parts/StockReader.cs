using System.Collections.Generic;
using System.Linq;
using nietras.SeparatedValues;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Parts;

/// <summary>Reads the rows of a stock list; each that is wrong says why, and none hides another.</summary>
internal static class StockReader
{
    internal const string Beginning = "a stock list, which begins with the names of its columns: " + Example;

    private const string Example = "part,ohm,watts,joules,price,quantity";

    /// <summary>Reads a list from a text.</summary>
    internal static StockList Read(string file, string text, bool skipsBadRows)
    {
        List<CaseProblem> problems = [];
        List<Part> parts = [];
        StockColumns? columns = null;
        Dictionary<string, int> lineOf = [];
        using SepReader sheet = Sep.New(',').Reader(options => options with { HasHeader = false, Unescape = true, DisableColCountCheck = true }).FromText(text);
        bool isFirst = true;
        while (sheet.MoveNext())
        {
            string[] cells = Cells(sheet.Current);
            // Without a header of its own the reader gives the first row the number of the second.
            int line = isFirst ? 1 : sheet.Current.LineNumberFrom;
            isFirst = false;
            if (cells.All(cell => cell.Length == 0)) continue;
            if (columns == null) columns = StockColumns.Of(file, line, cells);
            else if (new StockRow(file, line, columns, cells).Read(lineOf, problems) is Part part) parts.Add(part);
        }

        if (columns == null) throw CaseBytes.Unusable(file, "nothing but blank lines", Beginning);
        if (problems.Count > 0 && !skipsBadRows) throw new CaseException(problems);
        if (parts.Count == 0) throw new CaseException([.. problems, new CaseProblem(file, 0, "", "no usable row", "at least one resistor")]);
        return new StockList(file, parts, problems, columns.Unused);
    }

    private static string[] Cells(SepReader.Row row)
    {
        string[] cells = new string[row.ColCount];
        for (int i = 0; i < cells.Length; i++) cells[i] = row[i].ToString().Trim();
        return cells;
    }
}
