using System;
using System.Collections.Generic;
using System.Linq;
using System.Security.Cryptography;
using System.Threading;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Judging;

namespace StarterCtl.Trials.Bundles;

/// <summary>Proves a bundle without the machine: its hashes, its record through the core again, its limits against the record.</summary>
public sealed class BundleCheck
{
    private readonly List<LimitCheck> _checks = [];

    private BundleCheck()
    {
    }

    /// <summary>Checks a bundle.</summary>
    /// <param name="path">The ZIP file.</param>
    /// <param name="progress">Told now and then which part is done, 0 to 1; null: nobody.</param>
    /// <param name="cancellation">Ends the check with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>Its manifest, and every check with what was seen.</returns>
    /// <exception cref="RecordException">It is no bundle, or its record is none.</exception>
    public static (BundleManifest Manifest, Verdict Verdict) Of(string path, IProgress<double>? progress, CancellationToken cancellation)
    {
        using BundleArchive bundle = BundleArchive.Open(path);
        return new BundleCheck().Check(bundle, progress, cancellation);
    }

    private (BundleManifest Manifest, Verdict Verdict) Check(BundleArchive bundle, IProgress<double>? progress, CancellationToken cancellation)
    {
        BundleManifest manifest = bundle.Manifest();
        byte[] trialBytes = bundle.Bytes(BundleFile.TrialName), caseBytes = bundle.Bytes(BundleFile.CaseName);
        Same("trial file", Sha256(trialBytes), manifest.Planned.FileSha256);
        Same("case file", Sha256(caseBytes), manifest.Planned.CaseSha256);
        Trial? trial = Reread(manifest, trialBytes, caseBytes);
        using RecordReader reader = bundle.Record();
        Same("settings of the record", SettingsText.Checksum(Replay.SettingsOf(reader.Header)), manifest.Planned.SettingsChecksum);
        if (trial != null) Rerun(manifest, trial, reader, progress, cancellation);
        return (manifest, new Verdict(_checks));
    }

    // The trial as the program reads it today; that it can be read and names the same settings is a check of its own.
    private Trial? Reread(BundleManifest manifest, byte[] trialBytes, byte[] caseBytes)
    {
        try
        {
            IReadOnlyList<Trial> read = TrialFile.Read(manifest.Planned.File, trialBytes, _ => caseBytes, manifest.Row);
            Trial? trial = read.Count == 1 ? read[0] : null;
            Same("settings of the trial", trial == null ? "no such row" : SettingsText.Checksum(trial.Job.Run.Settings), manifest.Planned.SettingsChecksum);
            return trial;
        }
        catch (CaseException error)
        {
            _checks.Add(new LimitCheck("settings of the trial", false, error.Problems[0].ToString(), manifest.Planned.SettingsChecksum));
            return null;
        }
    }

    private void Rerun(BundleManifest manifest, Trial trial, RecordReader reader, IProgress<double>? progress, CancellationToken cancellation)
    {
        TrialJudges judges = new(trial.Expectations, reader.Header.RecordPeriodMicroseconds);
        if (reader.Header.ByTheClock != manifest.ByTheClock) Same("clock of the record", ClockText(reader.Header.ByTheClock), ClockText(manifest.ByTheClock));
        if (reader.Header.ByTheClock) ReadOnly(reader, judges, progress, cancellation);
        else Play(reader, judges, progress, cancellation);
        _checks.Add(new LimitCheck("record", reader.Break == null, reader.Break?.ToString() ?? "whole", "whole"));
        Same("core version", Engine.CoreIdentity.Version, manifest.CoreVersion);
        Outcome[] outcomes = judges.End();
        foreach (Outcome said in manifest.Expectations)
        {
            Outcome? seen = Array.Find(outcomes, outcome => outcome.Name == said.Name);
            _checks.Add(new LimitCheck($"expectation {said.Name}", seen == said, Shown(seen), Shown(said)));
        }

        // Trouble and cancellations are not in the record; whether everything held is.
        bool isJudged = manifest.Verdict is "pass" or "fail";
        bool holds = Array.TrueForAll(outcomes, outcome => outcome.Passed) && manifest.Link.All(outcome => outcome.Passed);
        Same("verdict", isJudged ? holds ? "pass" : "fail" : manifest.Verdict, manifest.Verdict);
    }

    private static string ClockText(bool isByTheClock) => isByTheClock ? "by the clock" : "in lockstep";

    private void Play(RecordReader reader, TrialJudges judges, IProgress<double>? progress, CancellationToken cancellation)
    {
        ReplayResult replayed = Replay.Of(reader.Header, Judged(reader, judges, progress), null, cancellation);
        string difference = replayed.First is ReplayDifference first ? $"{replayed.DifferentTicks} of {replayed.Ticks} ticks differ, {first.Signal.Name} at {Engine.Text.Number(first.Seconds)} s first" : $"{replayed.Ticks} ticks, every output the same";
        _checks.Add(new LimitCheck("replay", replayed.IsSame, difference, "every output as recorded"));
    }

    // By the clock the board's ticks are its own, and the rows are those of the machine: there is nothing that could be replayed.
    private static void ReadOnly(RecordReader reader, TrialJudges judges, IProgress<double>? progress, CancellationToken cancellation)
    {
        long rows = 0;
        foreach (Sample _ in Judged(reader, judges, progress))
        {
            if (rows++ % RecordReader.RowsBetweenLooks == 0) cancellation.ThrowIfCancellationRequested();
        }
    }

    private static IEnumerable<Sample> Judged(RecordReader reader, TrialJudges judges, IProgress<double>? progress)
    {
        foreach (Sample sample in reader.Samples(progress))
        {
            judges.Add(sample);
            yield return sample;
        }
    }

    private void Same(string name, string seen, string said) => _checks.Add(new LimitCheck(name, seen == said, seen, said));

    private static string Shown(Outcome? outcome) => outcome == null ? "not in the trial" : $"{(outcome.Passed ? "pass" : "fail")}, {outcome.Seen}; {outcome.Limit}";

    private static string Sha256(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
