using System;
using System.CommandLine;
using System.Globalization;
using System.IO;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Summary;

namespace StarterCtl.App.Verbs;

/// <summary>What a whole sweep writes and says, whether it was run at once or merged from shards.</summary>
/// <param name="terminal">Where results and notes go.</param>
/// <param name="asJson">True to print the summary as JSON.</param>
/// <param name="place">Where files go.</param>
/// <param name="casePath">The case as it was called, for the commands that run a row again.</param>
/// <param name="allowedShare">Share of starts that may pass a limit.</param>
internal sealed class SweepProducts(Terminal terminal, bool asJson, OutputPlace place, string casePath, double allowedShare)
{
    /// <summary>Share of starts that may pass a limit.</summary>
    public static Option<double> AllowedOption()
    {
        Option<double> option = new("--allow")
        {
            Description = "Share of starts that may pass a limit, 0 to 1. Without it: none.",
            HelpName = "SHARE",
        };
        option.CustomParser = result =>
        {
            string written = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
            if (double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double share) && share is >= 0 and <= 1) return share;
            result.AddError($"--allow: found \"{written}\"; allowed: a number from 0 to 1");
            return 0;
        };
        return option;
    }

    /// <summary>Writes rows and summary, and shows it.</summary>
    /// <param name="inputPath">What is read and may not be written to; null: several files, which were looked at.</param>
    /// <param name="writeRows">Writes the rows at the path that it is given.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    /// <exception cref="OutputException">Something cannot be written.</exception>
    public int Write(string? inputPath, Action<string> writeRows)
    {
        using OutputFiles files = new(inputPath);
        SweepSummary summary = Rows(files, writeRows);
        string options = SweepOptions.Written(summary.Header);
        SweepJson shape = SweepJson.Of(summary, row => $"starterctl run {casePath} --row {row.ToString(CultureInfo.InvariantCulture)}{options}");
        string json = JsonText.Of(shape);
        files.Add("the summary", place.PathOf("sweep.json"), writer => writer.WriteLine(json));
        files.Commit();

        if (asJson) terminal.Data.WriteLine(json);
        else Tables.SweepTable.Show(terminal.Results, shape);
        files.Report(terminal);
        return summary.Failed.Share <= allowedShare ? ExitCode.Ok : ExitCode.Failed;
    }

    private SweepSummary Rows(OutputFiles files, Action<string> writeRows)
    {
        string path = place.PathOf("sweep.parquet");
        string beside = files.Reserve("the rows", path);
        try
        {
            writeRows(beside);
            return SweepSummary.Of(SweepTable.Open(beside));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw OutputException.Of(path, error);
        }
    }
}
