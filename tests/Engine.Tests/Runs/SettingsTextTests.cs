using System;
using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class SettingsTextTests
{
    [Fact]
    public void Text_AnySettings_ComeBackBitForBit() =>
        Rigs.Any.Sample(rig =>
        {
            Settings settings = rig.Settings();

            Settings back = SettingsText.Read(SettingsText.Write(settings));

            Assert.Equal(SettingsText.Write(settings), SettingsText.Write(back));
            Assert.Equal(SettingsChecksum.Of(settings), SettingsChecksum.Of(back));
            for (int i = 0; i < settings.StageCount; i++)
            {
                Assert.Equal(settings.StageOhms[i], back.StageOhms[i]);
                Assert.Equal(settings.VoltsLeft[i], back.VoltsLeft[i]);
            }
        });

    [Fact]
    public void Text_IsReadable()
    {
        string text = SettingsText.Write(Set());

        Assert.StartsWith("version = 2\nstage-count = 1\nstage-ohms.1 = 2.5 ohm\nstage-ohms.2 = 0.5 ohm\nvolts-left.1 = 50 V\n", text, StringComparison.Ordinal);
        Assert.Contains("\nminimum-dwell = 100000 us\n", text, StringComparison.Ordinal);
        Assert.Contains("\ncurve-points = 0\narmature-reaction = 0\n", text, StringComparison.Ordinal);
        Assert.Matches("\nchecksum = 0x[0-9A-F]{8}\n$", text);
    }

    [Fact]
    public void Text_MagnetisationCurve_IsNumberedAndComesBack()
    {
        Settings settings = Set();
        settings.FluxSource = FluxSource.FieldCurrent;
        settings.FieldSensorFitted = true;
        settings.CurvePoints = 2;
        settings.CurveAmps = [0f, 1.5f];
        settings.CurveConstants = [0.1f, 1.25f];

        string text = SettingsText.Write(settings);
        Settings back = SettingsText.Read(text);

        Assert.Contains("\ncurve-points = 2\ncurve-amps.1 = 0 A\ncurve-amps.2 = 1.5 A\ncurve-constants.1 = 0.1 V s/rad\ncurve-constants.2 = 1.25 V s/rad\n", text, StringComparison.Ordinal);
        Assert.Equal(text, SettingsText.Write(back));
        Assert.Equal((1.5f, 1.25f), (back.CurveAmps[1], back.CurveConstants[1]));
    }

    [Theory]
    [InlineData("version = 2", "version = 1", "version: found 1; allowed: 2")]
    [InlineData("volts-left.1 = 50 V", "volts-left.1 = 51 V", "checksum: found")]
    [InlineData("volts-left.1 = 50 V", "volts-left.1 = 50 A", "volts-left.1: found 50 A; allowed: above 0 to 1E+6 V")]
    [InlineData("volts-left.1 = 50 V", "volts-left.1 = NaN V", "volts-left.1: found NaN V")]
    [InlineData("stage-count = 1", "stage-count = 99", "stage-count: found 99; allowed: a whole number, 1 to 16")]
    [InlineData("stage-count = 1", "stage-count = 1.5", "stage-count: found 1.5; allowed: a whole number")]
    [InlineData("brush-drop = 0 V\n", "", "brush-drop: found nothing")]
    [InlineData("brush-drop = 0 V\n", "brush-drop = 0 V\nbrush-drop = 0 V\n", "brush-drop stands twice")]
    [InlineData("brush-drop = 0 V\n", "brush-drop = 0 V\nmagic = 1\n", "magic: found a setting that this set does not have")]
    [InlineData("brush-drop = 0 V", "brush-drop: 0 V", "allowed: name = value")]
    public void Read_Spoilt_SaysWhat(string found, string replacement, string words)
    {
        string text = SettingsText.Write(Set()).Replace(found, replacement, StringComparison.Ordinal);

        FormatException error = Assert.Throws<FormatException>(() => SettingsText.Read(text));

        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    private static Settings Set() => new()
    {
        StageCount = 1,
        StageOhms = [2.5f, 0.5f],
        VoltsLeft = [50f],
        MachineConstant = 1f,
        PeakAmps = 50f,
        InstantTripAmps = 100f,
        HighestSupplyVolts = 200f,
        HighestSpeedRadPerSec = 300f,
        MinimumDwellMicroseconds = 100_000,
    };
}
