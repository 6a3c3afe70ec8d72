using System.Globalization;
using System.Linq;
using StarterCtl.Firmware;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>The noise table of the page of calibration says what the rules say.</summary>
public sealed class NoisePageTests
{
    private const double PerCent = 100;

    private static readonly NoiseSamples Silence = new(1000, 2048, 2048, 2048f, 0, 0);

    [Fact]
    public void Table_OfThePage_HasEveryPatternWithItsNumbers()
    {
        ChannelNoise loud = Noise(new(1000, 2000, 2100, 2048f, 1, 2), new(1000, 2000, 2100, 2100f, 50, 2), new(1000, 1800, 2300, 2048f, 1, 400));
        NoiseFinding[] findings = [.. NoiseRules.Judge(Noise(Silence with { Count = 0 }, Silence, Silence)), .. NoiseRules.Judge(Noise(Silence, Silence, Silence)), .. NoiseRules.Judge(loud)];

        string[] rows = [.. findings.Select(finding => $"| {finding.Pattern} | {When(finding.Pattern)} | {finding.Meaning} | {finding.Remedy} |")];

        Assert.Equal(6, rows.Length);
        Assert.All(rows, row => Assert.Contains(row, Repository.Text("hardware-notes/07-calibration.md").Split('\n')));
    }

    private static string When(string pattern) => pattern switch
    {
        "no rest" => $"fewer than {NoiseRules.LeastSamples} samples at rest",
        "noise at rest" => $"spread at rest above {Part(NoiseRules.MostRestSpreadRatio)} of the range",
        "no life" => "no sample differs from any other",
        "shift with coils on" => $"mean moves by more than {Part(NoiseRules.MostShiftRatio)} of the range",
        "noise with coils on" => $"deviation above {Part(NoiseRules.LeastCoilNoiseRatio)} of the range and {NoiseRules.CoilNoiseTimesRest} times that at rest",
        _ => $"step above {Part(NoiseRules.MostReleaseStepRatio)} of the range and {NoiseRules.ReleaseStepTimesRest} times the largest at rest",
    };

    private static string Part(double ratio) => $"{(ratio * PerCent).ToString(CultureInfo.InvariantCulture)} %";

    private static ChannelNoise Noise(NoiseSamples rest, NoiseSamples coilsOn, NoiseSamples release) => new(CalibrationChannel.ArmatureAmps, 4095, rest, coilsOn, release);
}
