using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>Whether a start gets through with a hoist or a load table on the shaft, and what is wrong with a table.</summary>
public sealed class LoadDesignTests
{
    private static readonly DesignInput Input = new()
    {
        SupplyVolts = 220,
        ArmatureOhms = 0.18,
        BrushDropVolts = 2,
        MachineConstant = 1.69,
        InertiaKgM2 = 2.5,
        PeakAmps = 156,
        SwitchingAmps = 95,
        Slack = Slack.LastSection,
    };

    // 169 N m take 169 / 1.69 = 100 A at any speed, more than the 95 A at which stage 1 is to end.
    [Fact]
    public void Design_HoistAboveTheSwitchingCurrent_IsRefusedWithStageAndCurrents()
    {
        DesignException refused = Assert.Throws<DesignException>(() => StarterDesigner.Design(Input with { Load = Hoist(169) }));

        Assert.Equal(DesignQuantity.SwitchingCurrent, refused.Quantity);
        Assert.Contains("a switching current of 95 A in stage 1, but the load takes 100 A", refused.Found, StringComparison.Ordinal);
        Assert.Contains("above 100 A", refused.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_CaseWithHoistAboveTheSwitchingCurrent_IsRefusedAtItsKey()
    {
        CaseFile file = LineShaftCase.With(("load.hoist-torque", "150 N m"), ("load.constant-torque", null), ("load.fan-torque", null), ("load.viscous-torque", null));

        CaseProblem problem = Assert.Single(Assert.Throws<CaseException>(() => CaseDesign.Of(file)).Problems);

        // k = (220 - 2 - 77 x 0.17) / (1250 pi / 30) = 1.5654 V s/rad.
        Assert.Equal("starter.switching-current", problem.Key);
        Assert.Contains("90 A in stage 1, but the load takes 95.82 A", problem.Found, StringComparison.Ordinal);
    }

    // A constant 70 N m and a hoist of 70 N m are one load while the shaft rises; one that drives shortens the start:
    // J R / k^2 ln((I1 - IL)/(I2 - IL)) with I1 = 156 A, I2 = 95 A and IL = -70/1.69 = -41.42 A.
    [Fact]
    public void Design_Hoist_TakesTheTimeOfItsTorque()
    {
        DesignedStage friction = Stage1(new Load(70, 0, 0)), raising = Stage1(Hoist(70)), lowering = Stage1(Hoist(-70));

        Assert.Equal(friction.ExpectedSeconds!.Value, raising.ExpectedSeconds!.Value, 1e-12);
        double load = -70 / 1.69;
        Assert.Equal(2.5 * lowering.TotalOhms / (1.69 * 1.69) * Math.Log((156 - load) / (95 - load)), lowering.ExpectedSeconds!.Value, 1e-9);
        Assert.Equal(load, lowering.LoadAmps!.Value, 1e-9);
    }

    // 300 N m at rest need 177.5 A; at 30 N m from 20 rad/s on, the rest of the start would be easy.
    [Fact]
    public void Design_BreakawayOfTheTableAboveThePeak_IsRefused()
    {
        DesignException refused = Assert.Throws<DesignException>(() => StarterDesigner.Design(Input with { Load = Table([0, 20, 130], [300, 30, 40]) }));

        Assert.Equal(DesignQuantity.PeakCurrent, refused.Quantity);
        Assert.Contains("156 A, but the load needs 177.5 A to turn at all", refused.Found, StringComparison.Ordinal);
    }

    // Stage 1 passes 156 A at rest and is cut out at 95 A, at (218 - 95 x 218/156) / 1.69 = 50.44 rad/s. Half-way there, at 25.22 rad/s,
    // 125.5 A make 212.1 N m: a hump of 230 N m holds the machine although both ends are easy.
    [Fact]
    public void Design_HumpBeforeTheCutout_IsRefusedWhereItHolds()
    {
        Load hump = Table([0, 15, 25.22, 35, 130], [20, 20, 230, 20, 20]);

        DesignException refused = Assert.Throws<DesignException>(() => StarterDesigner.Design(Input with { Load = hump }));

        Assert.Equal(DesignQuantity.SwitchingCurrent, refused.Quantity);
        Assert.Contains("in stage 1 at ", refused.Found, StringComparison.Ordinal);
        Assert.Contains("the stage would never end", refused.Found, StringComparison.Ordinal);
        double rpm = double.Parse(refused.Found.Split("in stage 1 at ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(rpm * Math.PI / 30, 15, 25.22);
        // 200 N m are passed, slowly.
        Assert.True(double.IsFinite(Stage1(Table([0, 15, 25.22, 35, 130], [20, 20, 200, 20, 20])).ExpectedSeconds!.Value));
    }

    [Fact]
    public void Design_HumpBeforeTheCutoutOfASeriesMotor_IsRefusedToo()
    {
        DesignInput series = FluxMachines.SeriesInput with { SectionOhms = [0.42, 0.62, 0.18] };
        DesignedStage first = StarterDesigner.Design(series).Stages[0];
        double cutout = first.CutoutRpm!.Value * Math.PI / 30;

        DesignException refused = Assert.Throws<DesignException>(() =>
            StarterDesigner.Design(series with { Load = Table([0, 0.3 * cutout, 0.5 * cutout, 0.7 * cutout], [5, 5, 400, 5]) }));

        Assert.Contains("in stage 1 at ", refused.Found, StringComparison.Ordinal);
        Assert.Contains("the stage would never end", refused.Found, StringComparison.Ordinal);
    }

    // Without load 218 V / 1.69 V s/rad = 128.99 rad/s = 1231.8 r/min.
    [Theory]
    [InlineData(1150, true)]
    [InlineData(1240, false)]
    public void Design_TableThatEndsBeforeTheNoLoadSpeed_SaysThatItsLastTorqueIsHeld(double rpm, bool warns)
    {
        StarterDesign design = StarterDesigner.Design(Input with { Load = Table([0, rpm * Math.PI / 30], [20, 45]) });

        string expected = "The load table ends at 1150 r/min, and without load the machine goes to 1232 r/min: beyond the table its last torque of 45 N m is held.";
        Assert.Equal(warns ? [expected] : [], design.Warnings.Where(warning => warning.StartsWith("The load table", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("0 rpm, 100 rpm, 100 rpm", "1 N m, 2 N m, 3 N m", "load.table-speeds", "speeds that begin with 0 rpm and rise")]
    [InlineData("0 rpm, 200 rpm, 100 rpm", "1 N m, 2 N m, 3 N m", "load.table-speeds", "speeds that begin with 0 rpm and rise")]
    [InlineData("10 rpm, 200 rpm", "1 N m, 2 N m", "load.table-speeds", "speeds that begin with 0 rpm and rise")]
    [InlineData("0 rpm, 100 rpm", "1 N m, 2 N m, 3 N m", "load.table-torques", "one for each of load.table-speeds")]
    [InlineData("0 rpm, 100 rpm", "1 N m, -2 N m", "load.table-torques", "0 to 100000 kN m")]
    [InlineData("0 rpm", "1 N m", "load.table-speeds", "2 to 24 values")]
    [InlineData("0 rpm, 100 rpm", null, "load.table-torques", "a list of 2 to 24 values")]
    [InlineData(null, "1 N m, 2 N m", "load.table-speeds", "a list of 2 to 24 values")]
    public void Case_WithATableThatIsNone_IsRefusedAtItsKey(string? speeds, string? torques, string key, string allowed)
    {
        string text = ShippedCase.Text("bench-rig");
        string table = (speeds == null ? "" : $"table-speeds = {Quoted(speeds)}\n") + (torques == null ? "" : $"table-torques = {Quoted(torques)}\n");
        text = text.Replace("[load]\n", "[load]\n" + table, StringComparison.Ordinal);

        CaseException refused = Assert.Throws<CaseException>(() => CaseDesign.Of(CaseFile.Parse("rig.toml", text)));

        CaseProblem problem = Assert.Single(refused.Problems, problem => problem.Key == key);
        Assert.Contains(allowed, problem.Allowed, StringComparison.Ordinal);
    }

    private static string Quoted(string values) => "[" + string.Join(", ", values.Split(", ").Select(value => $"\"{value}\"")) + "]";

    private static Load Hoist(double newtonMetres) => new(0, 0, 0) { HoistNewtonMetres = newtonMetres };

    private static Load Table(double[] radPerSec, double[] newtonMetres) => new(0, 0, 0) { Table = new LoadTable(radPerSec, newtonMetres) };

    private static DesignedStage Stage1(Load load) => StarterDesigner.Design(Input with { Load = load }).Stages[0];
}
