using System.Collections.Generic;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Parts;

/// <summary>A list of resistors that are there to be bought.</summary>
/// <param name="FileName">The file as the user named it.</param>
/// <param name="Parts">The usable rows in the order of the file.</param>
/// <param name="Skipped">What is wrong with the rows that were left out.</param>
/// <param name="UnusedColumns">Columns that mean nothing here.</param>
public sealed record StockList(string FileName, IReadOnlyList<Part> Parts, IReadOnlyList<CaseProblem> Skipped, IReadOnlyList<string> UnusedColumns)
{
    /// <summary>Reads a stock list.</summary>
    /// <param name="path">A CSV file with commas: <c>ohm,watts,joules,price</c>, or <c>time-constant</c> instead of joules; see sim/parts.md.</param>
    /// <param name="skipsBadRows">True to leave bad rows out instead of refusing the file.</param>
    /// <exception cref="CaseException">
    /// The file cannot be read, a column is missing, a row is wrong while bad rows are refused, or no row is left; carries every problem.
    /// </exception>
    public static StockList Read(string path, bool skipsBadRows) => StockReader.Read(path, CaseBytes.Decode(path, CaseBytes.Read(path, "a stock list", "*.csv"), StockReader.Beginning), skipsBadRows);
}
