using System;
using System.Buffers.Binary;
using System.IO;
using System.Linq;
using System.Text;

namespace StarterCtl.Engine.Records;

/// <summary>
/// A record as COMTRADE (IEEE C37.111-2013), ASCII or BINARY32: configuration (.cfg), data (.dat) and header (.hdr). Numbers are
/// rounded to the channel's step. At every flush the configuration counts the samples that the data file then has.
/// </summary>
public sealed class ComtradeRecordWriter : RecordWriter
{
    private const int StatusBitsInWord = 16;

    private readonly string _path;
    private readonly bool _isAscii;
    private readonly Func<string, Stream> _create;
    private readonly ComtradeConfiguration _configuration;
    private readonly Stream _data;
    private readonly MemoryStream _waiting = new();
    private readonly StringBuilder _line = new();
    private readonly byte[] _row;
    private double _firstSeconds;

    /// <summary>Opens the files.</summary>
    /// <param name="path">The configuration file; the others differ in the extension.</param>
    /// <param name="header">The record's header.</param>
    /// <param name="isAscii">Whether the data file is ASCII, else BINARY32.</param>
    /// <param name="create">Makes a file; null: on the disk.</param>
    /// <exception cref="IOException">They cannot be made.</exception>
    public ComtradeRecordWriter(string path, RecordHeader header, bool isAscii, Func<string, Stream>? create = null)
        : base(header)
    {
        _path = path;
        _isAscii = isAscii;
        _create = create ?? Create;
        _configuration = new ComtradeConfiguration(header, isAscii);
        int words = (_configuration.Status.Count + StatusBitsInWord - 1) / StatusBitsInWord;
        _row = new byte[(2 + _configuration.Analog.Count) * sizeof(int) + words * sizeof(ushort)];
        using (Stream text = _create(HeaderPath(path))) text.Write(Encoding.UTF8.GetBytes(HeaderText(header)));
        _data = _create(DataPath(path));
        WriteConfiguration();
    }

    /// <summary>The data file of a configuration.</summary>
    public static string DataPath(string path) => Path.ChangeExtension(path, ".dat");

    /// <summary>The header file of a configuration.</summary>
    public static string HeaderPath(string path) => Path.ChangeExtension(path, ".hdr");

    /// <inheritdoc/>
    public override void Flush()
    {
        _data.Write(_waiting.GetBuffer(), 0, (int)_waiting.Length);
        _waiting.SetLength(0);
        _data.Flush();

        // Behind the data, so that it never counts a sample that is not there.
        WriteConfiguration();
    }

    /// <inheritdoc/>
    protected override void Write(in Sample sample)
    {
        if (Count == 0) _firstSeconds = sample.TimeSeconds;
        int number = (int)(Count + 1);
        uint periods = (uint)Math.Round((sample.TimeSeconds - _firstSeconds) * 1e6 / Header.ControlPeriodMicroseconds);
        if (_isAscii) WriteAscii(sample, number, periods);
        else WriteBinary(sample, number, periods);
    }

    /// <inheritdoc/>
    protected override void Free() => _data.Dispose();

    private int Steps(in Sample sample, int channel)
    {
        (Signal signal, double step) = _configuration.Analog[channel];
        int steps = ComtradeScale.Steps(signal.Number(sample), step);
        _configuration.Saw(channel, steps);
        return steps;
    }

    private static bool IsOn(in Sample sample, (Signal Signal, int Bit) channel) => ((int)channel.Signal.Number(sample) >> channel.Bit & 1) != 0;

    private void WriteBinary(in Sample sample, int number, uint periods)
    {
        Span<byte> row = _row;
        BinaryPrimitives.WriteInt32LittleEndian(row, number);
        BinaryPrimitives.WriteUInt32LittleEndian(row[sizeof(int)..], periods);
        int at = 2 * sizeof(int);
        for (int i = 0; i < _configuration.Analog.Count; i++, at += sizeof(int)) BinaryPrimitives.WriteInt32LittleEndian(row[at..], Steps(sample, i));
        row[at..].Clear();
        for (int i = 0; i < _configuration.Status.Count; i++)
        {
            // The lowest bit of a word is its first channel, and its low byte comes first.
            if (IsOn(sample, _configuration.Status[i])) row[at + i / 8] |= (byte)(1 << i % 8);
        }

        _waiting.Write(row);
    }

    private void WriteAscii(in Sample sample, int number, uint periods)
    {
        StringBuilder line = _line.Clear().Append(number).Append(',').Append(periods);
        for (int i = 0; i < _configuration.Analog.Count; i++)
        {
            // A missing number is an empty field.
            int steps = Steps(sample, i);
            line.Append(',');
            if (steps != int.MinValue) line.Append(steps);
        }

        foreach ((Signal Signal, int Bit) channel in _configuration.Status) line.Append(IsOn(sample, channel) ? ",1" : ",0");
        _waiting.Write(Encoding.ASCII.GetBytes(line.Append("\r\n").ToString()));
    }

    // Never half-written: put in place of the old one.
    private void WriteConfiguration()
    {
        string beside = _path + ".new";
        using (Stream text = _create(beside)) text.Write(Encoding.ASCII.GetBytes(_configuration.Text(Count)));
        File.Move(beside, _path, true);
    }

    private static string HeaderText(RecordHeader header)
    {
        StringBuilder text = new StringBuilder(header.ToJson()).Append("\n\n");
        foreach (Signal signal in SignalTable.All.Where(signal => signal.Words != null))
        {
            text.Append(signal.Name).Append(": ").AppendJoin(", ", signal.Words!.All.Select((word, id) => $"{id} {word}")).Append('\n');
        }

        return text.ToString();
    }
}
