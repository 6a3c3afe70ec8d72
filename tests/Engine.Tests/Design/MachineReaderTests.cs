using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>From a case of each kind to the machine, its flux and its field circuit.</summary>
public sealed class MachineReaderTests
{
    private const double RadPerSecOf1000Rpm = 1000 * Math.PI / 30;

    [Fact]
    public void Prepare_SeparatelyExcitedWithMeasuredCurve_HasConstantsFromEmfs()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.SeparatelyExcited);
        CaseMachine machine = run.Designed.Machine;

        Assert.Equal(MachineKind.SeparatelyExcited, machine.Kind);
        Assert.Equal(new FieldCircuit { SupplyVolts = 110, Ohms = 100, Henries = 20 }, machine.Field);
        Assert.Equal((1.0, 0.0, 0.0), (machine.Flux!.FieldShare, machine.Flux.ArmatureShare, machine.Flux.ReactionRatio));
        Assert.Equal(148 / RadPerSecOf1000Rpm, machine.Flux.ConstantAt(0.6, 0), 1e-12);
        Assert.Equal(machine.Flux.ConstantAt(1.1, 0), run.Setup.Machine.Constant, 1e-12);
        Assert.Same(machine.Flux, run.Setup.Machine.Flux);
        Assert.Null(run.Designed.Input.Flux);
        Assert.StartsWith("From the magnetisation curve: k = ", run.Designed.Plate.ConstantSource, StringComparison.Ordinal);
    }

    [Fact]
    public void Prepare_CurveOfConstants_IsTheSameAsOfEmfs()
    {
        string constants = "curve-constants = [" + string.Join(", ", new double[] { 7, 82, 148, 190, 218, 232 }.Select(volts => FormattableString.Invariant($"\"{volts / RadPerSecOf1000Rpm:R} V s/rad\""))) + "]";

        CaseMachine machine = MachineCases.Machine(MachineCases.With(MachineCases.Without(MachineCases.Shunt, "curve-emfs", "curve-speed"), "field", constants));

        Assert.Equal(MachineCases.Machine(MachineCases.Shunt).Flux!.Curve.Constants, machine.Flux!.Curve.Constants, (left, right) => Math.Abs(left - right) < 1e-12);
    }

    [Fact]
    public void Prepare_Shunt_HasItsFieldOnTheMachinesSupply()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Shunt);
        CaseMachine machine = run.Designed.Machine;

        Assert.Equal(new FieldCircuit { SupplyVolts = 220, Ohms = 200, Henries = 40, IsShunt = true }, machine.Field);
        Assert.Equal(0.002, machine.Flux!.ReactionRatio);
        Assert.Equal(1.1, machine.RatedFieldAmps, 1e-12);
        Assert.Equal(machine.Flux.ConstantAt(1.1, 40), run.Setup.Machine.Constant, 1e-12);
        Assert.Equal(new ArmatureFlux(machine.Flux, 1.1), run.Designed.Input.Flux);
    }

    [Fact]
    public void Prepare_ShuntOnALowSupply_KeepsTheConstantOfTheRatedVoltage()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Shunt.Replace("[supply]\nvoltage = \"220 V\"", "[supply]\nvoltage = \"180 V\"", StringComparison.Ordinal));

        Assert.Equal(run.Designed.Machine.Flux!.ConstantAt(1.1, 40), run.Setup.Machine.Constant, 1e-12);
        Assert.Equal(0.9, run.Designed.Input.Flux!.FieldAmps, 1e-12);
    }

    [Fact]
    public void Of_ShuntWithoutCurve_IsDesignedWithoutItsField()
    {
        string text = MachineCases.Without(MachineCases.Shunt, "resistance", "inductance", "armature-reaction", "curve-currents", "curve-emfs", "curve-speed");

        CaseDesign design = CaseDesign.Of(CaseFile.Parse("case.toml", text));

        Assert.Null(design.Machine.Field);
        Assert.Contains("field.resistance: found nothing; allowed: a resistance", MachineCases.Refused(text), StringComparison.Ordinal);
    }

    [Fact]
    public void Prepare_Series_HasItsFluxOverTheArmatureCurrentAlone()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Series);
        FluxLaw law = run.Setup.Machine.Flux!;

        Assert.Equal((MachineKind.Series, null), (run.Designed.Machine.Kind, run.Setup.Field));
        Assert.Equal((0.0, 1.0), (law.FieldShare, law.ArmatureShare));
        Assert.Equal(0.32, run.Setup.Machine.ArmatureOhms, 1e-15);
        Assert.Equal(0.007, run.Setup.Machine.ArmatureHenries, 1e-15);
        Assert.Equal(197.5 / (0.75 * RadPerSecOf1000Rpm), run.Setup.Machine.Constant, 1e-12);
        Assert.Equal(new ArmatureFlux(law, 0), run.Designed.Input.Flux);
    }

    [Fact]
    public void Prepare_LongShunt_CarriesTheArmatureCurrentAlone()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Compound);
        FluxLaw law = run.Setup.Machine.Flux!;

        Assert.Equal(MachineKind.LongShuntCompound, run.Designed.Machine.Kind);
        Assert.Equal((1.0, 0.006, 0.001), (law.FieldShare, law.ArmatureShare, law.ReactionRatio));
        Assert.Equal((0.3, 0.0), (run.Setup.Machine.ArmatureOhms, run.Setup.Field!.SharedOhms));
        Assert.Equal(law.ConstantAt(220.0 / 180, 52), run.Setup.Machine.Constant, 1e-12);
        Assert.Equal(new ArmatureFlux(law, 220.0 / 180), run.Designed.Input.Flux);
    }

    [Fact]
    public void Prepare_ShortShunt_SharesTheSeriesWinding()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.ShortShunt);
        FluxLaw law = run.Setup.Machine.Flux!;

        Assert.Equal(MachineKind.ShortShuntCompound, run.Designed.Machine.Kind);
        Assert.Equal((1.006, 0.006), (law.FieldShare, law.ArmatureShare));
        Assert.Equal((0.25, 0.05), (run.Setup.Machine.ArmatureOhms, run.Setup.Field!.SharedOhms));
        Assert.Equal(0.3, run.Designed.Input.ArmatureOhms, 1e-15);
        Assert.Equal(220 / 180.05, run.Designed.Machine.StandingFieldAmps, 1e-12);
    }

    [Fact]
    public void Prepare_Differential_TakesAwayAndWarns()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Text("differential"));

        Assert.Equal(-0.001, run.Setup.Machine.Flux!.ArmatureShare);
        Assert.Contains(run.Designed.Warnings, warning => warning.Contains("differential compound motor can run away or turn round under load", StringComparison.Ordinal));
    }

    [Fact]
    public void Prepare_WarmMachine_CorrectsItsWindingsAndNotWhatThePlateSays()
    {
        string text = MachineCases.With(MachineCases.ShortShunt, "motor", "resistance-temperature = \"20 degC\"", "winding-temperature = \"125 degC\"");
        PreparedRun cold = MachineCases.Prepare(MachineCases.ShortShunt), warm = MachineCases.Prepare(text);

        double ratio = 360.0 / 255;
        Assert.Equal(0.25 * ratio, warm.Setup.Machine.ArmatureOhms, 1e-12);
        Assert.Equal((180 * ratio, 0.05 * ratio), (warm.Setup.Field!.Ohms, warm.Setup.Field.SharedOhms));
        Assert.Equal(0.3 * ratio, warm.Designed.Design.ArmatureOhms, 1e-12);
        Assert.Equal(cold.Setup.Machine.Constant, warm.Setup.Machine.Constant);
        Assert.Equal(cold.Setup.Machine.BrushDropVolts, warm.Setup.Machine.BrushDropVolts);
        Assert.Equal(cold.Designed.Input.Flux!.FieldAmps / ratio, warm.Designed.Input.Flux!.FieldAmps, 1e-12);
    }

    [Fact]
    public void Prepare_WarmMagnets_AreWeaker()
    {
        PreparedRun warm = MachineCases.Prepare(MachineCases.With(MachineCases.PermanentMagnet, "motor", "winding-temperature = \"70 degC\""));

        Assert.Equal(0.14, MachineCases.Prepare(MachineCases.PermanentMagnet).Setup.Machine.Constant);
        Assert.Equal(0.9 * 0.14, warm.Setup.Machine.Constant, 1e-12);
        Assert.Equal(0.3 * 305 / 255, warm.Setup.Machine.ArmatureOhms, 1e-12);
        Assert.EndsWith("At 70 degC the magnets make 0.126 V s/rad.", warm.Designed.Plate.ConstantSource, StringComparison.Ordinal);
    }

    [Fact]
    public void Prepare_PeakBehindTheCurve_Warns()
    {
        string text = MachineCases.Series.Replace("\"100 A\", \"160 A\"]", "\"100 A\", \"120 A\"]", StringComparison.Ordinal);

        Assert.Contains(
            MachineCases.Prepare(text).Designed.Warnings,
            warning => warning.StartsWith("At the peak current of 128 A the exciting current is 128 A, behind the last point of the magnetisation curve at 120 A", StringComparison.Ordinal));
        Assert.DoesNotContain(MachineCases.Prepare(MachineCases.Series).Designed.Warnings, warning => warning.Contains("magnetisation", StringComparison.Ordinal));
    }

    [Fact]
    public void Prepare_FieldAboveItsRatedWithoutCurve_Warns()
    {
        string text = MachineCases.With(MachineCases.Without(MachineCases.SeparatelyExcited, "curve-currents", "curve-emfs", "curve-speed"), "field", "rated-current = \"1 A\"");

        Assert.Contains(MachineCases.Prepare(text).Designed.Warnings, warning => warning.StartsWith("The field takes 1.1 A, more than its rated 1 A", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.88", false)]
    [InlineData("0.82", false)]
    [InlineData("0.9", true)]
    public void Prepare_EfficiencyBesidePowerVoltageAndCurrent_WarnsAbove5Percent(string efficiency, bool isWarned)
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.With(MachineCases.Shunt, "motor", "efficiency = " + efficiency));

        Assert.Equal(isWarned, run.Designed.Warnings.Contains($"The plate's efficiency is {efficiency}, but its power over its voltage and current is 0.8523."));
    }

    [Fact]
    public void Prepare_SeriesWindingInThePlatesEquation_IsNamed()
    {
        string text = MachineCases.Without(MachineCases.Series, "curve-emfs").Replace("curve-speed = \"750 rpm\"", "curve-constants = [\"0.1 V s/rad\", \"0.2 V s/rad\", \"0.3 V s/rad\", \"0.4 V s/rad\", \"0.5 V s/rad\", \"0.6 V s/rad\"]", StringComparison.Ordinal);

        // k of the plate: (220 - 2 - 64 x 0.32) / 78.54.
        Assert.Contains("field.curve-constants: found a curve that gives 0.4 V s/rad at 64 A; allowed: within 5 % of the machine constant of 2.515 V s/rad there", MachineCases.Refused(text), StringComparison.Ordinal);
    }
}
