using System.Collections.Generic;
using System.Globalization;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Parts;

/// <summary>One row of a stock list.</summary>
internal sealed class StockRow(string file, int line, StockColumns columns, string[] cells)
{
    // A price in ten-thousandths adds up without rounding.
    private const int MostDecimals = 4;
    private const decimal HighestPrice = 1e9m;
    private const int HighestQuantity = 1_000_000;
    private const int LongestName = 60;

    private static readonly CaseRange OhmRange = CaseRange.Above0(Dimension.Resistance, "1000 kohm");
    private static readonly CaseRange WattRange = CaseRange.Above0(Dimension.Power, "1 MW");
    private static readonly CaseRange JouleRange = CaseRange.Above0(Dimension.Energy, "1000 MJ");
    private static readonly CaseRange TimeRange = CaseRange.Above0(Dimension.Time, "1000000 s");

    private readonly List<CaseProblem> _problems = [];

    /// <summary>Reads the row; null after problems, which are in the list then.</summary>
    internal Part? Read(Dictionary<string, int> lineOf, List<CaseProblem> problems)
    {
        if (cells.Length != columns.Count)
        {
            problems.Add(Problem("", $"{cells.Length} cells", $"{columns.Count}, as in the first row; a cell with a comma stands in quotes"));
            return null;
        }

        double ohms = Quantity(StockColumns.Ohm, OhmRange, "ohm"), watts = Quantity(StockColumns.Watts, WattRange, "W");
        double joules = Pulse(watts);
        decimal price = Price();
        int? quantity = Count();
        string name = Name(ohms, watts, lineOf);
        problems.AddRange(_problems);
        return _problems.Count == 0 ? new Part(name, ohms, new PartRating(watts, joules), price, quantity) : null;
    }

    private double Pulse(double watts)
    {
        string joules = Cell(StockColumns.Joules), time = Cell(StockColumns.TimeConstant);
        if (joules.Length > 0 && time.Length > 0) Report(StockColumns.TimeConstant, $"{Words.Quote(time)} beside {Words.Quote(joules)} in {StockColumns.Joules}", "one of the two: joules are the time constant times the watts");
        else if (time.Length > 0) return watts * Quantity(StockColumns.TimeConstant, TimeRange, "s");
        else if (columns.IndexOf(StockColumns.Joules) >= 0) return Quantity(StockColumns.Joules, JouleRange, "J");
        else Report(StockColumns.TimeConstant, "nothing", $"{Units.Allowed(Dimension.Time)}, {TimeRange.Text}");
        return double.NaN;
    }

    // A plain number is in the unit of its column; one with a unit is held against it.
    private double Quantity(string column, CaseRange range, string unit)
    {
        string cell = Cell(column), allowed = $"{Units.Allowed(range.Dimension!.Value)}, {range.Text}; a plain number counts in {unit}";
        string found = "nothing";
        bool isPlain = cell.Length > 0 && Units.TrySplit(cell, out _, out string unitText, out _) && unitText.Length == 0;
        if (cell.Length == 0 || !Units.TryParse(isPlain ? $"{cell} {unit}" : cell, range.Dimension.Value, out double number, out found)) Report(column, found, allowed);
        else if (!range.Contains(number)) Report(column, Words.Quote(cell), allowed);
        else return number;
        return double.NaN;
    }

    private decimal Price()
    {
        string cell = Cell(StockColumns.Price);
        bool isRead = decimal.TryParse(cell, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out decimal price);
        if (isRead && price is >= 0 and <= HighestPrice && decimal.Round(price, MostDecimals) == price) return price;
        Report(StockColumns.Price, cell.Length == 0 ? "nothing" : Words.Quote(cell), $"a plain number, 0 to {HighestPrice.ToString("0", CultureInfo.InvariantCulture)}, with up to {MostDecimals} decimals and no currency");
        return 0;
    }

    private int? Count()
    {
        string cell = Cell(StockColumns.Quantity);
        if (cell.Length == 0) return null;
        if (int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out int quantity) && quantity <= HighestQuantity) return quantity;
        Report(StockColumns.Quantity, Words.Quote(cell), $"a whole number, 0 to {HighestQuantity}; or nothing, for as many as needed");
        return null;
    }

    private string Name(double ohms, double watts, Dictionary<string, int> lineOf)
    {
        string given = Cell(StockColumns.Part);
        if (given.Length > LongestName || Words.Safe(given) != given) Report(StockColumns.Part, Words.Quote(given), $"up to {LongestName} visible characters");
        string name = given.Length > 0 ? given : $"{Text.Number(ohms)} ohm {Text.Number(watts)} W";
        if (given.Length == 0 && (double.IsNaN(ohms) || double.IsNaN(watts))) return name;
        if (!lineOf.TryAdd(name, line)) Report(StockColumns.Part, $"{Words.Quote(name)} a second time, after line {lineOf[name].ToString(CultureInfo.InvariantCulture)}", given.Length > 0 ? "once; quantity says how many there are" : "a name in the column part for each of them");
        return name;
    }

    private string Cell(string column)
    {
        int index = columns.IndexOf(column);
        return index < 0 ? "" : cells[index];
    }

    private void Report(string column, string found, string allowed) => _problems.Add(Problem(column, found, allowed));

    private CaseProblem Problem(string column, string found, string allowed) => new(file, line, column, found, allowed);
}
