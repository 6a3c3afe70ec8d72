using System;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Export;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Export;

public sealed class SpiceNetlistTests
{
    [Fact]
    public void Coefficients_OfEveryPiece_AreTheCurve()
    {
        Magnetisation curve = new([0, 0.5, 1, 1.5, 2, 2.5], [0.05, 0.62, 1.13, 1.44, 1.6, 1.6]);
        for (int i = 1; i < curve.Amps.Count; i++)
        {
            (double first, double second, double third) = SpiceCurve.Coefficients(curve.Curve, i);
            double begin = curve.Amps[i - 1], span = curve.Amps[i] - begin;
            for (double part = 0; part <= 1; part += 0.125)
            {
                double x = part * span;
                Assert.Equal(curve.ConstantAt(begin + x), curve.Constants[i - 1] + x * (first + x * (second + x * third)), 1e-12);
            }
        }
    }

    [Fact]
    public void Netlist_InACultureWithCommas_IsTheSame()
    {
        SpiceScene scene = Scene(LineShaftCase.With(["at = \"5 s\"\nload-torque = \"85.5 N m\""]));
        string invariant = SpiceNetlist.Of(scene);
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            commas.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = commas;
            Assert.Equal(invariant, SpiceNetlist.Of(scene));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Netlist_HasStepsOfLoadAndSupplyAsSources()
    {
        string netlist = SpiceNetlist.Of(Scene(LineShaftCase.With(
            ["at = \"5 s\"\nload-torque = \"85 N m\"", "at = \"6 s\"\nsupply-voltage = \"210 V\""])));

        Assert.Contains("Vload_torque load_torque 0 PWL(0 45 5 45 5.000001 85)", netlist, StringComparison.Ordinal);
        Assert.Contains("Vsupply open_circuit 0 PWL(0 220 6 220 6.000001 210)", netlist, StringComparison.Ordinal);
    }

    [Fact]
    public void Netlist_SaysWhatItLeavesOut()
    {
        SpiceScene scene = Scene(LineShaftCase.With(("brake.resistance", "1 ohm"), ("brake.release-speed", "100 rpm")));
        string netlist = SpiceNetlist.Of(scene);

        string[] words = ["Contactor times of 40 ms and 15 ms", "control period of 1 ms", "confirm time of 2 ms", "minimum dwell of 100 ms", "The brake."];
        foreach (string word in words)
        {
            Assert.Single(scene.LeftOut, sentence => sentence.Contains(word, StringComparison.Ordinal));
            Assert.Contains(word, netlist, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("at = \"4 s\"\ncommand = \"stop\"", "stopping")]
    [InlineData("at = \"4 s\"\nshaft = \"locked\"", "the shaft jams")]
    [InlineData("at = \"4 s\"\nspeed-signal = \"lost\"", "the speed signal is lost")]
    [InlineData("at = \"4 s\"\nload-torque = \"60 N m\"\nover = \"1 s\"", "constant torque becomes 60 N m over 1 s")]
    [InlineData("at = \"4 s\"\nhoist-torque = \"60 N m\"", "hoist")]
    [InlineData("at = \"4 s\"\nload-inertia = \"3 kg m2\"", "inertia")]
    public void Scene_EndsBeforeWhatItHasNoWordsFor(string happening, string words)
    {
        SpiceScene scene = Scene(LineShaftCase.With([happening]));

        Assert.InRange(scene.Setup.DurationSeconds, 3.999, 4 - 1e-9);
        Assert.Single(scene.LeftOut, sentence => sentence.Contains(words, StringComparison.Ordinal));
        // The line is still closed there: the load's current flows.
        Assert.InRange(scene.Own.FinalAmps, 40, 60);
    }

    [Fact]
    public void Scene_StartedLater_HasTheStartLater()
    {
        SpiceScene now = Scene(LineShaftCase.With()), later = Scene(LineShaftCase.With(["at = \"1.5 s\"\ncommand = \"start\""]));

        Assert.Equal(1.5, later.StartSeconds);
        Assert.Contains("Vstart start 0 PWL(0 -1 1.5 -1 1.500001 1)", SpiceNetlist.Of(later), StringComparison.Ordinal);
        Assert.Equal(now.Own.Cutouts.Select(cutout => cutout.Seconds + 1.5), later.Own.Cutouts.Select(cutout => cutout.Seconds), (a, b) => Math.Abs(a - b) < 1e-4);
    }

    [Theory]
    [InlineData("at = \"0 s\"\nshaft = \"locked\"", null, "event.at")]
    [InlineData("at = \"0 s\"\ncontact = \"stage 2\"\ncontact-fault = \"refuses to close\"", null, "event.at")]
    [InlineData("at = \"0 s\"\ncommand = \"emergency stop\"", null, "run.duration")]
    [InlineData("at = \"1 s\"\nload-torque = \"50 N m\"", "-100 rpm", "load.speed")]
    [InlineData("at = \"1 s\"\nload-torque = \"50 N m\"", "1500 rpm", "load.speed")]
    public void Case_WithoutAStartToWrite_IsRefusedWithItsKey(string happening, string? speed, string key)
    {
        CaseFile file = LineShaftCase.With([happening], ("load.speed", speed), ("control.spinning-start", "no"));
        StartStudy study = LineShaftCase.Run(file);

        CaseProblem problem = Assert.Single(Assert.Throws<CaseException>(() => SpiceSceneReader.Read(file, study, TestContext.Current.CancellationToken)).Problems);

        Assert.Equal(key, problem.Key);
    }

    // A case cannot bring lines of its own into the netlist, nor a control character.
    [Fact]
    public void Comment_OfAnyTitle_IsOneLine()
    {
        SpiceText text = new();
        text.Comment("one\nquit\r\n.end");

        Assert.Equal("* one quit  .end\n", text.ToString());
    }

    [Fact]
    public void Element_LongerThanALine_GoesOnWithPlus()
    {
        SpiceText text = new();
        string element = "Bx x 0 V=" + string.Join(" + ", Enumerable.Range(0, 200));
        text.Element(element);

        string[] lines = text.ToString().TrimEnd('\n').Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= 120));
        Assert.All(lines.Skip(1), line => Assert.StartsWith("+ ", line, StringComparison.Ordinal));
        Assert.Equal(element, string.Join(' ', lines.Select((line, i) => i == 0 ? line : line[2..])));
    }

    private static SpiceScene Scene(CaseFile file) => SpiceSceneReader.Read(file, LineShaftCase.Run(file), TestContext.Current.CancellationToken);
}
