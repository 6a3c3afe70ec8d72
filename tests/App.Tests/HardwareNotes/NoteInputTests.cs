using System;
using System.Linq;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>What the sums of the building pages begin with stands in the shipped cases.</summary>
public sealed class NoteInputTests
{
    private static readonly PreparedRun LineShaft = ShippedDesigns.Prepared("line-shaft.toml");

    [Fact]
    public void BrakeSums_BeginWithTheBrakeCase()
    {
        PreparedRun run = ShippedDesigns.Prepared("brake-stop.toml");
        Engine.Machines.Machine machine = run.Setup.Machine;
        string armature = $"{N(machine.ArmatureOhms)} ohm", resistor = $"{N(run.Setup.BrakeOhms!.Value)} ohm", supply = $"{N(run.Designed.Design.SupplyVolts)} V";

        AssertHas("10-power-circuit.md",
            $"| {supply} - {N(machine.BrushDropVolts)} V - {N(run.Designed.Plate.RatedAmps!.Value)} A x {armature} |", $"/ ({resistor} + {armature}) |", $"| {supply} / {resistor} |",
            $"`starter.peak-current`, {N(run.Settings.PeakAmps)} A there");
        Assert.Equal(0.09 + 0.55, machine.InertiaKgM2, 1e-12);
        AssertHas("11-stop-chain.md", $"`brake.maximum-time`, {N(run.Settings.MaximumBrakeMicroseconds / 1e6)} s");
    }

    [Fact]
    public void StopChainSums_BeginWithTheLineShaft()
    {
        string trip = N(LineShaft.Settings.InstantTripAmps), rated = N(LineShaft.Designed.Plate.RatedAmps!.Value);

        AssertHas("11-stop-chain.md",
            $"| 1.5 x {N(LineShaft.Settings.PeakAmps)} A | {trip} A |", $"| 1.2 x {trip} A |", $"| 4 x {rated} A |",
            $"| {N(LineShaft.Designed.Design.SupplyVolts)} V / {N(LineShaft.Setup.Supply.SourceOhms)} ohm |",
            $"| 10 x {LineShaft.Setup.PeriodMicroseconds / 1000} ms + {N(1000 * LineShaft.Setup.Contactors.OpeningSeconds)} ms |");
    }

    [Fact]
    public void ResistorAndInductanceSums_BeginWithTheLineShaft()
    {
        StarterDesign design = LineShaft.Designed.Design;
        string heat = string.Join(" + ", design.Stages.Select(stage => $"{N(stage.EnergyJoules!.Value)} J"));

        AssertHas("14-parts.md",
            $"| {heat} |", $"| 3 x {N(design.Stages[0].EnergyJoules!.Value)} J |",
            $"| 1000 x {N(LineShaft.Setup.Machine.ArmatureHenries)} / {N(design.ArmatureOhms)} ohm |", $"/ {N(design.Stages[0].TotalOhms)} ohm |");
    }

    [Theory]
    [InlineData("bench-rig.toml")]
    [InlineData("rig-24v.toml")]
    public void BenchSums_BeginWithTheRigs(string name)
    {
        PreparedRun run = ShippedDesigns.Prepared(name);
        StarterDesign design = run.Designed.Design;
        string supply = $"{N(design.SupplyVolts)} V";

        AssertHas("15-bench-rig.md",
            $"| ({supply} - {N(design.BrushDropVolts)} V) / {N(design.ArmatureOhms)} ohm | {N(design.DirectStartAmps)} A |",
            $"| {supply} / {N(run.Setup.Supply.SourceOhms)} ohm |", $"| 1.5 x {N(run.Settings.PeakAmps)} A | {N(run.Settings.InstantTripAmps)} A |",
            $"{N(run.Setup.LoadInertiaKgM2)} kg m2");
    }

    [Fact]
    public void LastStep_QuotesTheRun()
    {
        StartStudy study = CaseRunner.Run(CaseFile.Parse("line-shaft.toml", ShippedCases.Text("line-shaft.toml")), null, TestContext.Current.CancellationToken);

        AssertHas("16-first-power-up.md", $"first peak is {N(study.Result.PeakAmps)} A");
        AssertHas("16-first-power-up.md", $"start takes {N(study.Result.Phases.First(entry => entry.Phase == Core.Phase.Running).Seconds)} s");
    }

    private static string N(double number) => Text.Number(number);

    private static void AssertHas(string page, params string[] pieces)
    {
        // A sentence may be broken anywhere.
        string text = Note.Text(page).Replace('\n', ' ');
        Assert.All(pieces, piece => Assert.True(text.Contains(piece, StringComparison.Ordinal), $"{page} should have: {piece}"));
    }
}
