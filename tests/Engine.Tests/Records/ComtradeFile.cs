using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>
/// A reader of COMTRADE that shares nothing with the writer. Rules: IEEE C37.111-2013, seen second-hand and in part from
/// memory, as far as ASCII and BINARY32 data files ask for them.
/// </summary>
internal sealed class ComtradeFile
{
    private ComtradeFile(string path)
    {
        string[] lines = File.ReadAllText(path).Split("\r\n");
        string[] station = lines[0].Split(',');
        RevisionYear = int.Parse(station[2], CultureInfo.InvariantCulture);
        string[] counts = lines[1].Split(',');
        int analogs = Counted(counts[1], 'A'), statuses = Counted(counts[2], 'D');
        if (analogs + statuses != int.Parse(counts[0], CultureInfo.InvariantCulture)) throw new InvalidDataException("the total is not the sum of both");
        Analog = [.. lines[2..(2 + analogs)].Select((line, i) => new Channel(line, i, 13))];
        Status = [.. lines[(2 + analogs)..(2 + analogs + statuses)].Select((line, i) => new Channel(line, i, 5))];
        string[] rest = lines[(2 + analogs + statuses)..];
        LineHertz = double.Parse(rest[0], CultureInfo.InvariantCulture);
        int rates = int.Parse(rest[1], CultureInfo.InvariantCulture);
        string[] rate = rest[2].Split(',');
        Hertz = rates == 0 ? 0 : double.Parse(rate[0], CultureInfo.InvariantCulture);
        SampleCount = long.Parse(rate[1], CultureInfo.InvariantCulture);
        First = Date(rest[3]);
        Trigger = Date(rest[4]);
        FileType = rest[5];
        MicrosecondsPerTick = double.Parse(rest[6], CultureInfo.InvariantCulture);
        string data = Path.ChangeExtension(path, ".dat");
        Rows = FileType == "ASCII" ? [.. Text(data)] : [.. Binary(data)];
    }

    public int RevisionYear { get; }

    public IReadOnlyList<Channel> Analog { get; }

    public IReadOnlyList<Channel> Status { get; }

    public double LineHertz { get; }

    public double Hertz { get; }

    public long SampleCount { get; }

    public DateTime First { get; }

    public DateTime Trigger { get; }

    public string FileType { get; }

    public double MicrosecondsPerTick { get; }

    public IReadOnlyList<Row> Rows { get; }

    public static ComtradeFile Read(string path) => new(path);

    private static int Counted(string field, char kind) =>
        field[^1] == kind ? int.Parse(field[..^1], CultureInfo.InvariantCulture) : throw new InvalidDataException($"a count of {kind} in \"{field}\"");

    private static DateTime Date(string line) => DateTime.ParseExact(line, "dd/MM/yyyy,HH:mm:ss.ffffff", CultureInfo.InvariantCulture);

    private IEnumerable<Row> Text(string path)
    {
        foreach (string line in File.ReadAllText(path).Split("\r\n").Take((int)SampleCount))
        {
            string[] fields = line.Split(',');
            yield return new Row(
                int.Parse(fields[0], CultureInfo.InvariantCulture),
                uint.Parse(fields[1], CultureInfo.InvariantCulture) * MicrosecondsPerTick,
                [.. Analog.Select((channel, i) => fields[2 + i].Length == 0 ? double.NaN : channel.Value(int.Parse(fields[2 + i], CultureInfo.InvariantCulture)))],
                [.. Status.Select((_, i) => fields[2 + Analog.Count + i] == "1")]);
        }
    }

    private IEnumerable<Row> Binary(string path)
    {
        using BinaryReader reader = new(File.OpenRead(path));
        for (long row = 0; row < SampleCount; row++)
        {
            int number = reader.ReadInt32();
            uint ticks = reader.ReadUInt32();
            int[] raw = [.. Analog.Select(_ => reader.ReadInt32())];
            ushort[] words = [.. Enumerable.Range(0, (Status.Count + 15) / 16).Select(_ => reader.ReadUInt16())];
            yield return new Row(
                number,
                ticks * MicrosecondsPerTick,
                [.. Analog.Select((channel, i) => raw[i] == int.MinValue ? double.NaN : channel.Value(raw[i]))],
                [.. Status.Select((_, i) => (words[i / 16] >> i % 16 & 1) != 0)]);
        }
    }

    public sealed record Row(int Number, double Microseconds, double[] Analog, bool[] Status);

    public sealed record Channel
    {
        public Channel(string line, int index, int fieldCount)
        {
            string[] fields = line.Split(',');
            if (fields.Length != fieldCount) throw new InvalidDataException($"{fields.Length} fields in \"{line}\"; allowed: {fieldCount}");
            if (int.Parse(fields[0], CultureInfo.InvariantCulture) != index + 1) throw new InvalidDataException($"channel {index + 1} says \"{fields[0]}\"");
            Name = fields[1];
            if (fieldCount < 13) return;
            Unit = fields[4];
            Factor = double.Parse(fields[5], CultureInfo.InvariantCulture);
            Offset = double.Parse(fields[6], CultureInfo.InvariantCulture);
            Lowest = int.Parse(fields[8], CultureInfo.InvariantCulture);
            Highest = int.Parse(fields[9], CultureInfo.InvariantCulture);
        }

        public string Name { get; }

        public string Unit { get; } = "";

        public double Factor { get; }

        public double Offset { get; }

        public int Lowest { get; }

        public int Highest { get; }

        public double Value(int raw) => Factor * raw + Offset;
    }
}
