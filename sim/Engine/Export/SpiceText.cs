using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Export;

/// <summary>The lines of a netlist, with numbers at full precision and in the invariant culture.</summary>
public sealed class SpiceText
{
    // A step of a source; short against everything that a machine does.
    private const double StepSeconds = 1e-6;
    private const int LineWidth = 110;

    private readonly StringBuilder _text = new();

    /// <summary>A number that reads back as the same number.</summary>
    public static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>The value of a source that steps: a constant, or straight lines with steps of a microsecond that begin at their times.</summary>
    /// <param name="first">Value from the beginning.</param>
    /// <param name="steps">Later values with their times, s, in the order of time.</param>
    public static string Stepped(double first, IEnumerable<(double Seconds, double Value)> steps)
    {
        List<string> points = [];
        double value = first;
        foreach ((double seconds, double next) in steps.Where(step => step.Seconds > 0))
        {
            points.Add($"{Number(seconds)} {Number(value)} {Number(seconds + StepSeconds)} {Number(next)}");
            value = next;
        }

        return points.Count == 0 ? $"DC {Number(first)}" : $"PWL(0 {Number(first)} {string.Join(' ', points)})";
    }

    /// <summary>A comment line. What a case brings along may not end it.</summary>
    public void Comment(string text) => Line("* " + string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter)));

    /// <summary>A headline of a part.</summary>
    public void Part(string text)
    {
        Line("");
        Comment($"---- {text}");
    }

    /// <summary>A line as it is.</summary>
    public void Line(string text) => _text.Append(text).Append('\n');

    /// <summary>An element, continued over as many lines as it needs; broken at spaces only.</summary>
    public void Element(string text)
    {
        int begin = 0;
        while (text.Length - begin > LineWidth && text.LastIndexOf(' ', begin + LineWidth, LineWidth) is int space && space > begin)
        {
            Line((begin == 0 ? "" : "+ ") + text[begin..space]);
            begin = space + 1;
        }

        Line((begin == 0 ? "" : "+ ") + text[begin..]);
    }

    /// <summary>The whole text.</summary>
    public override string ToString() => _text.ToString();
}
