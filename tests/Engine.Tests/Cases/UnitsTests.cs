using System;
using System.Globalization;
using CsCheck;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class UnitsTests
{
    [Theory]
    [InlineData("220 V", Dimension.Voltage, 220)]
    [InlineData("15 mV", Dimension.Voltage, 0.015)]
    [InlineData("3.3 kV", Dimension.Voltage, 3300)]
    [InlineData("78 A", Dimension.Current, 78)]
    [InlineData("250 mA", Dimension.Current, 0.25)]
    [InlineData("1.5 kA", Dimension.Current, 1500)]
    [InlineData("0.18 ohm", Dimension.Resistance, 0.18)]
    [InlineData("10 mohm", Dimension.Resistance, 0.01)]
    [InlineData("15 uohm", Dimension.Resistance, 15e-6)]
    [InlineData("1.2 kohm", Dimension.Resistance, 1200)]
    [InlineData("2 H", Dimension.Inductance, 2)]
    [InlineData("0.6 mH", Dimension.Inductance, 0.0006)]
    [InlineData("80 uH", Dimension.Inductance, 80e-6)]
    [InlineData("90 W", Dimension.Power, 90)]
    [InlineData("15 kW", Dimension.Power, 15000)]
    [InlineData("1.1 MW", Dimension.Power, 1.1e6)]
    [InlineData("2 PS", Dimension.Power, 1470.9975)]
    [InlineData("70 N m", Dimension.Torque, 70)]
    [InlineData("35 mN m", Dimension.Torque, 0.035)]
    [InlineData("1.2 kN m", Dimension.Torque, 1200)]
    [InlineData("180 deg/s", Dimension.Speed, Math.PI)]
    [InlineData("30 rpm", Dimension.Speed, Math.PI)]
    [InlineData("60 r/min", Dimension.Speed, 2 * Math.PI)]
    [InlineData("7.5 rad/s", Dimension.Speed, 7.5)]
    [InlineData("8 s", Dimension.Time, 8)]
    [InlineData("15 ms", Dimension.Time, 0.015)]
    [InlineData("20 us", Dimension.Time, 20e-6)]
    [InlineData("2 min", Dimension.Time, 120)]
    [InlineData("0.5 h", Dimension.Time, 1800)]
    [InlineData("0.6 kg m2", Dimension.Inertia, 0.6)]
    [InlineData("25 g m2", Dimension.Inertia, 0.025)]
    [InlineData("85 kg cm2", Dimension.Inertia, 0.0085)]
    [InlineData("1.69 V s/rad", Dimension.MachineConstant, 1.69)]
    [InlineData("1.69 V s", Dimension.MachineConstant, 1.69)]
    [InlineData("1.69 N m/A", Dimension.MachineConstant, 1.69)]
    [InlineData("0.05 N m s/rad", Dimension.ViscousTorque, 0.05)]
    [InlineData("0.002 N m s2/rad2", Dimension.FanTorque, 0.002)]
    [InlineData("0.01 Wb", Dimension.Flux, 0.01)]
    [InlineData("12 mWb", Dimension.Flux, 0.012)]
    [InlineData("1800 J/K", Dimension.ThermalCapacity, 1800)]
    [InlineData("2.5 kJ/K", Dimension.ThermalCapacity, 2500)]
    [InlineData("0.15 K/W", Dimension.ThermalResistance, 0.15)]
    [InlineData("150 K/kW", Dimension.ThermalResistance, 0.15)]
    public void Parse_EveryUnit_GivesSi(string text, Dimension dimension, double siValue) =>
        Assert.Equal(siValue, Units.Parse(text, dimension), 1e-15 * siValue);

    [Theory]
    [InlineData("15 ms", 0.015)]
    [InlineData("0.1 ms", 0.0001)]
    [InlineData("20 us", 0.00002)]
    public void Parse_ThousandthPart_IsTheNearestDouble(string text, double seconds) =>
        Assert.Equal(seconds, Units.Parse(text, Dimension.Time));

    [Fact]
    public void Parse_Horsepower_MatchesPublished_Chk31_GeneralConstants() =>
        Assert.Equal(745.7, Units.Parse("1 hp", Dimension.Power), 0.05);

    [Fact]
    public void Parse_PoundFeetTimesRpm_GivesHorsepower_Chk31_GeneralConstants()
    {
        double watts = Units.Parse("5252.1 lb ft", Dimension.Torque) * Units.Parse("1 r/min", Dimension.Speed);

        Assert.Equal(Units.Parse("1 hp", Dimension.Power), watts, 745.7 * 0.1 / 5252.1);
    }

    [Fact]
    public void Parse_OneVoltSecond_Is104Point72VoltsPer1000Rpm_Chk31_GeneralConstants() =>
        Assert.Equal(1, Units.Parse("104.72 V/krpm", Dimension.MachineConstant), 0.005 / 104.72);

    [Fact]
    public void Parse_TorquePerKiloRpm_IsTorqueDividedByItsSpeed() =>
        Assert.Equal(
            1 / Units.Parse("1000 rpm", Dimension.Speed), Units.Parse("1 N m/krpm", Dimension.ViscousTorque), 1e-17);

    [Fact]
    public void Parse_PoundFoot_IsPoundTimesGravityTimesFoot() =>
        Assert.Equal(0.45359237 * 9.80665 * 0.3048, Units.Parse("1 lb ft", Dimension.Torque), 1e-15);

    [Fact]
    public void Parse_PoundSquareFoot_IsPoundTimesFootSquared() =>
        Assert.Equal(0.45359237 * 0.3048 * 0.3048, Units.Parse("1 lb ft2", Dimension.Inertia), 1e-15);

    [Theory]
    [InlineData("0.18ohm", Dimension.Resistance, 0.18)]
    [InlineData("0.18 Ω", Dimension.Resistance, 0.18)]
    [InlineData("0.18 \u2126", Dimension.Resistance, 0.18)]
    [InlineData("180 mΩ", Dimension.Resistance, 0.18)]
    [InlineData("80 \u00B5H", Dimension.Inductance, 80e-6)]
    [InlineData("80 \u03BCH", Dimension.Inductance, 80e-6)]
    [InlineData("70 N·m", Dimension.Torque, 70)]
    [InlineData("70 N*m", Dimension.Torque, 70)]
    [InlineData("70 Nm", Dimension.Torque, 70)]
    [InlineData("0.6 kg m^2", Dimension.Inertia, 0.6)]
    [InlineData("0.6 kg·m²", Dimension.Inertia, 0.6)]
    [InlineData("2 N·m·s²/rad²", Dimension.FanTorque, 2)]
    [InlineData("  8 s ", Dimension.Time, 8)]
    [InlineData("8\u00A0s", Dimension.Time, 8)]
    [InlineData("220  V", Dimension.Voltage, 220)]
    [InlineData("220\tV", Dimension.Voltage, 220)]
    [InlineData("\t220 \t  V\t", Dimension.Voltage, 220)]
    [InlineData("70   N m", Dimension.Torque, 70)]
    [InlineData("8 \u00A0 s", Dimension.Time, 8)]
    [InlineData("+1.5e-2 V", Dimension.Voltage, 0.015)]
    [InlineData("1E3V", Dimension.Voltage, 1000)]
    [InlineData(".5 V", Dimension.Voltage, 0.5)]
    [InlineData("5. V", Dimension.Voltage, 5)]
    [InlineData("-30 rpm", Dimension.Speed, -Math.PI)]
    public void Parse_OtherSpelling_IsTheSame(string text, Dimension dimension, double siValue) =>
        Assert.Equal(siValue, Units.Parse(text, dimension), 1e-15 * Math.Abs(siValue));

    [Theory]
    [InlineData("5 A", "\"5 A\", a current")]
    [InlineData("220", "\"220\", a number without a unit")]
    [InlineData("", "\"\", which does not begin with a number")]
    [InlineData("ohm", "\"ohm\", which does not begin with a number")]
    [InlineData("5 Ohm", "\"5 Ohm\", in the unknown unit \"Ohm\" (the nearest is \"ohm\")")]
    [InlineData("5 MOHM", "\"5 MOHM\", in the unknown unit \"MOHM\"")]
    [InlineData("5 %", "\"5 %\", a percentage")]
    [InlineData("NaN ohm", "\"NaN ohm\", which is not a finite number")]
    [InlineData("-inf ohm", "\"-inf ohm\", which is not a finite number")]
    [InlineData("Infinity ohm", "\"Infinity ohm\", which is not a finite number")]
    [InlineData("1e400 ohm", "\"1e400 ohm\", too large a number")]
    [InlineData("1e308 kohm", "\"1e308 kohm\", too large a number")]
    [InlineData("0,18 ohm", "\"0,18 ohm\", with a comma in the number (write a decimal point and no thousands separators)")]
    [InlineData("5 \u001b[2Johm", "\"5 \\u001B[2Johm\", in the unknown unit \"\\u001B[2Johm\"")]
    public void TryParse_NoResistance_SaysWhatItIs(string text, string expected)
    {
        Assert.False(Units.TryParse(text, Dimension.Resistance, out double siValue, out string found));

        Assert.Equal(expected, found);
        Assert.Equal(0, siValue);
    }

    [Theory]
    [InlineData("1150 RPM", Dimension.Speed, "rpm")]
    [InlineData("1150 Rpm", Dimension.Speed, "rpm")]
    [InlineData("30 rad/sec", Dimension.Speed, "rad/s")]
    [InlineData("5 Ohms", Dimension.Resistance, "ohm")]
    [InlineData("5 milliohms", Dimension.Resistance, "mohm")]
    [InlineData("220 volt", Dimension.Voltage, "V")]
    [InlineData("220 Volts", Dimension.Voltage, "V")]
    [InlineData("220 v", Dimension.Voltage, "V")]
    [InlineData("2 kilovolts", Dimension.Voltage, "kV")]
    [InlineData("78 Amps", Dimension.Current, "A")]
    [InlineData("3 mh", Dimension.Inductance, "mH")]
    [InlineData("15 KW", Dimension.Power, "kW")]
    [InlineData("20 HP", Dimension.Power, "hp")]
    [InlineData("70 nm", Dimension.Torque, "N m")]
    [InlineData("8 sec", Dimension.Time, "s")]
    [InlineData("2 minutes", Dimension.Time, "min")]
    [InlineData("0.6 KG m2", Dimension.Inertia, "kg m2")]
    public void TryParse_UnknownUnit_NamesTheNearestOfThatDimension(string text, Dimension dimension, string nearest)
    {
        Assert.False(Units.TryParse(text, dimension, out _, out string found));

        Assert.EndsWith($" (the nearest is \"{nearest}\")", found);
    }

    [Theory]
    [InlineData("5 furlong", Dimension.Voltage)]
    [InlineData("5 Q", Dimension.Voltage)]
    [InlineData("5 MV", Dimension.Voltage)]
    [InlineData("5 Mohm", Dimension.Resistance)]
    [InlineData("5 rpmm", Dimension.Inductance)]
    public void TryParse_UnknownUnitNearNone_NamesNone(string text, Dimension dimension)
    {
        Assert.False(Units.TryParse(text, dimension, out _, out string found));

        Assert.EndsWith($", in the unknown unit \"{text[2..]}\"", found);
    }

    [Fact]
    public void Parse_WrongDimension_ThrowsWithWhatIsAllowed()
    {
        FormatException fault = Assert.Throws<FormatException>(() => Units.Parse("5 A", Dimension.Resistance));

        Assert.Equal("found \"5 A\", a current; allowed: a resistance in ohm, mohm, uohm or kohm", fault.Message);
    }

    [Fact]
    public void Allowed_EveryDimension_NamesItAndItsUnits()
    {
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            Assert.Matches("^an? [a-z ]+ in [^;]+$", Units.Allowed(dimension));
        }
    }

    [Fact]
    public void Parse_NegativeZero_IsZero() =>
        Assert.False(double.IsNegative(Units.Parse("-0 V", Dimension.Voltage)));

    [Fact]
    public void Parse_AnyNumberWritten_ComesBackExactly() =>
        Gen.Double[-1e300, 1e300].Sample(volts =>
            Units.Parse(volts.ToString("R", CultureInfo.InvariantCulture) + " V", Dimension.Voltage) == volts);

    [Fact]
    public void Parse_AnyMillivolts_IsAThousandthToOneRounding() =>
        Gen.Double[-1e6, 1e6].Sample(number =>
            Units.Parse(number.ToString("R", CultureInfo.InvariantCulture) + "mV", Dimension.Voltage) == number / 1000);

    [Fact]
    public void TryParse_AnyText_NeverThrows() =>
        Gen.String.Sample(text => Units.TryParse(text, Dimension.Torque, out _, out string found) == (found.Length == 0));
}
