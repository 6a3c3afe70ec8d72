using System;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using OxyPlot;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>Turns plots into inline drawings of the page: one for desk and paper, one for a phone.</summary>
internal static class Figure
{
    private const double WideWidth = 760;
    private const double NarrowWidth = 350;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>A figure with its caption.</summary>
    /// <param name="id">Begins every id inside the drawings.</param>
    /// <param name="description">What the figure shows, for those who do not see it.</param>
    /// <param name="caption">What stands below.</param>
    /// <param name="height">Height of the wide drawing, and that of the narrow one.</param>
    /// <param name="build">Builds the plot for a size.</param>
    public static Markup Of(string id, string description, Markup caption, (double Wide, double Narrow) height, Func<PlotSize, PlotDrawing> build)
    {
        XElement wide = Drawing(id + "-w", "wide", description, new PlotSize(WideWidth, height.Wide, false), build);
        XElement narrow = Drawing(id + "-n", "narrow", description, new PlotSize(NarrowWidth, height.Narrow, true), build);
        return Wrap(id, caption, wide, narrow);
    }

    /// <summary>Puts drawings and a caption into a figure.</summary>
    public static Markup Wrap(string id, Markup caption, params XElement[] drawings)
    {
        string inside = string.Join('\n', drawings.Select(drawing => drawing.ToString(SaveOptions.DisableFormatting)));
        return new Markup($"<figure id=\"{id}\">\n{inside}\n<figcaption>{caption.Html}</figcaption>\n</figure>");
    }

    /// <summary>An empty drawing of our own.</summary>
    public static XElement Canvas(string style, string description, double width, double height) => new(
        Svg + "svg",
        new XAttribute("class", style),
        new XAttribute("viewBox", FormattableString.Invariant($"0 0 {width:0.##} {height:0.##}")),
        new XAttribute("role", "img"),
        new XAttribute("aria-label", description));

    /// <summary>An element of a drawing.</summary>
    public static XElement Element(string name, params (string Name, object Value)[] attributes) => new(
        Svg + name,
        attributes.Select(attribute => new XAttribute(attribute.Name, Convert.ToString(attribute.Value, CultureInfo.InvariantCulture) ?? "")));

    /// <summary>A length of a drawing, no longer than it need be.</summary>
    public static string Short(double length) => length.ToString("0.##", CultureInfo.InvariantCulture);

    private static XElement Drawing(string id, string style, string description, PlotSize size, Func<PlotSize, PlotDrawing> build)
    {
        SvgExporter exporter = new() { Width = size.Width, Height = size.Height, IsDocument = false, UseVerticalTextAlignmentWorkaround = true };
        PlotDrawing drawing = build(size);
        XElement plot = XElement.Parse(exporter.ExportToString(drawing.Model));
        XElement canvas = Canvas(style, description, size.Width, size.Height);
        Clean(plot, id);
        canvas.Add(plot.Nodes(), drawing.Words());
        return canvas;
    }

    // The page may hold an id once only, and chooses the face of its letters itself.
    private static void Clean(XElement plot, string prefix)
    {
        foreach (XElement element in plot.DescendantsAndSelf())
        {
            foreach (XAttribute attribute in element.Attributes().ToList())
            {
                if (attribute.IsNamespaceDeclaration || attribute.Name == "font-family") attribute.Remove();
                else if (attribute.Name == "id") attribute.Value = prefix + attribute.Value;
                else if (attribute.Value.Contains("url(#", StringComparison.Ordinal)) attribute.Value = attribute.Value.Replace("url(#", "url(#" + prefix, StringComparison.Ordinal);
            }

            if (element.Name.Namespace == XNamespace.None) element.Name = Svg + element.Name.LocalName;
        }
    }
}
