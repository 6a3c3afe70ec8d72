using System;
using System.Globalization;
using System.IO;
using System.Text;

namespace StarterCtl.Engine.Records;

/// <summary>Text on its way to a writer: numbers are formatted in place, so that a long record costs no memory.</summary>
/// <param name="writer">Where it goes; stays open.</param>
internal sealed class TextBuffer(TextWriter writer)
{
    private const int LongestNumber = 40;

    private readonly char[] _letters = new char[1 << 15];
    private int _count;

    /// <summary>Begins a text in a file: UTF-8 without a mark at its beginning.</summary>
    /// <param name="stream">The file; stays open, and has everything behind every <see cref="Flush"/>.</param>
    public static TextBuffer On(Stream stream) => new(new StreamWriter(stream, new UTF8Encoding(false), 1 << 15, true));

    /// <summary>Adds a text.</summary>
    public TextBuffer Add(ReadOnlySpan<char> text)
    {
        Room(text.Length);
        if (text.Length > _letters.Length)
        {
            writer.Write(text);
            return this;
        }

        text.CopyTo(_letters.AsSpan(_count));
        _count += text.Length;
        return this;
    }

    /// <summary>Adds a character.</summary>
    public TextBuffer Add(char character)
    {
        Room(1);
        _letters[_count++] = character;
        return this;
    }

    /// <summary>Adds a number.</summary>
    /// <param name="number">The number.</param>
    /// <param name="format">Its format, invariant.</param>
    public TextBuffer Add<T>(T number, ReadOnlySpan<char> format = default)
        where T : ISpanFormattable
    {
        Room(LongestNumber);
        if (!number.TryFormat(_letters.AsSpan(_count), out int written, format, CultureInfo.InvariantCulture)) throw new InvalidOperationException("a number is longer than it can be");
        _count += written;
        return this;
    }

    /// <summary>Hands everything on, down to the file.</summary>
    public void Flush()
    {
        HandOn();
        writer.Flush();
    }

    private void Room(int letters)
    {
        if (_letters.Length - _count < letters) HandOn();
    }

    private void HandOn()
    {
        writer.Write(_letters, 0, _count);
        _count = 0;
    }
}
