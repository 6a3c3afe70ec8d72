using System.Linq;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class ToleranceTests
{
    [Theory]
    [InlineData("5 %", ToleranceShape.Uniform, ToleranceBasis.Ratio, -0.05, 0.05)]
    [InlineData("-10 % to +10 %", ToleranceShape.Uniform, ToleranceBasis.Ratio, -0.1, 0.1)]
    [InlineData("uniform -10 % to 5 %", ToleranceShape.Uniform, ToleranceBasis.Ratio, -0.1, 0.05)]
    [InlineData("0.17 ohm to 240 mohm", ToleranceShape.Uniform, ToleranceBasis.Value, 0.17, 0.24)]
    [InlineData("20 mohm", ToleranceShape.Uniform, ToleranceBasis.Deviation, -0.02, 0.02)]
    [InlineData("normal 3 %", ToleranceShape.Normal, ToleranceBasis.Ratio, -0.09, 0.09)]
    [InlineData("normal 0.17 ohm to 0.24 ohm", ToleranceShape.Normal, ToleranceBasis.Value, 0.17, 0.24)]
    [InlineData("triangular 10 mohm", ToleranceShape.Triangular, ToleranceBasis.Deviation, -0.01, 0.01)]
    public void Parse_OneTolerance_IsReadInSi(string written, ToleranceShape shape, ToleranceBasis basis, double low, double high)
    {
        CaseTolerance read = Assert.Single(Sample.Parse($"[tolerances]\nmotor.armature-resistance = \"{written}\"\n").Tolerances);

        Assert.Equal((CaseKeys.MotorArmatureResistance, 2, shape, basis), (read.Key, read.Line, read.Shape, read.Basis));
        Assert.Equal(low, read.Low, 1e-15);
        Assert.Equal(high, read.High, 1e-15);
    }

    [Theory]
    [InlineData("[tolerances]\nsupply.voltage = \"5 %\"")]
    [InlineData("[tolerances]\n\"supply.voltage\" = \"5 %\"")]
    [InlineData("[tolerances.supply]\nvoltage = \"5 %\"")]
    [InlineData("tolerances.supply.voltage = \"5 %\"")]
    [InlineData("tolerances = { supply.voltage = \"5 %\" }")]
    [InlineData("tolerances = { supply = { voltage = \"5 %\" } }")]
    public void Parse_AnySpellingOfThePath_IsTheSameTolerance(string text) =>
        Assert.Equal((CaseKeys.SupplyVoltage, 0.05), Assert.Single(Sample.Parse(text + "\n").Tolerances) is var read ? (read.Key, read.High) : default);

    [Fact]
    public void Parse_Tolerances_LeaveTheNominalValuesAlone()
    {
        CaseFile read = Sample.Parse("supply.voltage = \"220 V\"\n[tolerances]\nsupply.voltage = \"5 %\"\nmotor.constant = \"3 %\"\n");

        Assert.Equal(220, read.Number(CaseKeys.SupplyVoltage));
        Assert.False(read.Has(CaseKeys.MotorConstant));
    }

    [Fact]
    public void Parse_WrongTolerances_ReportsAllOfThemAtOnce() =>
        Assert.Equal(
            """
            2: tolerances.suply.voltage: found an unknown quantity; allowed: supply.voltage is the nearest known one
            3: tolerances.supply.resistance: found "5 A", a current; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "10 mohm", with normal or triangular before it or without; a resistance in ohm, mohm, uohm or kohm
            4: tolerances.motor.armature-resistance: found "0.24 ohm to 0.17 ohm", the low limit above the high one; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "0.18 ohm", with normal or triangular before it or without
            5: tolerances.motor.poles: found an unknown quantity; allowed: of [motor]: armature-resistance, armature-inductance, brush-drop, inertia, constant, winding-temperature, magnet-temperature-coefficient, thermal-capacity, thermal-resistance
            6: tolerances.motor.kind: found a key that does not vary: it is part of the design, a setting or a choice; allowed: of [motor]: armature-resistance, armature-inductance, brush-drop, inertia, constant, winding-temperature, magnet-temperature-coefficient, thermal-capacity, thermal-resistance
            7: tolerances.sensors.speed-gain: found "1.02 V", with a unit; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "1.02", with normal or triangular before it or without
            8: tolerances.starter.sections: found "0.1 ohm to 0.2 ohm"; allowed: "5 %" or "-5 % to +10 %", with normal or triangular before it or without, of every value by itself
            9: tolerances.motor.winding-temperature: found "5 %", a percentage of a temperature; allowed: "LOW to HIGH" or one deviation in the manner of "95 degC", with normal or triangular before it or without
            10: tolerances.load.inertia: found "-5 % to 1 kg m2", one limit in percent and one not; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "1.9 kg m2", with normal or triangular before it or without
            11: tolerances.load.fan-torque: found "0 %", a deviation that is not above 0; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "0.002 N m s2/rad2", with normal or triangular before it or without
            12: tolerances.motor.inertia: found 5, a number without a unit; allowed: "5 %", "-5 % to +10 %", "LOW to HIGH" or one deviation in the manner of "0.6 kg m2", with normal or triangular before it or without
            """,
            string.Join('\n', Sample.Problems("""
                [tolerances]
                suply.voltage = "5 %"
                supply.resistance = "5 A"
                motor.armature-resistance = "0.24 ohm to 0.17 ohm"
                motor.poles = "5 %"
                motor.kind = "5 %"
                sensors.speed-gain = "1.02 V"
                starter.sections = "0.1 ohm to 0.2 ohm"
                motor.winding-temperature = "5 %"
                load.inertia = "-5 % to 1 kg m2"
                load.fan-torque = "0 %"
                motor.inertia = 5
                """).Split('\n').OrderBy(line => int.Parse(line.Split(':')[0], System.Globalization.CultureInfo.InvariantCulture))));

    [Fact]
    public void Parse_AToleranceTwice_IsRefused() =>
        Assert.Equal(
            "3: tolerances.supply.voltage: found it a second time, after line 2; allowed: once",
            Sample.Problems("[tolerances]\nsupply.voltage = \"5 %\"\n\"supply.voltage\" = \"5 %\"\n"));

    [Fact]
    public void PlantKeys_EachOfThem_AcceptsItsOwnExampleAsATolerance() =>
        Assert.All(PlantKeys.All, key =>
        {
            string written = key.Kind == CaseValueKind.Quantities ? "5 %" : key.Kind == CaseValueKind.Ratio ? "0.01" : key.Example.Trim('"').TrimStart('-');
            if (written == "0 rpm") written = "3 rpm";
            Assert.Same(key, Assert.Single(Sample.Parse($"[tolerances]\n{key.Path} = \"{written}\"\n").Tolerances).Key);
        });
}
