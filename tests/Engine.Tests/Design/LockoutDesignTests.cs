using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>A lockout current below the current at the thresholds holds the cutouts back: E = V - Vb - I R, and the next peak is I R / R'.</summary>
public sealed class LockoutDesignTests
{
    private static readonly DesignInput Input = new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.2,
        BrushDropVolts = 2,
        MachineConstant = 1.6,
        InertiaKgM2 = 3,
        Load = new Load(50, 0, 0),
        SectionOhms = [0.6, 0.4, 0.25],
        CutoutVolts = [90, 130, 165],
    };

    [Fact]
    public void A_lockout_that_comes_later_decides_and_the_thresholds_stay()
    {
        StarterDesign free = StarterDesigner.Design(Input), held = StarterDesigner.Design(Input with { LockoutAmps = 70 });
        Assert.Equal(free.Stages.Select(stage => stage.VoltsLeft), held.Stages.Select(stage => stage.VoltsLeft));
        Assert.Equal([90, 130, 165], held.Stages.Select(stage => stage.CutoutVolts));
        // 1.45, 0.85 and 0.45 ohm in circuit: 218 V - 70 A of each.
        double[] ends = [116.5, 158.5, 186.5];
        Assert.Equal(ends, held.Stages.Select(stage => stage.HeldToVolts!.Value), (one, other) => System.Math.Abs(one - other) < 1e-9);
        Assert.All(held.Stages, stage => Assert.Equal(70, stage.SwitchingAmps, 1e-9));
        Assert.Equal(70 * 1.45 / 0.85, held.Stages[1].PeakAmps, 1e-9);
        Assert.Equal(70 * 0.45 / 0.2, held.FinalPeakAmps, 1e-9);
        Assert.All(free.Stages, stage => Assert.Null(stage.HeldToVolts));
    }

    [Fact]
    public void A_lockout_that_comes_earlier_or_that_the_load_never_lets_come_changes_nothing()
    {
        StarterDesign free = StarterDesigner.Design(Input);
        // The load takes 50 N m / 1.6 V s = 31.25 A.
        foreach (double amps in new[] { 150.0, 31.25, 20 })
        {
            StarterDesign held = StarterDesigner.Design(Input with { LockoutAmps = amps });
            Assert.Equal(free.Stages, held.Stages);
            Assert.Equal(free.FinalPeakAmps, held.FinalPeakAmps);
        }
    }

    [Fact]
    public void Where_the_flux_follows_the_current_it_holds_back_too()
    {
        DesignInput input = FluxMachines.SeriesInput;
        StarterDesign free = StarterDesigner.Design(input);
        double amps = 0.8 * free.Stages[0].SwitchingAmps;
        StarterDesign held = StarterDesigner.Design(input with { LockoutAmps = amps });
        Assert.All(held.Stages.Zip(free.Stages), pair =>
        {
            Assert.Equal(pair.Second.VoltsLeft, pair.First.VoltsLeft, 1e-9);
            Assert.Equal(amps, pair.First.SwitchingAmps, 1e-6 * amps);
            Assert.Equal(held.SupplyVolts - held.BrushDropVolts - amps * pair.First.TotalOhms, pair.First.HeldToVolts!.Value, 1e-6);
            Assert.True(pair.First.CutoutRpm > pair.Second.CutoutRpm);
        });
    }

    [Fact]
    public void A_simulated_start_is_cut_out_where_the_design_says()
    {
        CaseFile file = CaseFile.Parse("held.toml", """
            [supply]
            voltage = "220 V"

            [motor]
            kind = "separately excited"
            armature-resistance = "0.2 ohm"
            brush-drop = "2 V"
            constant = "1.6 V s/rad"
            inertia = "3 kg m2"

            [load]
            constant-torque = "50 N m"

            [starter]
            peak-current = "180 A"
            sections = ["0.6 ohm", "0.4 ohm", "0.25 ohm"]
            cutout-voltages = ["90 V", "130 V", "165 V"]

            [control]
            period = "0.1 ms"
            lockout-current = "70 A"

            [contactors]
            closing-time = "0 ms"

            [run]
            duration = "15 s"
            """);
        StartStudy study = CaseRunner.Run(file, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(3, study.Result.Cutouts.Count);
        Assert.All(study.Result.Cutouts.Zip(study.Design.Stages), pair => Assert.Equal(pair.Second.HeldToVolts!.Value, pair.First.BackEmfVolts, 0.05));
    }
}
