using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tests;

/// <summary>What the README says was printed is what is printed.</summary>
public sealed class ReadmeTests : IDisposable
{
    private static readonly string[] Readme = File.ReadAllLines(Path.Combine(Repository.Root, "README.md"));

    private readonly Cli _cli = new();

    [Fact]
    public async Task Readme_DemoBlock_IsWhatTheDemoPrints()
    {
        await _cli.Run("--out", _cli.OutFolder);

        AssertShown(_cli.Output);
    }

    [Fact]
    public async Task Readme_BenchRigBlock_IsWhatDesignPrints()
    {
        await _cli.Run("design", Path.Combine(Repository.Root, "sim", "cases", "bench-rig.toml"));

        AssertShown(_cli.Output);
    }

    [Fact]
    public async Task Readme_CraneBlock_IsWhatDesignPrints()
    {
        await _cli.Run("design", Path.Combine(Repository.Root, "sim", "cases", "crane-travel.toml"));

        AssertShown(_cli.Output);
    }

    [Fact]
    public async Task Readme_FaultBlock_IsWhatRunPrints()
    {
        int code = await _cli.Run("run", Path.Combine(Repository.Root, "sim", "cases", "speed-lost-starting.toml"), "--out", _cli.OutFolder);

        Assert.Equal(0, code);
        AssertShown(_cli.Output);
    }

    [Fact]
    public async Task Readme_MistakeBlock_IsWhatTheProgramAnswers()
    {
        string text = ShippedCases.Text("line-shaft.toml")
            .Replace("\narmature-resistance = ", "\narmature-resistence = ", StringComparison.Ordinal)
            .Replace("rated-voltage = \"220 V\"", "rated-voltage = \"220 A\"", StringComparison.Ordinal);
        string path = _cli.Write("case.toml", text);

        await _cli.Run("design", path);
        string own = _cli.Errors.Replace(path, "case.toml", StringComparison.Ordinal);

        AssertShown(own);
    }

    [Fact]
    public void Readme_BothJobsOfTheBackEmf_AreTheEnginesFigures()
    {
        StartStudy study = CaseRunner.Run(CaseFile.Parse("line-shaft.toml", ShippedCases.Text("line-shaft.toml")), null, TestContext.Current.CancellationToken);
        LoadStepScene scene = LoadStepScene.Of(study);
        string readme = string.Join(' ', Readme);

        foreach (LoadStepResponse response in (LoadStepResponse[])[scene.Machine, scene.WeakerMachine])
        {
            foreach (RunningPoint point in (RunningPoint[])[response.Before, response.After])
            {
                Assert.Contains(Text.Number(point.Rpm), readme, StringComparison.Ordinal);
                Assert.Contains(Text.Number(point.BackEmfVolts), readme, StringComparison.Ordinal);
                Assert.Contains(Text.Number(point.ArmatureAmps), readme, StringComparison.Ordinal);
            }
        }

        Assert.Contains(Text.Number(study.Design.DirectStartAmps) + " A", readme, StringComparison.Ordinal);
        Assert.Contains(Text.Number(study.Result.PeakAmps) + " A", readme, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    [InlineData("sim/cases/README.md")]
    [InlineData("sim/Benchmarks/README.md")]
    [InlineData("sim/spice.md")]
    [InlineData("sim/trials/README.md")]
    [InlineData("sim/parts.md")]
    [InlineData("sim/records.md")]
    [InlineData("sim/heat.md")]
    [InlineData("sim/sweeps.md")]
    [InlineData("sim/cluster/README.md")]
    [InlineData("hardware-notes/README.md")]
    [InlineData("hardware-notes/01-around-the-controller.md")]
    [InlineData("hardware-notes/03-faults.md")]
    [InlineData("tests/published/SOURCES.md")]
    [InlineData("tests/Mutation/README.md")]
    public void Page_Links_LeadToFilesThatAreThere(string page)
    {
        string path = Path.Combine(Repository.Root, page);
        string[] targets = [.. Regex.Matches(File.ReadAllText(path), @"\]\(([^)#:]+)\)").Select(match => match.Groups[1].Value)];

        Assert.All(targets, target => Assert.True(Path.Exists(Path.Combine(Path.GetDirectoryName(path)!, target)), target));
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertShown(string printed)
    {
        string[] missing = [.. printed.Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0).Except(Readme)];
        Assert.True(missing.Length == 0, "not in README.md:\n" + string.Join('\n', missing));
    }
}
