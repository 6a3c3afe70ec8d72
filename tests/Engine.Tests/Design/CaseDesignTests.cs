using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

public sealed class CaseDesignTests
{
    [Fact]
    public void Of_IncompleteConstruction_NamesEveryMissingKey()
    {
        CaseException refused = Assert.Throws<CaseException>(() => CaseDesign.Of(LineShaftCase.With(("motor.construction.conductors", "492"))));

        Assert.Equal(
            ["motor.construction.poles", "motor.construction.parallel-paths", "motor.construction.flux-per-pole"],
            refused.Problems.Select(problem => problem.Key));
    }

    [Fact]
    public void Of_BrushDropAboveTheSupply_BlamesTheBrushDrop()
    {
        CaseException refused = Assert.Throws<CaseException>(() => CaseDesign.Of(LineShaftCase.With(
            ("motor.brush-drop", "230 V"), ("motor.rated-voltage", null))));

        Assert.Equal("motor.brush-drop", Assert.Single(refused.Problems).Key);
    }

    // Totals 1.01, 0.49, 0.18 ohm. Stage 1: 156 A behind it leave 76.44 V and 75.7 A, the load takes 52 A: kept. Stage 2:
    // 28.08 V would leave 57.3 A, but the load takes 59.7 A there; at 95 A it ends, and 95 A x 0.49 ohm / 0.18 ohm follow.
    [Fact]
    public void Design_GivenSectionsWhereTheLoadHoldsBeforeThePeakIsKept_FallsBackToTheSwitchingCurrent()
    {
        StarterDesign design = StarterDesigner.Design(Given(new Load(70, 0.05, 0.002)));

        Assert.Equal(156 * 0.49, design.Stages[0].VoltsLeft, 1e-9);
        Assert.Equal(156, design.Stages[1].PeakAmps, 1e-9);
        Assert.Equal(95 * 0.49, design.Stages[1].VoltsLeft, 1e-9);
        Assert.Equal(95 * 0.49 / 0.18, design.FinalPeakAmps, 1e-9);
        string warning = Assert.Single(design.Warnings, text => text.Contains("largest peak", StringComparison.Ordinal));
        Assert.Contains("258.6 A", warning, StringComparison.Ordinal);
        Assert.Contains("156 A", warning, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_GivenSectionsWhereTheLoadAllows_KeepsThePeak()
    {
        StarterDesign design = StarterDesigner.Design(Given(new Load(40, 0.05, 0.001)));

        Assert.Equal(156 * 0.49, design.Stages[0].VoltsLeft, 1e-9);
        Assert.Equal(156 * 0.18, design.Stages[1].VoltsLeft, 1e-9);
        Assert.Equal(156, design.FinalPeakAmps, 1e-9);
    }

    private static DesignInput Given(Load load) => new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.18,
        BrushDropVolts = 2,
        MachineConstant = 1.69,
        InertiaKgM2 = 2.5,
        Load = load,
        PeakAmps = 156,
        SwitchingAmps = 95,
        SectionOhms = [0.52, 0.31],
    };
}
