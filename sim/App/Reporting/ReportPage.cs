using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace StarterCtl.App.Reporting;

/// <summary>
/// The page under construction. What stands in a text as written is markup; what is put into it is escaped, so nothing
/// from a case can become markup.
/// </summary>
internal sealed class ReportPage
{
    // Rows of a table that is still kept on one sheet of paper.
    private const int LongestWhole = 16;

    private readonly StringBuilder _html = new();

    /// <summary>Puts arguments into markup, escaped.</summary>
    public static Markup Text(FormattableString text)
    {
        object[] escaped = [.. text.GetArguments().Select(Markup.Of)];
        return new Markup(string.Format(CultureInfo.InvariantCulture, text.Format, escaped));
    }

    /// <summary>Adds markup as it is.</summary>
    public void Add(Markup markup) => _html.Append(markup.Html).Append('\n');

    /// <summary>Adds a line of markup.</summary>
    public void Line(FormattableString text) => Add(Text(text));

    /// <summary>Opens a section with its heading.</summary>
    public void BeginSection(string id, string title) =>
        Line($"<section id=\"{id}\" aria-labelledby=\"{id}-title\">\n<h2 id=\"{id}-title\">{title}</h2>");

    /// <summary>Closes the section.</summary>
    public void EndSection() => Line($"</section>");

    /// <summary>Adds a heading inside a section.</summary>
    public void Heading(string title) => Line($"<h3>{title}</h3>");

    /// <summary>Adds a paragraph.</summary>
    public void Paragraph(FormattableString text) => Line($"<p>{Text(text)}</p>");

    /// <summary>Adds a paragraph of smaller remarks.</summary>
    public void Note(FormattableString text) => Line($"<p class=\"note\">{Text(text)}</p>");

    /// <summary>Adds a derivation, one step per line.</summary>
    public void Steps(IEnumerable<FormattableString> steps)
    {
        Line($"<div class=\"sums\">");
        foreach (FormattableString step in steps) Line($"<p>{Text(step)}</p>");
        Line($"</div>");
    }

    /// <summary>Adds a list.</summary>
    public void List(IEnumerable<FormattableString> items)
    {
        Line($"<ul>");
        foreach (FormattableString item in items) Line($"<li>{Text(item)}</li>");
        Line($"</ul>");
    }

    /// <summary>Adds a table. The first column heads its row.</summary>
    public void Table(ReportTable table)
    {
        Line($"<div class=\"{(table.Rows.Count <= LongestWhole ? "scroll short" : "scroll")}\" role=\"group\" tabindex=\"0\" aria-label=\"{table.Caption}\">\n<table class=\"{table.Style}\">\n<caption>{table.Caption}</caption>");
        Line($"<thead><tr>{new Markup(string.Concat(table.Columns.Select(column => $"<th scope=\"col\">{Heading(table, column)}</th>")))}</tr></thead>\n<tbody>");
        foreach (object[] row in table.Rows)
        {
            StringBuilder cells = new();
            for (int i = 0; i < row.Length; i++)
            {
                string cell = Markup.Of(row[i]);
                cells.Append(i == 0 ? $"<th scope=\"row\">{KeepUnit(cell)}</th>" : $"<td>{cell}</td>");
            }

            Line($"<tr>{new Markup(cells.ToString())}</tr>");
        }

        Line($"</tbody>\n</table>\n</div>");
    }

    // A table of many columns folds its headings wherever it can.
    private static string Heading(ReportTable table, object column)
    {
        string heading = Markup.Of(column);
        return table.Style.Contains("tight", StringComparison.Ordinal) ? heading : KeepUnit(heading);
    }

    // The unit at the end of a heading stays with its last word.
    private static string KeepUnit(string heading)
    {
        int comma = heading.LastIndexOf(", ", StringComparison.Ordinal);
        return comma < 0 ? heading : heading[..comma] + ",\u00A0" + heading[(comma + 2)..];
    }

    /// <summary>The page so far.</summary>
    public override string ToString() => _html.ToString();
}
