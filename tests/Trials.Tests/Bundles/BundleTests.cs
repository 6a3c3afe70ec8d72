using System;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Text;
using System.Threading;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.House;
using StarterCtl.Trials.Bundles;
using StarterCtl.Trials.Files;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;
using Xunit;

namespace StarterCtl.Trials.Tests.Bundles;

/// <summary>Bundles that are written, proved, and proved wrong once something in them is changed.</summary>
public sealed class BundleTests : IDisposable
{
    private static readonly Trial[] Trials = Texts.Read(Texts.Head + "[[expect]]\nname = \"peak\"\nsignal = \"armatureAmps\"\nat-most = \"{peak}\"\n"
        + "[[expect]]\nname = \"running\"\nsignal = \"phase\"\nreaches = \"Running\"\n"
        + "[[parameters]]\nname = \"fine\"\npeak = \"33 A\"\n[[parameters]]\nname = \"too low\"\npeak = \"20 A\"\n");

    private readonly string _folder = Directory.CreateTempSubdirectory("starterctl-test").FullName;

    [Theory]
    [InlineData(0, "pass", "rig.fine.bundle.zip")]
    [InlineData(1, "fail", "rig.too-low.bundle.zip")]
    public void Bundle_OfARun_ProvesItself(int index, string said, string name)
    {
        string path = Write(Trials[index]);

        (BundleManifest manifest, Verdict verdict) = BundleCheck.Of(path, null, CancellationToken.None);

        Assert.Equal((name, said), (Path.GetFileName(path), manifest.Verdict));
        Assert.True(verdict.Passed, string.Join('\n', verdict.Checks));
        Assert.Equal(
            ["trial file", "case file", "settings of the trial", "settings of the record", "replay", "record", "core version", "expectation peak", "expectation running", "verdict"],
            verdict.Checks.Select(check => check.Name));
        Assert.Contains(verdict.Checks, check => check.Seen == "6002 ticks, every output the same");
        Assert.Equal([name], Directory.GetFiles(_folder).Select(Path.GetFileName));
    }

    // A converter reads minus zero, which no link carries; that changes no decision.
    [Fact]
    public void Bundle_OfABoardOnTheDesk_ProvesItself()
    {
        Trial trial = TrialFile.Read(Path.Combine(Repository.Root, "sim", "trials", "sound-start.trial.toml")).Single(trial => trial.Row == "magnet");
        string path = Write(trial, new DeskTarget(ExchangePace.Lockstep, new TargetTiming { Connect = TimeSpan.FromSeconds(60), Step = TimeSpan.FromSeconds(20) }));

        (BundleManifest manifest, Verdict verdict) = BundleCheck.Of(path, null, CancellationToken.None);

        Assert.Equal(("board on the desk", "board on the desk, version 0.1.0", "pass"), (manifest.Target, manifest.Board, manifest.Verdict));
        Assert.True(verdict.Passed, string.Join('\n', verdict.Checks));
        Assert.Contains(verdict.Checks, check => check.Seen == "5002 ticks, every output the same");
        using RecordReader reader = BundleArchive.OpenRecord(path);
        Assert.Contains(reader.Samples(), sample => sample.ArmatureAmps == 0 && float.IsNegative(sample.ArmatureAmps));
    }

    // The board ticks by its own clock on readings that it was given last, so nothing of it could be replayed; all else is proved.
    [Fact]
    public void Bundle_OfATrialByTheClock_IsVerifiedWithoutAReplay()
    {
        Trial trial = Texts.ReadOne(Texts.Head + "[set]\nrun.duration = \"0.3 s\"\n[[expect]]\nname = \"fault\"\nfault = \"none\"\n");
        string path = Write(trial, new DeskTarget(ExchangePace.RealTime, new TargetTiming { Connect = TimeSpan.FromSeconds(60), Step = TimeSpan.FromSeconds(20) }));

        Verdict verdict = BundleCheck.Of(path, null, CancellationToken.None).Verdict;

        Assert.True(verdict.Passed, string.Join('\n', verdict.Checks));
        Assert.Equal(
            ["trial file", "case file", "settings of the trial", "settings of the record", "record", "core version", "expectation fault", "verdict"],
            verdict.Checks.Select(check => check.Name));
        using (RecordReader reader = BundleArchive.OpenRecord(path)) Assert.Contains("by the clock", Assert.Throws<RecordException>(() => Replay.Of(reader.Header, reader.Samples(), null, CancellationToken.None)).Message, StringComparison.Ordinal);

        // A record of lockstep does not escape its replay by calling itself one.
        Change(path, "manifest.json", "\"byTheClock\": true", "\"byTheClock\": false");
        Assert.Contains(BundleCheck.Of(path, null, CancellationToken.None).Verdict.Checks, check => check is { Name: "clock of the record", Passed: false });
    }

    [Theory]
    [InlineData("out/overload.crane-running.bundle.zip", "overload.crane-running")]
    [InlineData("peak.zip", "peak")]
    [InlineData("out/bench-rig.record.csv", "bench-rig")]
    [InlineData("bench-rig.record.parts/", "bench-rig")]
    [InlineData("board.csv", "board")]
    public void Stem_OfARecord_IsItsNameAlone(string path, string stem) => Assert.Equal(stem, BundleArchive.StemOf(path));

