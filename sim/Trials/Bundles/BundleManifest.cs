using System.Collections.Generic;
using System.Linq;
using System.Text.Encodings.Web;
using System.Text.Json;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Bundles;

/// <summary>What a bundle says of itself: what was run, against what, and what became of it. Extend, never rename.</summary>
public sealed record BundleManifest
{
    /// <summary>Format that this program writes and reads.</summary>
    public const int PresentVersion = 1;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectRequiredConstructorParameters = true,
    };

    /// <summary>Version of the bundle's format.</summary>
    public int FormatVersion { get; init; } = PresentVersion;

    /// <summary>Trial, files, hashes, settings' checksum, seed.</summary>
    public required RunHeader.Planned Planned { get; init; }

    /// <summary>The row of parameters; empty where there are none.</summary>
    public required string Row { get; init; }

    /// <summary>Name of the target.</summary>
    public required string Target { get; init; }

    /// <summary>Version of the core that decided.</summary>
    public required string CoreVersion { get; init; }

    /// <summary>The board as it calls itself; null where there was none, or it did not get to that.</summary>
    public string? Board { get; init; }

    /// <summary>Which attempt it was, from 1.</summary>
    public required int Attempt { get; init; }

    /// <summary>Its verdict: "pass".</summary>
    public required string Verdict { get; init; }

    /// <summary>What was wrong with the target; null where nothing was.</summary>
    public required string? Trouble { get; init; }

    /// <summary>What became of each expectation, with its limit.</summary>
    public required IReadOnlyList<Outcome> Expectations { get; init; }

    /// <summary>What became of the limits of the link, which no record shows; empty where there were none.</summary>
    public IReadOnlyList<Outcome> Link { get; init; } = [];

    /// <summary>True where machine and board kept to clocks of their own, so that there is no replay.</summary>
    public bool ByTheClock { get; init; }

    /// <summary>The manifest of an attempt.</summary>
    public static BundleManifest Of(RunHeader header, Trial trial, int number, TrialAttempt attempt) => new()
    {
        Planned = RunHeader.Plan(trial),
        Row = trial.Row,
        Target = header.Target,
        ByTheClock = header.ByTheClock,
        Board = attempt.Report?.Board,
        CoreVersion = attempt.Report?.CoreVersion ?? header.CoreVersion,
        Attempt = number,
        Verdict = VerdictText.Word(attempt.Verdict),
        Trouble = attempt.Trouble,
        Expectations = [.. attempt.Outcomes.Take(trial.Expectations.Count)],
        Link = [.. attempt.Outcomes.Skip(trial.Expectations.Count)],
    };

    /// <summary>The manifest as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options) + "\n";

    /// <summary>Reads a manifest back.</summary>
    /// <param name="place">Where it stands, for the message.</param>
    /// <param name="json">What <see cref="ToJson"/> gave.</param>
    /// <exception cref="RecordException">It is no manifest, or one of another format.</exception>
    public static BundleManifest Read(string place, string json)
    {
        const string allowed = "the manifest that was written with the bundle";
        try
        {
            BundleManifest manifest = JsonSerializer.Deserialize<BundleManifest>(json, Options) ?? throw new RecordException(place, "nothing", allowed);
            return manifest.FormatVersion == PresentVersion ? manifest : throw new RecordException($"{place}: formatVersion", $"{manifest.FormatVersion}", $"{PresentVersion}, what this program reads");
        }
        catch (JsonException error)
        {
            throw new RecordException(place, $"no manifest ({error.Message})", allowed);
        }
    }
}
