using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Results;

/// <summary>Results read back, column by column, as far as they are asked for.</summary>
public sealed class SweepTable
{
    private const string Allowed = "the whole results of a sweep";

    private readonly string _path;

    private SweepTable(string path, SweepHeader header, ShardSpan? span, long rows)
    {
        _path = path;
        Header = header;
        Span = span;
        RowCount = rows;
    }

    /// <summary>What the file holds.</summary>
    public SweepHeader Header { get; }

    /// <summary>Which rows of the sweep, in the file of a shard; null: all.</summary>
    public ShardSpan? Span { get; }

    /// <summary>Rows in the file.</summary>
    public long RowCount { get; }

    /// <summary>Opens results.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="SweepException">It is no whole file of results, or not as it was written.</exception>
    public static SweepTable Open(string path)
    {
        // Before anything is parsed: a changed byte of the footer can keep a reader busy for ever, one of a page is another number.
        CheckWhole(path);
        return Read(path, reader => new SweepTable(
            path,
            SweepHeader.Read(path, reader.CustomMetadata.GetValueOrDefault(SweepHeader.Key)),
            reader.CustomMetadata.GetValueOrDefault(ShardSpan.Key) is string span ? ShardSpan.Read(path, span) : null,
            RowsOf(reader).Sum()));
    }

    /// <summary>A column of numbers.</summary>
    /// <param name="name">Its name; see <see cref="SweepColumns"/>.</param>
    /// <exception cref="SweepException">The file has no such column, or is damaged.</exception>
    public double[] Numbers(string name) => Column<double>(name);

    /// <summary>A column of numbers, put where there is room.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="into">Receives them; at least as long as there are rows.</param>
    /// <exception cref="SweepException">The file has no such column, or is damaged.</exception>
    public void Numbers(string name, Memory<double> into) => Read(name, into);

    /// <summary>The numbers of the rows.</summary>
    public long[] Rows() => Column<long>(SweepColumns.Row);

    /// <summary>Whether each row passed.</summary>
    public bool[] Passed() => Column<bool>(SweepColumns.Passed);

    /// <summary>A column of words, a block of them at a time in memory.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="SweepException">The file cannot be read any more, or has no such column.</exception>
    public IEnumerable<string> Words(string name)
    {
        using SweepRowReader rows = Try(_path, () => SweepRowReader.Open(_path, Header));
        for (int i = 0; i < rows.BlockCount; i++)
        {
            int block = i;
            foreach (string word in Try(_path, () => rows.Words(block, name))) yield return word;
        }
    }

    /// <summary>Whole rows, block by block as they were written, one at a time in memory.</summary>
    /// <exception cref="SweepException">The file cannot be read any more.</exception>
    public IEnumerable<SweepRow[]> Blocks()
    {
        using SweepRowReader rows = Try(_path, () => SweepRowReader.Open(_path, Header));
        for (int i = 0; i < rows.BlockCount; i++)
        {
            int block = i;
            yield return Try(_path, () => rows.Block(block));
        }
    }

    private T[] Column<T>(string name)
        where T : struct
    {
        T[] all = new T[RowCount];
        Read<T>(name, all);
        return all;
    }

    private void Read<T>(string name, Memory<T> into)
        where T : struct => Read(_path, reader =>
    {
        DataField field = FieldOf(reader, name);
        int at = 0;
        for (int i = 0; i < reader.RowGroupCount; i++)
        {
            using ParquetRowGroupReader group = reader.OpenRowGroupReader(i);
            group.ReadAsync(field, into.Slice(at, (int)group.RowCount)).AsTask().GetAwaiter().GetResult();
            at += (int)group.RowCount;
        }

        return at;
    });

    private DataField FieldOf(ParquetReader reader, string name) =>
        reader.Schema.DataFields.FirstOrDefault(field => field.Name == name) ?? throw new SweepException(_path, $"no column \"{name}\"", "the results of a sweep");

    private static IEnumerable<long> RowsOf(ParquetReader reader)
    {
        for (int i = 0; i < reader.RowGroupCount; i++)
        {
            using ParquetRowGroupReader group = reader.OpenRowGroupReader(i);
            yield return group.RowCount;
        }
    }

    private static void CheckWhole(string path)
    {
        try
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            string? found = stream.Length == 0 ? "an empty file"
                : !FileCheck.IsParquet(stream) ? "a file that is no whole Parquet file"
                : FileCheck.IsWhole(stream) switch
                {
                    null => $"a Parquet file without {FileCheck.Key} in its metadata",
                    false => "a file that is not as it was written: its check differs",
                    true => null,
                };
            if (found != null) throw new SweepException(path, found, Allowed);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(path, error);
        }
    }

    private static SweepException Unreadable(string path, Exception error) => new(path, $"a file that cannot be read ({error.Message})", Allowed);

    private static T Read<T>(string path, Func<ParquetReader, T> read) => Try(path, () => Task.Run(async () =>
    {
        await using ParquetReader reader = await ParquetReader.CreateAsync(path).ConfigureAwait(false);
        return read(reader);
    }).GetAwaiter().GetResult());

    private static T Try<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception error) when (error is not (SweepException or OutOfMemoryException))
        {
            throw Unreadable(path, error);
        }
    }
}
