using System;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>The cable and the bus before the starter. Source: tests/published/SOURCES.md, CHK-40; closed forms by Ohm's law.</summary>
public sealed class CableTests
{
    // IEC 60228, largest resistance at 20 degC, classes 1 and 2, ohm/km.
    [Theory]
    [Trait("Source", "CHK-40")]
    [InlineData("copper", 1.5, 12.1)]
    [InlineData("copper", 2.5, 7.41)]
    [InlineData("copper", 16, 1.15)]
    [InlineData("copper", 25, 0.727)]
    [InlineData("copper", 50, 0.387)]
    [InlineData("copper", 120, 0.153)]
    [InlineData("aluminium", 16, 1.91)]
    [InlineData("aluminium", 50, 0.641)]
    [InlineData("aluminium", 240, 0.125)]
    public void Cable_NominalArea_HasTheLargestResistanceOfItsStandard(string material, double squareMillimetres, double ohmsPerKilometre)
    {
        Cable cable = new(ConductorMaterial.Named(material), 1000, squareMillimetres * 1e-6, 20);

        Assert.Equal(2 * ohmsPerKilometre, cable.Ohms, 1e-9);
        // No true area: what resistivity over area says is less, by an eighth at most.
        Assert.InRange(cable.Material.OhmMetres / cable.SquareMetres * 1000, 0.87 * ohmsPerKilometre, ohmsPerKilometre);
    }

    [Theory]
    [Trait("Source", "CHK-40")]
    [InlineData("copper", 1 / 58.0)]
    [InlineData("aluminium", 0.028264)]
    public void Cable_OtherArea_HasResistivityOverArea(string material, double ohmSquareMillimetresPerMetre) =>
        Assert.Equal(2 * 10 * ohmSquareMillimetresPerMetre / 60, new Cable(ConductorMaterial.Named(material), 10, 60e-6, 20).Ohms, 1e-12);

    // The corrections of IEC 60228 take a measured resistance to 20 degC; its short table takes 0.004 per kelvin, within 0.5 % of the exact ones.
    [Theory]
    [Trait("Source", "CHK-40")]
    [InlineData(5, 1.064)]
    [InlineData(50, 0.893)]
    [InlineData(70, 0.833)]
    [InlineData(90, 0.781)]
    public void Cable_Warm_HasTheResistanceOfItsTemperature(double celsius, double correction)
    {
        foreach (ConductorMaterial material in (ConductorMaterial[])[ConductorMaterial.Copper, ConductorMaterial.Aluminium])
        {
            double ratio = new Cable(material, 40, 25e-6, celsius).Ohms / new Cable(material, 40, 25e-6, 20).Ohms;
            Assert.InRange(ratio * correction, 0.995, 1.005);
        }
    }

    // 2 x 40 m of 25 mm2 copper at 70 degC: 80 x 0.727e-3 x 304.5 / 254.5 = 0.0695863 ohm.
    [Fact]
    public void Run_Cable_IsPartOfTheOneResistanceBeforeTheTerminals()
    {
        const double CableOhms = 80 * 0.727e-3 * 304.5 / 254.5;
        RunResult cable = LineShaftCase.Run(LineShaftCase.With(("supply.cable-length", "40 m"), ("supply.cable-area", "25 mm2"))).Result;
        RunResult resistance = LineShaftCase.Run(LineShaftCase.With(("supply.resistance", FormattableString.Invariant($"{0.01 + CableOhms:R} ohm")))).Result;

        Assert.Equal(0.0695863, CableOhms, 5e-8);
        Assert.Equal(resistance.PeakAmps, cable.PeakAmps, 1e-9);
        Assert.Equal(resistance.SourceJoules, cable.SourceJoules, 1e-6);
        Assert.True(cable.SourceJoules > 5 * LineShaftCase.Run(LineShaftCase.With()).Result.SourceJoules);
    }

