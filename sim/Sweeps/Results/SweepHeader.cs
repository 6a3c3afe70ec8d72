using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Serialization;
using StarterCtl.Engine;
using StarterCtl.Engine.Runs;
using StarterCtl.Sweeps.Running;
using StarterCtl.Sweeps.Sampling;

namespace StarterCtl.Sweeps.Results;

/// <summary>What stands in the metadata of a sweep's results: of what case and by which rule. Two files of one sweep have the same.</summary>
/// <param name="FormatVersion">Version of the header and the columns; columns that are added do not change it.</param>
/// <param name="CoreVersion">Version of the core that decided.</param>
/// <param name="Case">Name of the case file, without folders.</param>
/// <param name="CaseSha256">SHA-256 of its bytes, hexadecimal.</param>
/// <param name="SettingsChecksum">Checksum of the controller's settings.</param>
/// <param name="Method">How the points are chosen.</param>
/// <param name="Levels">Levels of each variable of a full factorial; 0 with other methods.</param>
/// <param name="Seed">From which points, noise and jitter follow.</param>
/// <param name="Count">Rows of the whole sweep.</param>
/// <param name="Inputs">Columns of what differs, in the order of the case.</param>
/// <param name="Sections">Number of starter sections.</param>
public sealed record SweepHeader(
    int FormatVersion,
    string CoreVersion,
    string Case,
    string CaseSha256,
    string SettingsChecksum,
    SamplingMethod Method,
    int Levels,
    int Seed,
    long Count,
    IReadOnlyList<string> Inputs,
    int Sections)
{
    /// <summary>Format that this program writes and reads.</summary>
    public const int PresentVersion = 1;

    /// <summary>Key of the header in a file's metadata.</summary>
    public const string Key = "starterctl.sweep";

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    /// <summary>The header of a plan.</summary>
    public static SweepHeader Of(SweepPlan plan) => new(
        PresentVersion,
        CoreIdentity.Version,
        Path.GetFileName(plan.File.FileName),
        plan.File.Sha256,
        SettingsText.Checksum(plan.Prepared.Settings),
        plan.Order.Method,
        plan.Order.Method == SamplingMethod.Factorial ? plan.Order.Levels : 0,
        plan.Order.Seed,
        plan.Count,
        [.. plan.Prepared.Variables.Select(variable => variable.Unit.Length == 0 ? variable.Path : $"{variable.Path} [{variable.Unit}]")],
        plan.Prepared.Setup.SectionOhms.Count);

    /// <summary>The header as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);

    /// <summary>In what this header differs from another, in words; null: in nothing, both are of one sweep.</summary>
    public string? DifferenceFrom(SweepHeader other)
    {
        (string What, string Here, string There)[] all =
        [
            ("case", Case, other.Case), ("SHA-256 of the case", CaseSha256, other.CaseSha256), ("core", CoreVersion, other.CoreVersion),
            ("settings", SettingsChecksum, other.SettingsChecksum), ("method", Name(Method), Name(other.Method)), ("levels", Number(Levels), Number(other.Levels)),
            ("seed", Number(Seed), Number(other.Seed)), ("starts", Number(Count), Number(other.Count)), ("header", ToJson(), other.ToJson()),
        ];
        int first = Array.FindIndex(all, one => one.Here != one.There);
        return first < 0 ? null : $"{all[first].What} {all[first].Here} instead of {all[first].There}";
    }

    /// <summary>Reads a header back.</summary>
    /// <param name="path">The file, for the message.</param>
    /// <param name="json">What <see cref="ToJson"/> gave; null: the file has none.</param>
    /// <exception cref="SweepException">It is no header, or one of another format.</exception>
    public static SweepHeader Read(string path, string? json)
    {
        try
        {
            SweepHeader? header = json == null ? null : JsonSerializer.Deserialize<SweepHeader>(json, Options);
            if (header == null) throw new SweepException(path, $"a Parquet file without {Key} in its metadata", "the results of a sweep");
            return header.FormatVersion == PresentVersion ? header : throw new SweepException(path, $"results of format {header.FormatVersion}", $"format {PresentVersion}, which this program reads");
        }
        catch (JsonException error)
        {
            throw new SweepException(path, $"a header that cannot be read ({error.Message})", "the results of a sweep");
        }
    }

    private static string Name(SamplingMethod method) => method.ToString().ToLowerInvariant();

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);
}
