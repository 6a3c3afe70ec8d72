using System;
using System.IO;
using System.Linq;

namespace StarterCtl.Engine.Records;

/// <summary>
/// A record as a value change dump (four-state VCD of IEEE 1364): numbers as real variables, switches as wires, ids as integers
/// whose words stand in comments. Only changes are written. Its header is a comment.
/// </summary>
public sealed class VcdRecordWriter : RecordWriter
{
    private const int IntegerBits = 32;
    private const int BitsWidth = 16;
    private const int BitsMask = (1 << BitsWidth) - 1;
    private const char FirstIdentifier = '!';

    private readonly Stream _stream;
    private readonly TextBuffer _text;
    private readonly double[] _last = new double[SignalTable.All.Count];
    private double _firstSeconds;
    private long _time = -1;

    /// <summary>Opens the file and declares every variable.</summary>
    /// <param name="path">The file.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="create">Makes a file; null: on the disk.</param>
    /// <exception cref="IOException">It cannot be made.</exception>
    public VcdRecordWriter(string path, RecordHeader header, Func<string, Stream>? create = null)
        : base(header)
    {
        _stream = (create ?? Create)(path);
        _text = TextBuffer.On(_stream);
        _text.Add($"$version starterctl {header.ProgramVersion} $end\n$comment\n{header.ToJson()}\n$end\n$timescale 1 us $end\n$scope module starterctl $end\n");
        for (int i = 1; i < SignalTable.All.Count; i++) Declare(SignalTable.All[i], Identifier(i));
        _text.Add("$upscope $end\n$enddefinitions $end\n");
    }

    /// <inheritdoc/>
    public override void Flush() => _text.Flush();

    /// <inheritdoc/>
    public override void Complete()
    {
        // Without it a viewer would end at the last change.
        if (Count > 0) _text.Add('#').Add(_time).Add('\n');
        Flush();
    }

    /// <inheritdoc/>
    protected override void Write(in Sample sample)
    {
        bool isFirst = Count == 0;
        if (isFirst) Begin(sample.TimeSeconds);
        _time = (long)Math.Round((sample.TimeSeconds - _firstSeconds) * 1e6);
        bool isTimed = false;
        for (int i = 1; i < SignalTable.All.Count; i++)
        {
            Signal signal = SignalTable.All[i];
            double number = signal.Number(sample);
            if (!isFirst && BitConverter.DoubleToInt64Bits(number) == BitConverter.DoubleToInt64Bits(_last[i])) continue;
            if (!isTimed) _text.Add('#').Add(_time).Add('\n');
            isTimed = true;
            _last[i] = number;
            Put(signal, Identifier(i), number);
        }
    }

    /// <inheritdoc/>
    protected override void Free() => _stream.Dispose();

    // Times are not negative: the first sample, one period before the case, is 0.
    private void Begin(double firstSeconds)
    {
        _firstSeconds = firstSeconds;
        _text.Add("$comment time 0 is ").Add(firstSeconds, "G15").Add(" s of the case $end\n");
    }

    private void Declare(Signal signal, char identifier)
    {
        string kind = signal.Kind switch
        {
            SignalKind.Real or SignalKind.LongReal => "real 64",
            SignalKind.Switch => "wire 1",
            SignalKind.Bits => $"wire {BitsWidth}",
            _ => $"integer {IntegerBits}",
        };
        _text.Add($"$var {kind} {identifier} {signal.Name} $end\n");
        if (signal.Words is SignalWords words) _text.Add($"$comment {signal.Name}: {string.Join(", ", words.All.Select((word, id) => $"{id} {word}"))} $end\n");
    }

    private void Put(Signal signal, char identifier, double number)
    {
        switch (signal.Kind)
        {
            // Nine digits bring a number of single precision back; what is not a number is "nan", as C prints it.
            case SignalKind.Real or SignalKind.LongReal:
                _text.Add('r');
                if (double.IsFinite(number)) _text.Add(number, "G9");
                else _text.Add(double.IsNaN(number) ? "nan" : number > 0 ? "inf" : "-inf");
                _text.Add(' ');
                break;
            case SignalKind.Switch:
                _text.Add(number != 0 ? '1' : '0');
                break;
            default:
                _text.Add('b').Add((int)number & (signal.Kind == SignalKind.Bits ? BitsMask : -1), "B").Add(' ');
                break;
        }

        _text.Add(identifier).Add('\n');
    }

    private static char Identifier(int index) => (char)(FirstIdentifier + index);
}