    // Damage in the packed text: other letters come out, or nothing can be unpacked any further.
    [Theory]
    [InlineData(0xA5)]
    [InlineData(0xFF)]
    public void Bundle_WhoseRecordIsDamaged_IsReadToTheLastGoodRow(byte damage)
    {
        string path = Write(Trials[0]);
        byte[] bytes = File.ReadAllBytes(path);
        bytes.AsSpan(bytes.Length / 2, 200).Fill(damage);
        File.WriteAllBytes(path, bytes);

        using RecordReader reader = BundleArchive.OpenRecord(path);
        int rows = reader.Samples().Count();

        Assert.InRange(rows, 1000, 6001);
        Assert.Equal(rows, reader.Break!.RowsRead);
        Verdict verdict = BundleCheck.Of(path, null, CancellationToken.None).Verdict;
        Assert.Contains("record", verdict.Checks.Where(check => !check.Passed).Select(check => check.Name));
    }

    [Fact]
    public void Check_OfALongRecord_TellsHowFarItIs()
    {
        string path = Write(Trials[0]);
        Running.Watched watched = new();

        BundleCheck.Of(path, watched, CancellationToken.None);

        Assert.Equal(watched.Progress.Order(), watched.Progress);
        Assert.InRange(watched.Progress[^1], 0.5, 1);
    }

    [Fact]
    public void Bundle_OfTheSameRun_HasTheSameBytes()
    {
        byte[] first = File.ReadAllBytes(Write(Trials[0]));

        Assert.Equal(first, File.ReadAllBytes(Write(Trials[0])));
    }

    [Theory]
    [InlineData("trial.toml", "33 A", "34 A", "trial file")]
    [InlineData("trial.toml", "33 A", "30 A", "expectation peak")]
    [InlineData("case.toml", "0.45 N m", "0.46 N m", "case file")]
    [InlineData("case.toml", "slack = \"raise switching current\"", "slack = \"lower peak current\"\nswitching-current = \"14 A\"", "settings of the trial")]
    [InlineData("manifest.json", "\"passed\": true", "\"passed\": false", "expectation peak")]
    [InlineData("manifest.json", "\"verdict\": \"pass\"", "\"verdict\": \"fail\"", "verdict")]
    [InlineData("manifest.json", "\"coreVersion\": \"", "\"coreVersion\": \"9.", "core version")]
    [InlineData("record.csv", ",Running,3,", ",Running,2,", "replay")]
    [InlineData("record.csv", "\n5.9", "\n\"5.9", "record")]
    public void Bundle_InWhichSomethingWasChanged_IsNotVerified(string entry, string found, string replacement, string failing)
    {
        string path = Write(Trials[0]);
        Change(path, entry, found, replacement);

        Verdict verdict = BundleCheck.Of(path, null, CancellationToken.None).Verdict;

        Assert.Contains(failing, verdict.Checks.Where(check => !check.Passed).Select(check => check.Name));
    }

    [Fact]
    public void Bundle_OfTroubleInTheMiddle_KeepsTheRecordSoFar()
    {
        Unplugged target = new();

        string path = Write(Trials[0], target);
        (BundleManifest manifest, Verdict verdict) = BundleCheck.Of(path, null, CancellationToken.None);

        Assert.Equal(("error", "the port is gone"), (manifest.Verdict, manifest.Trouble));
        Assert.True(verdict.Passed, string.Join('\n', verdict.Checks));
        Assert.Contains(verdict.Checks, check => check.Seen == "1000 ticks, every output the same");
    }

    [Fact]
    public void File_ThatIsNoBundle_IsRefused()
    {
        string path = Path.Combine(_folder, "x.zip");
        File.WriteAllText(path, "no zip");

        Assert.Contains("no bundle", Assert.Throws<RecordException>(() => BundleCheck.Of(path, null, CancellationToken.None)).Message, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, true);

    private string Write(Trial trial, ITrialTarget? target = null)
    {
        using BundleWatch bundles = new(_folder, RunHeader.Of(target ?? new SimulatorTarget(), Trials));
        TrialRunner.Run([trial], target ?? new SimulatorTarget(), new TrialOptions(), new Adapter(bundles), new Running.Watched(), CancellationToken.None);
        return Path.Combine(_folder, BundleFile.NameOf(trial, 1));
    }

    private static void Change(string path, string name, string found, string replacement)
    {
        using ZipArchive archive = ZipFile.Open(path, ZipArchiveMode.Update);
        ZipArchiveEntry entry = archive.GetEntry(name)!;
        string text;
        using (StreamReader reader = new(entry.Open())) text = reader.ReadToEnd();
        int place = text.IndexOf(found, StringComparison.Ordinal);
        Assert.True(place >= 0, $"{name} has no {found}");
        entry.Delete();
        using Stream stream = archive.CreateEntry(name).Open();
        stream.Write(Encoding.UTF8.GetBytes(text[..place] + replacement + text[(place + found.Length)..]));
    }

    private sealed class Adapter(BundleWatch bundles) : ITrialWatch
    {
        public ISampleSink Started(Trial trial, int attempt) => bundles.Started(trial, attempt);

        public void Ended(Trial trial, int attempt, TrialAttempt ended) => bundles.Ended(trial, attempt, ended);

        public void Done(TrialResult result)
        {
        }
    }

    // The simulator up to its thousandth sample.
    private sealed class Unplugged : ITrialTarget
    {
        public string Name => "unplugged";

        public bool IsHardware => true;

        public bool IsByTheClock => false;

        public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation) =>
            new SimulatorTarget().Run(job, new Cut(samples), progress, cancellation);

        private sealed class Cut(ISampleSink samples) : ISampleSink
        {
            private int _count;

            public long PeriodMicroseconds => samples.PeriodMicroseconds;

            public void Add(in Sample sample)
            {
                if (_count++ == 1000) throw new TargetException("the port is gone");
                samples.Add(sample);
            }
        }
    }
}
