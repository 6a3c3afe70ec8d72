using System;
using System.Linq;
using System.Xml.Linq;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>The energy of the run as one bar, its parts told apart by hatching and letters.</summary>
internal static class EnergyBar
{
    private const double Height = 66;
    private const double BarHeight = 40;
    private const double LeastLettered = 14;

    /// <summary>Draws the bar.</summary>
    public static Markup Draw(EnergyPart[] parts)
    {
        string description = "Stacked bar of the energy balance: " + string.Join("; ", parts.Select(part => $"{part.Letter} {part.Name} {Quantity.Joules(part.Joules)}")) + ".";
        Markup caption = new("Parts of the delivered energy; the letters are those of the table. A part too thin for its letter has none.");
        return Figure.Wrap("energy-bar", caption, Bar(parts, description, "wide", 760, 14), Bar(parts, description, "narrow", 350, 12));
    }

    private static XElement Bar(EnergyPart[] parts, string description, string style, double width, double fontSize)
    {
        XElement canvas = Figure.Canvas(style, description, width, Height);
        XElement definitions = Figure.Element("defs");
        canvas.Add(definitions);
        double all = parts.Sum(part => Math.Max(0, part.Joules)), x = 1;
        for (int i = 0; i < parts.Length && all > 0; i++)
        {
            double share = Math.Max(0, parts[i].Joules) / all * (width - 2);
            string pattern = $"hatch-{style}-{i}";
            definitions.Add(Hatch(pattern, i));
            canvas.Add(Figure.Element("rect", ("x", Figure.Short(x)), ("y", 20), ("width", Figure.Short(share)), ("height", BarHeight), ("fill", $"url(#{pattern})"), ("stroke", "#000"), ("stroke-width", 1)));
            if (share >= LeastLettered)
            {
                XElement letter = Figure.Element("text", ("x", Figure.Short(x + share / 2)), ("y", 14), ("text-anchor", "middle"), ("font-size", fontSize));
                letter.Value = parts[i].Letter.ToString();
                canvas.Add(letter);
            }

            x += share;
        }

        return canvas;
    }

    // Lines of changing angle and distance; every third part is plain.
    private static XElement Hatch(string id, int index)
    {
        double gap = 4 + index * 3 % 7;
        XElement pattern = Figure.Element(
            "pattern", ("id", id), ("width", gap), ("height", gap), ("patternUnits", "userSpaceOnUse"), ("patternTransform", $"rotate({(index * 55 + 45) % 180})"));
        pattern.Add(Figure.Element("rect", ("width", gap), ("height", gap), ("fill", "#fff")));
        if (index % 3 != 2) pattern.Add(Figure.Element("path", ("d", $"M0 0V{Figure.Short(gap)}"), ("stroke", "#000"), ("stroke-width", index % 2 == 0 ? 1.4 : 2.6)));
        return pattern;
    }
}
