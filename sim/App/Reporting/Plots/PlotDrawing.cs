using System.Collections.Generic;
using System.Xml.Linq;
using OxyPlot;
using OxyPlot.Axes;

namespace StarterCtl.App.Reporting.Plots;

/// <summary>A plot and the words on it.</summary>
/// <remarks>
/// The words are set by the page itself, after the plot has been drawn: they may stand outside the plot's own area, and
/// a white edge keeps them readable where a line runs behind them.
/// </remarks>
internal sealed class PlotDrawing
{
    private readonly List<Word> _words = [];

    /// <summary>Begins an empty plot.</summary>
    /// <param name="size">Its size.</param>
    /// <param name="right">Room right of the plot for words.</param>
    /// <param name="top">Room above the plot.</param>
    public PlotDrawing(PlotSize size, double right = 14, double top = 24)
    {
        Size = size;
        Width = size.Width - size.Left - right;
        Height = size.Height - top - size.Bottom;
        Model = new PlotModel
        {
            DefaultFontSize = size.FontSize,
            PlotAreaBorderThickness = new OxyThickness(0),
            PlotMargins = new OxyThickness(size.Left, top, right, size.Bottom),
            Padding = new OxyThickness(0),
            Background = OxyColors.Undefined,
            TextColor = PlotParts.Ink,
        };
    }

    /// <summary>Size of the whole drawing.</summary>
    public PlotSize Size { get; }

    /// <summary>Width of the plot itself.</summary>
    public double Width { get; }

    /// <summary>Height of the plot itself.</summary>
    public double Height { get; }

    /// <summary>The plot.</summary>
    public PlotModel Model { get; }

    /// <summary>Adds the axis along the bottom.</summary>
    public void Bottom(string title, double from, double to)
    {
        LinearAxis axis = PlotParts.Bottom(from, to);
        if (Size.IsNarrow) axis.IntervalLength = 48;
        Model.Axes.Add(axis);
        _words.Add(new Word(title, null, default, "middle", Size.Left + Width / 2, Size.Height - 4));
    }

    /// <summary>Adds an axis on the left with its title above it; several stand above each other.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="title">Quantity and unit.</param>
    /// <param name="range">Lowest and highest number.</param>
    /// <param name="start">Lower end as a part of the plot's height.</param>
    /// <param name="end">Upper end.</param>
    /// <param name="lift">How much higher than usual the title stands.</param>
    public void Left(string key, string title, (double From, double To) range, double start = 0, double end = 1, double lift = 0)
    {
        Model.Axes.Add(PlotParts.Left(key, range, start, end));
        _words.Add(new Word(title, key, new DataPoint(double.NaN, range.To), "start", 2, -7 - lift));
    }

    /// <summary>Adds words next to a point.</summary>
    /// <param name="key">The axis on the left that the point belongs to.</param>
    /// <param name="text">The words.</param>
    /// <param name="at">The point.</param>
    /// <param name="anchor">"start", "middle" or "end" of the words stands there.</param>
    /// <param name="right">How far to the right.</param>
    /// <param name="down">How far down; the words stand above it.</param>
    public void Say(string key, string text, DataPoint at, string anchor, double right = 0, double down = 0) =>
        _words.Add(new Word(text, key, at, anchor, right, down));

    /// <summary>The words as they stand on the drawn plot.</summary>
    public IEnumerable<XElement> Words()
    {
        Axis bottom = Model.GetAxis(PlotParts.BottomKey);
        foreach (Word word in _words)
        {
            double x = word.Right, y = word.Down;
            if (word.Key != null)
            {
                if (!double.IsNaN(word.At.X)) x += bottom.Transform(word.At.X);
                y += Model.GetAxis(word.Key).Transform(word.At.Y);
            }

            XElement text = Figure.Element("text", ("class", "word"), ("x", Figure.Short(x)), ("y", Figure.Short(y)), ("text-anchor", word.Anchor), ("font-size", Size.FontSize));
            text.Value = word.Text;
            yield return text;
        }
    }

    private sealed record Word(string Text, string? Key, DataPoint At, string Anchor, double Right, double Down);
}
