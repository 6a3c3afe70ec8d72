using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using System.Xml.Linq;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The verb trial as a user calls it: files, products, exit codes.</summary>
public sealed class TrialVerbTests : IDisposable
{
    private readonly Cli _cli = new();

    public TrialVerbTests() => _cli.Write("bench-rig.toml", ShippedCases.Text("bench-rig.toml"));

    private string LinesPath => Path.Combine(_cli.OutFolder, "trials.jsonl");

    private string XmlPath => Path.Combine(_cli.OutFolder, "trials.junit.xml");

    [Fact]
    public async Task Trials_OneOfWhichFails_GiveCode1AndSayWhatWasSeen()
    {
        int code = await _cli.Run("trial", Trial("peak.trial.toml", 33, 20), "--out", _cli.OutFolder);

        Assert.Equal(1, code);
        Assert.Matches("peak \\[33\\] +pass +peak: most 31.65 A at 0.014 s", _cli.Output);
        Assert.Contains("peak: most 31.65 A at 0.014 s, expected armatureAmps at most 20 A", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("2 trials: 1 passed, 1 failed", _cli.Output, StringComparison.Ordinal);
        XElement root = XDocument.Load(XmlPath).Root!;
        Assert.Equal(("2", "1", "0"), (root.Attribute("tests")!.Value, root.Attribute("failures")!.Value, root.Attribute("errors")!.Value));
        Assert.Equal(4, File.ReadAllLines(LinesPath).Length);
    }

    [Fact]
    public async Task Trials_OfAFolder_ArePickedByTagAndFilter()
    {
        Trial("one.trial.toml", 33, 34);
        Trial("two.trial.toml", 33, 20);

        Assert.Equal(0, await _cli.Run("trial", _cli.Folder, "--filter", "[33]", "--tag", "peak", "--json", "--out", _cli.OutFolder));
        Assert.Equal(["one [33]", "two [33]"], _cli.Json().GetProperty("trials").EnumerateArray().Select(trial => trial.GetProperty("trial").GetString()));
        Assert.Equal(2, _cli.Json().GetProperty("counts").GetProperty("passed").GetInt32());

        Assert.Equal(2, await _cli.Run("trial", _cli.Folder, "--tag", "other", "--out", _cli.OutFolder));
        Assert.Contains("--tag other, which picks none; allowed: what picks at least one of 4 trials, such as one [33]; tags: peak", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Retry_IsShownInEveryProduct()
    {
        int code = await _cli.Run("trial", Trial("peak.trial.toml", 20), "--retry", "2", "--out", _cli.OutFolder);

        Assert.Equal(1, code);
        Assert.Contains("attempt 3: peak", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("1 trial: 1 failed, 1 tried more than once", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("attempt 3 of 3: fail", XDocument.Load(XmlPath).Descendants("system-out").Single().Value, StringComparison.Ordinal);
        JsonElement line = JsonDocument.Parse(File.ReadAllLines(LinesPath)[1]).RootElement;
        Assert.Equal(3, line.GetProperty("trial").GetProperty("attempts").GetArrayLength());
    }

    [Theory]
    [InlineData("--retry", "x", "--retry: found \"x\"; allowed: a whole number, 0 to 10")]
    [InlineData("--target", "board", "--target: found \"board\"; allowed: simulator, desk, tcp:HOST:PORT or the path of a serial port")]
    public async Task Option_ThatMakesNoSense_IsRefused(string option, string value, string expected)
    {
        Assert.Equal(2, await _cli.Run("trial", Trial("peak.trial.toml", 33), option, value, "--out", _cli.OutFolder));
        Assert.Contains(expected, _cli.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    [Fact]
    public async Task Record_BecomesATrialByOneCommandAndTheTrialPasses()
    {
        string casePath = _cli.Write("lost.toml", ShippedCases.Text("speed-lost-starting.toml")), made = Path.Combine(_cli.Folder, "made.trial.toml");
        Assert.Equal(0, await _cli.Run("run", casePath, "--every-period", "--out", _cli.OutFolder));

        Assert.Equal(0, await _cli.Run("export", "trial", Path.Combine(_cli.OutFolder, "lost.record.csv"), "--case", casePath, "--out", made));
        Assert.Equal(0, await _cli.Run("trial", made, "--out", _cli.OutFolder));

        Assert.Contains("fault: speed signal lost at 1.2 s", _cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bundle_OfATrial_IsVerifiedAndOneThatIsNoneIsRefused()
    {
        Assert.Equal(1, await _cli.Run("trial", Trial("peak.trial.toml", 20), "--bundle", "--out", _cli.OutFolder));

        Assert.Equal(0, await _cli.Run("replay", "--verify", Path.Combine(_cli.OutFolder, "peak.20.bundle.zip"), "--json"));
        Assert.Equal(("pass", "fail"), (_cli.Json().GetProperty("verdict").GetString(), _cli.Json().GetProperty("manifest").GetProperty("verdict").GetString()));
        Assert.Equal(2, await _cli.Run("replay", "--verify", LinesPath));
        Assert.Contains("trials.jsonl: found no bundle", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(2, await _cli.Run("replay", "--verify", LinesPath, "--with", "x"));
    }

    // Nobody listens at port 1: nothing is known of the starter, and a retry may help.
    [Fact]
    public async Task Target_ThatIsNotThere_IsAnErrorOfItsOwnAndGivesCode4()
    {
        Assert.Equal(4, await _cli.Run("trial", Trial("peak.trial.toml", 33, 34), "--target", "tcp:127.0.0.1:1", "--out", _cli.OutFolder));

        Assert.Contains("2 trials: 2 errors", _cli.Output, StringComparison.Ordinal);
        Assert.Contains("127.0.0.1, port 1: ", _cli.Output, StringComparison.Ordinal);
        XElement root = XDocument.Load(XmlPath).Root!;
        Assert.Equal(("2", "0", "2"), (root.Attribute("tests")!.Value, root.Attribute("failures")!.Value, root.Attribute("errors")!.Value));
        JsonElement line = JsonDocument.Parse(File.ReadAllLines(LinesPath)[1]).RootElement.GetProperty("trial");
        Assert.Equal("error", line.GetProperty("verdict").GetString());
        Assert.StartsWith("127.0.0.1, port 1: ", line.GetProperty("attempts")[0].GetProperty("trouble").GetString(), StringComparison.Ordinal);
    }

    // What failed is known whatever became of the others.
    [Fact]
    public async Task Target_ThatFailsALimitOfItsLink_GivesCode1()
    {
        Assert.Equal(1, await _cli.Run("trial", Trial("peak.trial.toml", 33), "--target", "desk", "--most-latency", "0.001", "--out", _cli.OutFolder));

        Assert.Matches("latency: [0-9.]+ ms, expected at most 0.001 ms", _cli.Output);
    }

    [Fact]
    public async Task Trials_OfOneName_AreRefused()
    {
        string one = Trial("peak.trial.toml", 20), folder = Directory.CreateDirectory(Path.Combine(_cli.Folder, "other")).FullName;
        File.Copy(one, Path.Combine(folder, "peak.trial.toml"));
        File.Copy(Path.Combine(_cli.Folder, "bench-rig.toml"), Path.Combine(folder, "bench-rig.toml"));

        Assert.Equal(2, await _cli.Run("trial", one, folder, "--out", _cli.OutFolder));

        Assert.Contains("found a second trial of the name peak [20], after ", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TrialsPage_Blocks_AreWhatTheCommandsPrint()
    {
        string folder = Path.Combine(Repository.Root, "sim", "trials");
        await _cli.Run("trial", Path.Combine(folder, "sound-start.trial.toml"), Path.Combine(folder, "overload.trial.toml"), "--filter", "magnet", "--out", _cli.OutFolder);
        AssertShown(folder, _cli.Output);

        await _cli.Run("trial", Path.Combine(folder, "overload.trial.toml"), "--filter", "crane running", "--bundle", "--out", _cli.OutFolder);
        await _cli.Run("replay", "--verify", Path.Combine(_cli.OutFolder, "overload.crane-running.bundle.zip"));
        AssertShown(folder, _cli.Output);
    }

    [Fact]
    public async Task Mistakes_OfAllFiles_AreSaidAtOnceAndNothingIsWritten()
    {
        string one = _cli.Write("one.trial.toml", "case = \"bench-rig.toml\"\n"), two = _cli.Write("two.trial.toml", "case = \"gone.toml\"\n[[expect]]\nname = \"x\"\nfault = \"none\"\n");

        Assert.Equal(2, await _cli.Run("trial", one, two, "--out", _cli.OutFolder));

        Assert.Contains("one.trial.toml: found nothing that is expected; allowed: at least one [[expect]]", _cli.Errors, StringComparison.Ordinal);
        Assert.Contains("two.trial.toml:1: case: found \"gone.toml\", no such file", _cli.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_cli.OutFolder));
    }

    [Fact]
    public async Task DiskThatIsFull_GivesCode4AndSaysSo()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "needs a device that is always full");
        Directory.CreateDirectory(_cli.OutFolder);
        File.CreateSymbolicLink(LinesPath, "/dev/full");

        Assert.Equal(4, await _cli.Run("trial", Trial("peak.trial.toml", 33), "--out", _cli.OutFolder));

        Assert.Contains("the disk is full", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task DiskThatFillsUpUnderARecord_NamesWhatIsKept()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "needs a device that is always full");
        Directory.CreateDirectory(_cli.OutFolder);
        string record = Path.Combine(_cli.OutFolder, $"peak.33.bundle.zip.{Environment.ProcessId}.record.csv");
        File.CreateSymbolicLink(record, "/dev/full");

        Assert.Equal(4, await _cli.Run("trial", Trial("peak.trial.toml", 33), "--bundle", "--out", _cli.OutFolder));

        Assert.Contains($"{record}: cannot be written: the disk is full; what was recorded so far is kept there", _cli.Errors, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.ChangeExtension(record, ".json")));
        Assert.False(File.Exists(Path.Combine(_cli.OutFolder, "peak.33.bundle.zip")));
    }

    [Fact]
    public async Task CtrlC_AbortsWhatRunsWritesTheVerdictsAndGivesCode5()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "sends a POSIX signal");
        string path = _cli.Write("long.trial.toml", "case = \"bench-rig.toml\"\n[set]\nrun.duration = \"3600 s\"\ncontrol.period = \"20 us\"\n[[expect]]\nname = \"{n}\"\nfault = \"none\"\n"
            + string.Concat(Enumerable.Range(1, 200).Select(i => $"[[parameters]]\nname = \"{i}\"\nn = \"x{i}\"\n")));
        using RunningProgram program = RunningProgram.Start("trial", path, "--out", _cli.OutFolder);

        await program.Until(() => File.Exists(LinesPath) && new FileInfo(LinesPath).Length > 0);
        await program.Interrupt();

        Assert.Equal(5, await program.ExitCode());
        XElement root = XDocument.Load(XmlPath).Root!;
        int aborted = root.Descendants("error").Count(error => error.Attribute("type")!.Value == "aborted"), left = root.Descendants("skipped").Count();
        Assert.InRange(aborted, 0, Environment.ProcessorCount);
        Assert.Equal(200, aborted + left);
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertShown(string folder, string printed)
    {
        string[] lines = [.. printed.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0)];
        string[] missing = [.. lines.Except(File.ReadAllLines(Path.Combine(folder, "README.md")))];
        Assert.True(missing.Length == 0, "not in sim/trials/README.md:\n" + string.Join('\n', missing));
    }

    // The shipped bench rig peaks at 31.65 A; a row for each limit.
    private string Trial(string name, params int[] amps) => _cli.Write(name, "case = \"bench-rig.toml\"\ntags = [\"peak\"]\n[[expect]]\nname = \"peak\"\nsignal = \"armatureAmps\"\nat-most = \"{peak}\"\n"
        + string.Concat(amps.Select(limit => $"[[parameters]]\nname = \"{limit}\"\npeak = \"{limit} A\"\n")));
}
