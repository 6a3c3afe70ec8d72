using System.IO;
using System.Text.Encodings.Web;
using System.Text.Json;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Products;

/// <summary>
/// Verdicts as JSON lines: the header first, then each trial as it ends, then how many ended how. Each line is flushed, so that
/// a run that is killed leaves what was done.
/// </summary>
public sealed class VerdictLines(TextWriter writer)
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        // The text goes to a file or a pipe, never into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the header.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Begin(RunHeader header) => Write("header", header);

    /// <summary>Writes a trial.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Add(TrialResult result) => Write("trial", TrialJson.Of(result));

    /// <summary>Writes how many ended how.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void End(VerdictCounts counts) => Write("counts", counts);

    private void Write<T>(string kind, T content)
    {
        writer.Write($"{{\"kind\":\"{kind}\",\"{kind}\":{JsonSerializer.Serialize(content, Options)}}}\n");
        writer.Flush();
    }
}
