using System;
using System.IO;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>Bad input: its own clear message, exit code 2, nothing written.</summary>
public sealed class BadInputTests : IDisposable
{
    private readonly Cli _cli = new();

    [Theory]
    [InlineData("resistance = \"0.17 ohm\"", "resistance = \"-0.17 ohm\"", "motor.armature-resistance", "-0.17 ohm")]
    [InlineData("resistance = \"0.17 ohm\"", "resistance = \"0.17 A\"", "motor.armature-resistance", "current")]
    [InlineData("inertia = \"0.45 kg m2\"", "inertia = \"0 kg m2\"", "motor.inertia", "0 kg m2")]
    [InlineData("peak-current = \"155 A\"", "peak-current = \"60 A\"", "starter.peak-current", "below the rated current of 77 A")]
    [InlineData("switching-current = \"90 A\"", "switching-current = \"40 A\"", "starter.switching-current", "in stage 1, but the load takes")]
    [InlineData("switching-current = \"90 A\"", "switching-current = \"155 A\"", "starter.switching-current", "not below the peak current of 155 A")]
    [InlineData("peak-current = \"155 A\"", "peak-current = \"1300 A\"", "starter.peak-current", "0 stages are needed")]
    [InlineData("slack = \"last section\"", "stages = 30", "starter.stages", "30")]
    [InlineData("slack = \"last section\"", "stages = 6", "starter.stages", "4 already reach the armature alone")]
    [InlineData("slack = \"last section\"", "slak = \"last section\"", "starter.slak", "starter.slack")]
    public async Task Case_WithOneWrongValue_IsRefusedWithFileLineKeyAndNumbers(string found, string replacement, string key, string words)
    {
        string path = _cli.WriteLineShaft(found, replacement);

        foreach (string verb in (string[])["design", "run", "report"])
        {
            int code = await _cli.Run(verb, path, "--out", _cli.OutFolder);

            Assert.Equal(2, code);
            Assert.Matches(@"case\.toml:\d+: " + key, _cli.Errors.Replace("\n", " ", StringComparison.Ordinal));
            Assert.Contains(words, _cli.Errors, StringComparison.Ordinal);
            Assert.Contains("allowed: ", _cli.Errors, StringComparison.Ordinal);
            Assert.Empty(_cli.Output);
            Assert.False(Directory.Exists(_cli.OutFolder));
        }
    }

    [Fact]
    public async Task Case_WithSeveralWrongValues_SaysAllAtOnce()
    {
        string path = _cli.Write("case.toml", """
            [supply]
            voltage = "220 A"
            [motor]
            armature-resistance = "-1 ohm"
            brush-dorp = "2 V"
            """);

        int code = await _cli.Run("design", path);

        Assert.Equal(2, code);
        Assert.Contains("case.toml:2: supply.voltage", _cli.Errors, StringComparison.Ordinal);
        Assert.Contains("case.toml:4: motor.armature-resistance", _cli.Errors, StringComparison.Ordinal);
        Assert.Contains("case.toml:5: motor.brush-dorp", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WithoutWhatItNeeds_NamesEveryMissingKey()
    {
        string path = _cli.Write("case.toml", "[motor]\nkind = \"permanent magnet\"\n");

        int code = await _cli.Run("run", path, "--out", _cli.OutFolder);

        Assert.Equal(2, code);
        foreach (string key in (string[])["supply.voltage", "motor.armature-resistance", "motor.inertia", "starter.peak-current"])
        {
            Assert.Contains(key, _cli.Errors, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task File_Missing_IsNamed()
    {
        int code = await _cli.Run("design", Path.Combine(_cli.Folder, "nowhere.toml"));

        Assert.Equal(2, code);
        Assert.Contains("nowhere.toml", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_IsADirectory_IsSaid()
    {
        int code = await _cli.Run("run", _cli.Folder, "--out", _cli.OutFolder);

        Assert.Equal(2, code);
        Assert.Contains("folder", _cli.Errors + "", StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task File_IsBinaryEmptyOrHuge_EachHasItsOwnMessage()
    {
        string binary = Path.Combine(_cli.Folder, "binary.toml");
        await File.WriteAllBytesAsync(binary, [0x7f, 0x45, 0x4c, 0x46, 0, 1, 2, 255], TestContext.Current.CancellationToken);
        string empty = _cli.Write("empty.toml", "");
        string huge = _cli.Write("huge.toml", new string('#', 10_000_000));

        Assert.Equal(2, await _cli.Run("design", binary));
        string said = _cli.Errors;
        Assert.Equal(2, await _cli.Run("design", empty));
        Assert.NotEqual(said.Replace("binary", "empty", StringComparison.Ordinal), _cli.Errors);
        Assert.Contains("empty", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal(2, await _cli.Run("design", huge));
        Assert.Contains("1 MiB", _cli.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Out_BelowAFile_IsSaidAndNothingIsWritten()
    {
        string blocker = _cli.Write("blocker", "mine");
        string path = _cli.WriteLineShaft("155 A", "155 A");

        int code = await _cli.Run("run", path, "--out", Path.Combine(blocker, "below"));

        Assert.Equal(2, code);
        Assert.Contains("blocker is a file, not a folder", _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
        Assert.Equal("mine", await File.ReadAllTextAsync(blocker, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Out_WhereTheSecondFileCannotBe_LeavesTheFirstUnwrittenToo()
    {
        string path = _cli.WriteLineShaft("155 A", "155 A");
        Directory.CreateDirectory(Path.Combine(_cli.OutFolder, "case.run.json"));

        int code = await _cli.Run("run", path, "--out", _cli.OutFolder);

        Assert.Equal(2, code);
        Assert.Contains("a folder of that name is there", _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
        Assert.Empty(Directory.GetFiles(_cli.OutFolder));
    }

    [Fact]
    public async Task Out_NamingTheCaseItself_IsRefused()
    {
        string path = _cli.Write("case.txt", ShippedCases.Text("bench-rig.toml"));

        int code = await _cli.Run("run", path, "--out", path);

        Assert.Equal(2, code);
        Assert.Contains("it is what is read", _cli.Errors, StringComparison.Ordinal);
        Assert.Equal([path], Directory.GetFileSystemEntries(_cli.Folder));
        Assert.Equal(ShippedCases.Text("bench-rig.toml"), await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Out_ReadOnlyFolder_IsSaid()
    {
        // The kernel's own read-only tree: even an administrator may not write there.
        Assert.SkipUnless(Directory.Exists("/proc/self"), "needs a /proc that nobody can write to");
        string path = _cli.WriteLineShaft("155 A", "155 A");

        int code = await _cli.Run("report", path, "--out", "/proc");

        Assert.Equal(2, code);
        Assert.Contains("/proc", _cli.Errors, StringComparison.Ordinal);
        Assert.Contains("cannot be written", _cli.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("desing", "x.toml")]
    [InlineData("design")]
    [InlineData("run", "a.toml", "--jsno")]
    [InlineData("run", "a.toml", "--out", "")]
    public async Task Usage_Wrong_IsExitCode2WithAHint(params string[] args)
    {
        int code = await _cli.Run(args);

        Assert.Equal(2, code);
        Assert.Contains("--help", _cli.Errors, StringComparison.Ordinal);
        Assert.Empty(_cli.Output);
    }

    public void Dispose() => _cli.Dispose();
}