    // At 155 A: 155 x 69.586 mohm = 10.786 V in the cable, 155 x 30 mohm = 4.65 V in the bus; 5 % of 220 V over 30 mohm = 366.67 A.
    [Fact]
    public void SupplyLoading_LineShaft_FollowsOhmsLaw()
    {
        SupplyLoading loading = Loading(("supply.resistance", "30 mohm"), ("supply.cable-length", "40 m"), ("supply.cable-area", "25 mm2"), ("supply.permitted-dip", "0.05"))!;

        Assert.Equal(["rated", "peak"], [loading.Points[0].Name, loading.Points[1].Name]);
        Assert.Equal((155, 10.786, 4.65 / 220, 220 - 10.786 - 4.65), (loading.Points[1].LineAmps, loading.Points[1].CableVolts, loading.Points[1].BusDipFraction, loading.Points[1].TerminalVolts), Near(0.001));
        Assert.Equal(77 * 0.0695863 / 220, loading.Points[0].CableFraction, 1e-6);
        Assert.Equal(366.667, loading.PermittedLineAmps!.Value, 0.001);
        Assert.Equal(366.667 * 77 / 155, loading.LargestRatedAmps!.Value, 0.001);
        Assert.Equal(366.667 * 77 / ((220 - 2) / 0.17), loading.LargestDirectRatedAmps!.Value, 0.001);
        Assert.False(loading.IsExceeded);
    }

    // The motor that is as large as the dip permits dips the bus by just so much.
    [Theory]
    [InlineData("0.02", true)]
    [InlineData("0.0212", false)]
    public void SupplyLoading_PermittedDip_IsWhereItIsExceeded(string permitted, bool isExceeded) =>
        Assert.Equal(isExceeded, Loading(("supply.resistance", "30 mohm"), ("supply.permitted-dip", permitted))!.IsExceeded);

    // 110 ohm of shunt winding take 2 A more from the bus, whatever the armature does.
    [Fact]
    public void SupplyLoading_ShuntMotor_CountsItsFieldToo()
    {
        SupplyLoading loading = Loading(("motor.kind", "shunt"), ("field.resistance", "110 ohm"), ("supply.cable-length", "10 m"), ("supply.cable-area", "16 mm2"))!;

        Assert.Equal(157, loading.Points[1].LineAmps, 1e-9);
        Assert.Equal(79, loading.Points[0].LineAmps, 1e-9);
    }

    [Fact]
    public void SupplyLoading_CaseWithoutItsKeys_IsNotThere() => Assert.Null(Loading());

    [Theory]
    [InlineData("supply.cable-length", "40 m", "supply.cable-area in the file")]
    [InlineData("supply.cable-area", "25 mm2", "supply.cable-length in the file")]
    [InlineData("supply.cable-material", "aluminium", "supply.cable-length in the file")]
    [InlineData("supply.cable-temperature", "60 degC", "supply.cable-length in the file")]
    public void Design_CableKeyAlone_IsRefusedAndSaysWhatItNeeds(string key, string value, string needed)
    {
        CaseProblem problem = Assert.Single(Assert.Throws<CaseException>(() => CaseDesign.Of(LineShaftCase.With((key, value)))).Problems);

        Assert.Equal((key, needed), (problem.Key, problem.Allowed));
        Assert.True(problem.Line > 0);
    }

    [Fact]
    public void Design_PermittedDipOfAStiffBus_IsRefused()
    {
        CaseFile file = LineShaftCase.With(("supply.resistance", null), ("supply.permitted-dip", "0.05"));

        Assert.Equal("supply.permitted-dip", Assert.Single(Assert.Throws<CaseException>(() => CaseDesign.Of(file)).Problems).Key);
    }

    private static SupplyLoading? Loading(params (string Key, string? Value)[] changes) => SupplyLoading.Of(CaseDesign.Of(LineShaftCase.With(changes)));

    private static Func<(double, double, double, double), (double, double, double, double), bool> Near(double tolerance) => (a, b) =>
        Math.Abs(a.Item1 - b.Item1) < tolerance && Math.Abs(a.Item2 - b.Item2) < tolerance && Math.Abs(a.Item3 - b.Item3) < tolerance && Math.Abs(a.Item4 - b.Item4) < tolerance;
}
