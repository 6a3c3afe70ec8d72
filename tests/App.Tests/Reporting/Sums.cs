using System.Data;
using System.Globalization;

namespace StarterCtl.App.Tests.Reporting;

/// <summary>Works out a sum as the report prints it.</summary>
internal static class Sums
{
    public static double Value(string sum)
    {
        using DataTable table = new() { Locale = CultureInfo.InvariantCulture };
        string open = sum.Replace('−', '-').Replace('·', '*');
        if (open.Contains(')') && !open.Contains('(')) open = "(" + open;
        return System.Convert.ToDouble(table.Compute(open, ""), CultureInfo.InvariantCulture);
    }
}
