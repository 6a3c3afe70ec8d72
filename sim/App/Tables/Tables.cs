using Spectre.Console;

namespace StarterCtl.App.Tables;

/// <summary>The one look of every table: narrow enough for 80 columns.</summary>
internal static class Tables
{
    /// <summary>Prints a heading after a blank line.</summary>
    public static void Heading(IAnsiConsole console, string heading)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{heading}[/]");
    }

    /// <summary>An empty table.</summary>
    public static Table New() => new Table().Border(TableBorder.Simple);

    /// <summary>A column of numbers.</summary>
    public static TableColumn Number(string heading) => new TableColumn(heading).RightAligned().NoWrap().Padding(1, 0);

    /// <summary>A column of single words.</summary>
    public static TableColumn Word(string heading) => new TableColumn(heading).NoWrap().Padding(2, 0);
}
