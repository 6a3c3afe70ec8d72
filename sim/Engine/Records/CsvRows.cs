namespace StarterCtl.Engine.Records;

/// <summary>Samples as lines of CSV.</summary>
internal sealed class CsvRows
{
    private readonly TextBuffer _text;

    /// <summary>Begins with the line of names.</summary>
    /// <param name="text">Where the lines go.</param>
    public CsvRows(TextBuffer text)
    {
        _text = text;
        foreach (Signal signal in SignalTable.All) Separate(signal).Add(signal.Name);
        _text.Add('\n');
    }

    /// <summary>Adds a line.</summary>
    public void Add(in Sample sample)
    {
        foreach (Signal signal in SignalTable.All) AddCell(Separate(signal), signal, signal.Number(sample));
        _text.Add('\n');
    }

    /// <summary>Hands every line on.</summary>
    public void Flush() => _text.Flush();

    private TextBuffer Separate(Signal signal) => ReferenceEquals(signal, SignalTable.All[0]) ? _text : _text.Add(',');

    private static void AddCell(TextBuffer text, Signal signal, double number)
    {
        if (signal.Words != null) text.Add(signal.Words.Word((int)number));
        else if (signal.Role == SignalRole.Time) text.Add(number, "G15");
        else if (signal.Kind is not (SignalKind.Real or SignalKind.LongReal)) text.Add((int)number);

        // Readings are single precision: nine digits bring every one of them back.
        else if (!double.IsNaN(number)) text.Add(number, "G9");
    }
}
