using System.Collections.Generic;
using System.Linq;
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
    /// <summary>Distance from one line of words to the next, in heights of a letter.</summary>
    public const double LineRatio = 1.1;

    private const double TieWidth = 16;

    // Width of a letter, in heights; wide faces have it.
    private const double LetterRatio = 0.62;

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

    /// <summary>Room right of the plot for words of <see cref="SayAtEnd"/>.</summary>
    public static double RoomFor(PlotSize size, IEnumerable<string> words) => TieWidth + 6 + words.Max(word => word.Length) * LetterRatio * size.FontSize;

    /// <summary>Adds the axis along the bottom.</summary>
    public void Bottom(string title, double from, double to)
    {
        LinearAxis axis = PlotParts.Bottom(from, to);
        if (Size.IsNarrow) axis.IntervalLength = 48;
        Model.Axes.Add(axis);
        _words.Add(new Word(title, null, default, "middle", Size.Left + Width / 2, Size.Height - 4));
    }

    /// <summary>Adds an axis along the bottom and one on the left, both in decades.</summary>
    /// <param name="bottom">Title of the one along the bottom, and its ends.</param>
    /// <param name="key">Key of the one on the left.</param>
    /// <param name="left">Its title and its ends.</param>
    public void Decades((string Title, double From, double To) bottom, string key, (string Title, double From, double To) left)
    {
        Model.Axes.Add(PlotParts.BottomDecades(bottom.From, bottom.To));
        _words.Add(new Word(bottom.Title, null, default, "middle", Size.Left + Width / 2, Size.Height - 4));
        Model.Axes.Add(PlotParts.LeftDecades(key, left.From, left.To));
        _words.Add(new Word(left.Title, key, new DataPoint(double.NaN, left.To), "start", 2, -7));
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

    /// <summary>Adds words right of the plot, each tied to its line by a stroke, so that they may stand apart from it.</summary>
    /// <param name="key">The axis on the left that the lines belong to.</param>
    /// <param name="x">Where the lines end.</param>
    /// <param name="range">Lowest and highest number of that axis.</param>
    /// <param name="height">Height of the axis in units of the drawing.</param>
    /// <param name="words">The words and the levels at which their lines end.</param>
    public void SayAtEnd(string key, double x, (double From, double To) range, double height, IReadOnlyList<(string Text, double At)> words)
    {
        double perUnit = (range.To - range.From) / height;
        double half = Size.FontSize * 0.5 * perUnit;
        double[] places = LabelSpread.Apart([.. words.Select(word => word.At)], Size.FontSize * LineRatio * perUnit, range.From + half, range.To);
        for (int i = 0; i < places.Length; i++)
        {
            _words.Add(new Word(words[i].Text, key, new DataPoint(x, places[i]), "start", TieWidth + 3, Size.FontSize * 0.35, words[i].At));
        }
    }

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

            if (word.TiedTo is double level)
            {
                double end = bottom.Transform(word.At.X), from = Model.GetAxis(word.Key!).Transform(level), to = y - word.Down;
                string path = $"M{Figure.Short(end + 1)} {Figure.Short(from)}L{Figure.Short(end + TieWidth)} {Figure.Short(to)}";
                yield return Figure.Element("path", ("class", "tie"), ("d", path), ("fill", "none"), ("stroke", "#555"), ("stroke-width", 1));
            }

            XElement text = Figure.Element("text", ("class", "word"), ("x", Figure.Short(x)), ("y", Figure.Short(y)), ("text-anchor", word.Anchor), ("font-size", Size.FontSize));
            text.Value = word.Text;
            yield return text;
        }
    }

    private sealed record Word(string Text, string? Key, DataPoint At, string Anchor, double Right, double Down, double? TiedTo = null);
}
