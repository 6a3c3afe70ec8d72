using System;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseFileTests
{
    [Fact]
    public void Parse_CompleteCase_GivesEveryKeyInSi()
    {
        CaseFile read = Sample.Parse(Sample.Text);

        foreach (CaseKey key in CaseKeys.All.Where(key => key.Table != "event")) Assert.True(read.Has(key), key.Path);
        Assert.Equal("Line-shaft drive", read.Text(CaseKeys.Title));
        Assert.Equal(0.01, read.Number(CaseKeys.SupplyResistance));
        Assert.Equal(130 * 0.3048, read.Number(CaseKeys.SupplyCableLength), 1e-12);
        Assert.Equal(25e-6, read.Number(CaseKeys.SupplyCableArea), 1e-18);
        Assert.Equal(300, read.Number(CaseKeys.DutyRest));
        Assert.Equal([95, 80], read.Numbers(CaseKeys.ContactorsRatedCurrent));
        Assert.Equal(15000, read.Number(CaseKeys.MotorRatedPower));
        Assert.Equal(0.87, read.Number(CaseKeys.MotorEfficiency));
        Assert.Equal(4, read.Count(CaseKeys.MotorPoles));
        Assert.Equal([2500, 1800], read.Numbers(CaseKeys.StarterSectionThermalCapacity));
        Assert.Equal(0.3, read.Number(CaseKeys.FieldThermalResistance));
        Assert.Equal(-Math.PI, read.Number(CaseKeys.LoadSpeed), 1e-12);
        Assert.Equal("last section", read.Text(CaseKeys.StarterSlack));
        Assert.Equal([0.52, 0.31], read.Numbers(CaseKeys.StarterSections));
        Assert.Equal([90, 140], read.Numbers(CaseKeys.StarterCutoutVoltages));
        Assert.Equal(0.001, read.Number(CaseKeys.ControlPeriod));
        Assert.Equal(double.PositiveInfinity, read.Number(CaseKeys.ControlLockoutCurrent));
        Assert.Equal(120_000, read.Number(CaseKeys.ProtectionResistorEnergy));
        Assert.Equal(350, read.Number(CaseKeys.ProtectionResistorTemperature));
        Assert.Equal(78, read.Number(CaseKeys.ProtectionOverloadCurrent), 1e-12);
        Assert.Equal(0.75, read.Number(CaseKeys.ProtectionOverloadReset));
        Assert.Equal(0.8, Sample.Parse("title = \"empty\"\n").Number(CaseKeys.ProtectionOverloadReset));
        Assert.False(read.IsYes(CaseKeys.SensorsStageContacts));
    }

    [Fact]
    public void Parse_CompleteEvent_GivesEveryKey()
    {
        CaseEvent happening = Sample.Parse("""
            [[event]]
            at = "7 s"
            supply-voltage = "180 V"
            command = "emergency stop"
            field-supply-voltage = "80 V"
            field = "open"
            speed-signal = "lost"
            shaft = "locked"
            contact = "stage 2"
            contact-fault = "welded"
            permissives = 0
            current-gain = 1.1
            resistor-temperature = "320 degC"
            sensor = "armature current"
            sensor-fault = "open wire"
            ambient-temperature = "55 degC"
            cooling = "blocked"
            """).Events[0];

        Assert.Equal(
            new CaseEvent(7, null, 180, "emergency stop", happening.Line)
            {
                FileName = Sample.File,
                FieldSupplyVolts = 80,
                Field = "open",
                SpeedSignal = "lost",
                Shaft = "locked",
                Contact = "stage 2",
                ContactFault = "welded",
                Permissives = 0,
                CurrentGain = 1.1,
                ResistorCelsius = 320,
                Sensor = "armature current",
                SensorFault = "open wire",
                AmbientCelsius = 55,
                Cooling = "blocked",
            },
            happening);
    }

    [Fact]
    public void Number_PercentOfRatedCurrent_IsAmperes() =>
        Assert.Equal(156, Sample.Parse(Sample.Text).Number(CaseKeys.StarterPeakCurrent), 1e-12);

    [Fact]
    public void Number_PercentBeforeItsWhole_IsAmperes() =>
        Assert.Equal(60, Sample.Parse("""
            [limits]
            peak-current = "150%"
            [motor]
            rated-current = "40 A"
            """).Number(CaseKeys.LimitsPeakCurrent), 1e-12);

    [Fact]
    public void Events_TwoOfThem_KeepTheirOrderAndLines()
    {
        CaseFile read = Sample.Parse(Sample.Text);

        int firstLine = 1 + Sample.Text[..Sample.Text.IndexOf("[[event]]", StringComparison.Ordinal)].Count(letter => letter == '\n');
        Assert.Equal(
            [
                new CaseEvent(5, 120, null, null, firstLine) { FileName = Sample.File },
                new CaseEvent(7, null, 180, "emergency stop", firstLine + 4) { FileName = Sample.File },
            ],
            read.Events);
    }

    [Fact]
    public void Number_LeftOut_IsTheDefault()
    {
        CaseFile read = Sample.Parse("[supply]\nvoltage = \"48 V\"\n");

        Assert.False(read.Has(CaseKeys.ControlPeriod));
        Assert.Equal(0.001, read.Number(CaseKeys.ControlPeriod));
        Assert.Equal("1 ms", read.Written(CaseKeys.ControlPeriod));
        Assert.Equal(0, read.Number(CaseKeys.LoadFanTorque));
        Assert.Equal(double.PositiveInfinity, read.Number(CaseKeys.ControlLockoutCurrent));
        Assert.Equal("separately excited", read.Text(CaseKeys.MotorKind));
        Assert.Equal("untitled", read.Text(CaseKeys.Title));
        Assert.Empty(read.Events);
    }

    [Fact]
    public void Default_OfEveryKey_IsAccepted()
    {
        CaseFile read = Sample.Parse("[run]\n");

        foreach (CaseKey key in CaseKeys.All.Where(key => key.DefaultText is not null))
        {
            if (key.Range is null) Assert.NotEmpty(read.Text(key));
            else if (!key.AllowsNone) Assert.True(key.Range.Contains(read.Number(key)), key.Path);
        }
    }

    [Fact]
    public void Written_InTheFile_IsUnchanged()
    {
        CaseFile read = Sample.Parse(Sample.Text);

        Assert.Equal("200 %", read.Written(CaseKeys.StarterPeakCurrent));
        Assert.Equal("0.52 ohm, 0.31 ohm", read.Written(CaseKeys.StarterSections));
        Assert.Equal("0.87", read.Written(CaseKeys.MotorEfficiency));
    }

    [Theory]
    [InlineData("motor.inertia = \"2 kg m2\"\nmotor.construction.poles = 6\nevent = [{ at = \"1 s\", command = \"stop\" }]\n")]
    [InlineData("motor = { inertia = \"2 kg m2\", construction = { poles = 6 } }\n[[event]]\nat = \"1 s\"\ncommand = \"stop\"\n")]
    [InlineData("[\"motor\"]\n\"inertia\" = '2 kg m2'\nconstruction.poles = 6\n[[\"event\"]]\n'at' = \"1 s\"\ncommand = \"stop\"\n")]
    [InlineData("[motor.construction]\npoles = 0b110\n[motor]\ninertia = \"\"\"2 kg m2\"\"\"\n[[event]]\nat='1 s'\ncommand='stop'\n")]
    public void Parse_OtherSpellingOfTables_IsTheSame(string text)
    {
        CaseFile read = Sample.Parse(text);

        Assert.Equal(2, read.Number(CaseKeys.MotorInertia));
        Assert.Equal(6, read.Count(CaseKeys.MotorPoles));
        Assert.Equal("stop", Assert.Single(read.Events).Command);
    }

    [Fact]
    public void Parse_WindowsLineEndsAndByteOrderMark_AreFine()
    {
        CaseFile read = Sample.Parse("\uFEFF" + Sample.Text.Replace("\n", "\r\n", StringComparison.Ordinal));

        Assert.Equal(Sample.Parse(Sample.Text).Events, read.Events);
    }

    [Fact]
    public void Sha256_OfAText_IsThatOfItsBytes() =>
        Assert.Equal(
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Sample.Text))), Sample.Parse(Sample.Text).Sha256);

    [Fact]
    public void Require_MissingKeys_NamesEveryOneOnTheLineOfItsTable()
    {
        CaseFile read = Sample.Parse("title = \"x\"\n[motor]\nrated-power = \"15 kW\"\n");

        CaseException fault = Assert.Throws<CaseException>(() => read.Require(
            CaseKeys.SupplyVoltage, CaseKeys.MotorRatedPower, CaseKeys.MotorInertia, CaseKeys.MotorBrushDrop));

        Assert.Equal(
            "line-shaft.toml: supply.voltage: found nothing; allowed: a voltage in V, mV or kV, above 0, up to 100 kV, e.g. \"220 V\"\n"
            + "line-shaft.toml:2: motor.inertia: found nothing; allowed: a moment of inertia in kg m2, g m2, kg cm2 or lb ft2, "
            + "above 0, up to 1e9 kg m2, e.g. \"0.6 kg m2\"",
            fault.Message);
    }

    [Fact]
    public void Number_LeftOutWithoutDefault_ThrowsAsRequireDoes()
    {
        CaseFile read = Sample.Parse("[run]\n");

        CaseException fault = Assert.Throws<CaseException>(() => read.Number(CaseKeys.MotorInertia));

        Assert.StartsWith("line-shaft.toml: motor.inertia: found nothing; allowed: ", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Problem_OfALaterStage_PointsToTheLineOfTheKey()
    {
        CaseFile read = Sample.Parse("[starter]\nstages = 3\n");

        Assert.Equal(
            "line-shaft.toml:2: starter.stages: found 3; allowed: 5 or more",
            read.Problem(CaseKeys.StarterStages, "3", "5 or more").ToString());
    }

    [Fact]
    public void Number_OfATextOrAnEvent_IsAMistakeOfTheProgram()
    {
        CaseFile read = Sample.Parse(Sample.Text);

        Assert.Throws<ArgumentException>(() => read.Number(CaseKeys.Title));
        Assert.Throws<ArgumentException>(() => read.Number(CaseKeys.EventAt));
        Assert.Throws<ArgumentException>(() => read.Text(CaseKeys.MotorInertia));
        Assert.Throws<ArgumentException>(() => read.Count(CaseKeys.MotorInertia));
    }
}
