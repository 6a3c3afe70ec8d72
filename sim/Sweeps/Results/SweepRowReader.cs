using System;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Results;

/// <summary>Whole rows of a file of results: the way back from what <see cref="SweepWriter"/> wrote, bit for bit.</summary>
internal sealed class SweepRowReader : IDisposable
{
    private readonly ParquetReader _reader;
    private readonly SweepHeader _header;

    private SweepRowReader(ParquetReader reader, SweepHeader header)
    {
        _reader = reader;
        _header = header;
    }

    /// <summary>Blocks in the file.</summary>
    public int BlockCount => _reader.RowGroupCount;

    /// <summary>Opens a file whose check was held.</summary>
    /// <param name="path">The file.</param>
    /// <param name="header">Its header.</param>
    public static SweepRowReader Open(string path, SweepHeader header) => new(Task.Run(() => ParquetReader.CreateAsync(path)).GetAwaiter().GetResult(), header);

    /// <summary>Reads a block.</summary>
    /// <param name="number">Which, from 0.</param>
    public SweepRow[] Block(int number) => Task.Run(() => Read(number)).GetAwaiter().GetResult();

    /// <summary>Reads a block's words of one column.</summary>
    /// <param name="number">Which block, from 0.</param>
    /// <param name="name">The column.</param>
    public string[] Words(int number, string name) => Task.Run(() =>
    {
        using ParquetRowGroupReader group = _reader.OpenRowGroupReader(number);
        return Words(group, name);
    }).GetAwaiter().GetResult();

    /// <summary>Closes the file.</summary>
    public void Dispose() => _reader.DisposeAsync().AsTask().GetAwaiter().GetResult();

    private SweepRow[] Read(int number)
    {
        using ParquetRowGroupReader group = _reader.OpenRowGroupReader(number);
        long[] rows = Values<long>(group, SweepColumns.Row);
        int[] seeds = Values<int>(group, SweepColumns.Seed), stages = Values<int>(group, SweepColumns.Stages);
        bool[] passed = Values<bool>(group, SweepColumns.Passed);
        string[] faults = Words(group, SweepColumns.Fault), phases = Words(group, SweepColumns.Phase);
        double[][] inputs = [.. _header.Inputs.Select(name => Values<double>(group, name))];
        double[][] sections = [.. Enumerable.Range(1, _header.Sections).Select(section => Values<double>(group, SweepColumns.Section(section)))];
        double[] peak = Values<double>(group, SweepColumns.Peak), torque = Values<double>(group, SweepColumns.Torque);
        double[] toFull = Values<double>(group, SweepColumns.FullSupply), toSpeed = Values<double>(group, SweepColumns.ToSpeed), final = Values<double>(group, SweepColumns.FinalSpeed);
        double[] hottest = Values<double>(group, SweepColumns.Hottest), armature = Values<double>(group, SweepColumns.Armature);
        double[] brake = Values<double>(group, SweepColumns.Brake), supply = Values<double>(group, SweepColumns.Supply);
        return [.. Enumerable.Range(0, rows.Length).Select(i => new SweepRow
        {
            Row = rows[i],
            Seed = seeds[i],
            Inputs = Array.ConvertAll(inputs, column => column[i]),
            IsPassed = passed[i],
            PeakAmps = peak[i],
            PeakTorqueNewtonMetres = torque[i],
            SecondsToFullSupply = toFull[i],
            SecondsToSpeed = toSpeed[i],
            FinalRpm = final[i],
            StagesCutOut = stages[i],
            FirstFault = faults[i],
            Phase = phases[i],
            HottestSectionCelsius = hottest[i],
            ArmatureJoules = armature[i],
            BrakeJoules = brake[i],
            SupplyJoules = supply[i],
            SectionJoules = Array.ConvertAll(sections, column => column[i]),
        })];
    }

    private T[] Values<T>(ParquetRowGroupReader group, string name)
        where T : struct
    {
        T[] values = new T[group.RowCount];
        group.ReadAsync<T>(FieldOf(name), values).AsTask().GetAwaiter().GetResult();
        return values;
    }

    private string[] Words(ParquetRowGroupReader group, string name)
    {
        string[] words = new string[group.RowCount];
        group.ReadAsync(FieldOf(name), words).AsTask().GetAwaiter().GetResult();
        return words;
    }

    private DataField FieldOf(string name) => _reader.Schema.DataFields.First(field => field.Name == name);
}
