using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;

namespace StarterCtl.Engine.Records;

/// <summary>Samples as columns of a Parquet row group, and back.</summary>
internal static class ParquetColumns
{
    /// <summary>Key of the file's metadata with the record's header.</summary>
    public const string HeaderKey = "starterctl.header";

    private static readonly DataField[] Fields = [.. SignalTable.All.Select(FieldOf)];
    private static readonly ParquetSchema Schema = new(Fields);

    /// <summary>Writes a complete file of one row group.</summary>
    public static async Task WriteAsync(Stream stream, RecordHeader header, IReadOnlyList<Sample> samples)
    {
        await using ParquetWriter writer = await ParquetWriter.CreateAsync(Schema, stream, new ParquetOptions { CompressionMethod = CompressionMethod.Snappy }).ConfigureAwait(false);
        writer.CustomMetadata = new Dictionary<string, string> { [HeaderKey] = header.ToJson() };
        using ParquetRowGroupWriter group = writer.CreateRowGroup();
        for (int column = 0; column < Fields.Length; column++) await WriteColumnAsync(group, column, samples).ConfigureAwait(false);
    }

    /// <summary>Reads a row group into samples.</summary>
    /// <param name="fields">The file's columns; those that are no signal are passed over.</param>
    /// <param name="group">The row group.</param>
    /// <param name="samples">Room for as many as it has.</param>
    public static async Task ReadAsync(IReadOnlyList<DataField> fields, ParquetRowGroupReader group, Memory<Sample> samples)
    {
        foreach (DataField field in fields)
        {
            if (SignalTable.All.FirstOrDefault(signal => signal.Name == field.Name) is Signal signal) await ReadColumnAsync(group, field, signal, samples).ConfigureAwait(false);
        }
    }

    private static DataField FieldOf(Signal signal) => signal.Kind switch
    {
        SignalKind.LongReal => new DataField<double>(signal.Name),
        SignalKind.Real => new DataField<float>(signal.Name),
        SignalKind.Switch => new DataField<bool>(signal.Name),
        SignalKind.Id => new DataField(signal.Name, typeof(string), false),
        _ => new DataField<int>(signal.Name),
    };

    private static Task WriteColumnAsync(ParquetRowGroupWriter group, int column, IReadOnlyList<Sample> samples)
    {
        Signal signal = SignalTable.All[column];
        double[] numbers = [.. samples.Select(sample => signal.Number(sample))];
        return signal.Kind switch
        {
            SignalKind.LongReal => group.WriteAsync<double>(Fields[column], numbers),
            SignalKind.Real => group.WriteAsync<float>(Fields[column], Array.ConvertAll(numbers, number => (float)number)),
            SignalKind.Switch => group.WriteAsync<bool>(Fields[column], Array.ConvertAll(numbers, number => number != 0)),
            SignalKind.Id => group.WriteAsync(Fields[column], Array.ConvertAll(numbers, number => signal.Words!.Word((int)number))),
            _ => group.WriteAsync<int>(Fields[column], Array.ConvertAll(numbers, number => (int)number)),
        };
    }

    private static async Task ReadColumnAsync(ParquetRowGroupReader group, DataField field, Signal signal, Memory<Sample> samples)
    {
        switch (signal.Kind)
        {
            case SignalKind.LongReal:
                await ReadAsync<double>(number => number).ConfigureAwait(false);
                break;
            case SignalKind.Real:
                await ReadAsync<float>(number => number).ConfigureAwait(false);
                break;
            case SignalKind.Switch:
                await ReadAsync<bool>(isOn => isOn ? 1 : 0).ConfigureAwait(false);
                break;
            case SignalKind.Id:
                string[] words = new string[samples.Length];
                await group.ReadAsync(field, words).ConfigureAwait(false);
                for (int i = 0; i < words.Length; i++) signal.Put(ref samples.Span[i], IdOf(signal, words[i]));
                break;
            default:
                await ReadAsync<int>(number => number).ConfigureAwait(false);
                break;
        }

        async Task ReadAsync<T>(Func<T, double> numberOf)
            where T : struct
        {
            T[] values = new T[samples.Length];
            await group.ReadAsync<T>(field, values).ConfigureAwait(false);
            for (int i = 0; i < values.Length; i++) signal.Put(ref samples.Span[i], numberOf(values[i]));
        }
    }

    private static int IdOf(Signal signal, string word) =>
        signal.Words!.TryRead(word, out int id) ? id : throw new InvalidDataException($"\"{word}\" is no {signal.Name}");
}
