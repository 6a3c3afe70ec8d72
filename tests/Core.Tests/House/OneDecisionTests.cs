using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests.House;

/// <summary>The decision exists once: what the simulator runs is the board's controller and no copy of it.</summary>
public sealed class OneDecisionTests
{
    private static readonly string[] Product = ["core", "firmware", "sim"];

    [Theory]
    [InlineData(@"\b(WantStages|WantLine)\b")]
    [InlineData(@"\bclass (Sequencer|Interlock|Protector|Estimator|ContactProof|FaultLatch)\b")]
    [InlineData(@"\b(Sequencer|Interlock|Protector|ContactProof)\b")]
    [InlineData(@"\bthresholdVolts\b")]
    [InlineData(@"(?i)backEmf\w*\s*(>=|<=|<|>)|(?<!=)(>=|<=|<|>)\s*\w*\.?backEmf")]
    public void Decision_ItsParts_AreInTheCoreOnly(string pattern)
    {
        List<string> files = FilesWith(pattern);

        Assert.NotEmpty(files);
        Assert.All(files, path => Assert.StartsWith("core/", path));
    }

    [Theory]
    [InlineData("CloseLine")]
    [InlineData("CloseStages")]
    public void Coils_AreWritten_ByTheInterlockAlone(string coil)
    {
        Assert.Equal(["core/Interlock.cs"], FilesWith($@"(?i)outputs\.{coil}\s*[|&^]?=(?!=)"));
    }

    [Fact]
    public void Outputs_OutsideTheCore_AreNeverSet()
    {
        List<string> files = FilesWith(@"(?i)outputs\.\w+\s*[|&^]?=(?!=)|new Outputs\b\s*(\(\s*\))?\s*\{|ref \w*outputs\.");

        Assert.All(files, path => Assert.StartsWith("core/", path));
    }

    [Fact]
    public void Interlock_IsBuiltAndApplied_ByTheControllerAlone()
    {
        Assert.Equal(["core/Controller.cs"], FilesWith(@"new Interlock\b"));
        Assert.Equal(["core/Controller.cs"], FilesWith(@"(?i)interlock\.Apply\("));
    }

    [Fact]
    public void Controller_IsTicked_ByTheLoopsOfBoardAndDeskAndByTheBenchmarkOnly()
    {
        string[] loops = ["core/SelfTest/BootCheck.cs", "firmware/ControlLoop.cs", "sim/Engine/Runs/StartSimulation.cs", "sim/Engine/Runs/Replay.cs", "sim/Benchmarks/TickBenchmarks.cs"];

        Assert.Empty(FilesWith(@"(?i)controller\.Tick\(").Except(loops));
    }

    private static List<string> FilesWith(string pattern) =>
        Product.SelectMany(folder => Repository.Files(folder, "*.cs"))
            .Where(path => Regex.IsMatch(Repository.Code(path), pattern))
            .ToList();
}
