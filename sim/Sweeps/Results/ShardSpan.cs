using System.Text.Json;

namespace StarterCtl.Sweeps.Results;

/// <summary>What stands in the metadata of a shard's file beside the sweep's header: which rows of the sweep the file holds.</summary>
/// <param name="Shard">Which part, from 1.</param>
/// <param name="Of">Number of parts.</param>
/// <param name="FirstRow">Its first row.</param>
/// <param name="RowCount">How many.</param>
/// <param name="CalledCase">The case as it was called: the summary names rows by a command that has it.</param>
public sealed record ShardSpan(int Shard, int Of, long FirstRow, long RowCount, string CalledCase)
{
    /// <summary>Key of the span in a file's metadata.</summary>
    public const string Key = "starterctl.sweep.shard";

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    /// <summary>Row behind the last.</summary>
    internal long End => FirstRow + RowCount;

    /// <summary>The span as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);

    /// <summary>Reads a span back.</summary>
    /// <param name="path">The file, for the message.</param>
    /// <param name="json">What <see cref="ToJson"/> gave.</param>
    /// <exception cref="SweepException">It is none.</exception>
    public static ShardSpan Read(string path, string json)
    {
        try
        {
            return JsonSerializer.Deserialize<ShardSpan>(json, Options) ?? throw new JsonException("null");
        }
        catch (JsonException error)
        {
            throw new SweepException(path, $"a shard's span that cannot be read ({error.Message})", "the results of a sweep");
        }
    }
}
