using System;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>One row per setting and way to spoil it; a spoilt set never closes anything.</summary>
public sealed class SettingsTests
{
    private const float TooLarge = 1_000_001f;

    public static TheoryData<string, SettingId> BadSettings
    {
        get
        {
            TheoryData<string, SettingId> rows = [];
            foreach ((string name, SettingId id, _) in Spoilers) rows.Add(name, id);
            return rows;
        }
    }

    private static readonly (string Name, SettingId Id, Action<Settings> Spoil)[] Spoilers =
    [
        ("count 0", SettingId.StageCount, s => s.StageCount = 0),
        ("count -1", SettingId.StageCount, s => s.StageCount = -1),
        ("count 17", SettingId.StageCount, s => s.StageCount = 17),
        ("count smallest int", SettingId.StageCount, s => s.StageCount = int.MinValue),
        ("count largest int", SettingId.StageCount, s => s.StageCount = int.MaxValue),
        ("ohms null", SettingId.StageOhms, s => s.StageOhms = null!),
        ("ohms too few", SettingId.StageOhms, s => s.StageOhms = [3f, 2f, 1f]),
        ("ohms NaN", SettingId.StageOhms, s => s.StageOhms[1] = float.NaN),
        ("ohms negative", SettingId.StageOhms, s => s.StageOhms[3] = -0.1f),
        ("ohms zero", SettingId.StageOhms, s => s.StageOhms[3] = 0f),
        ("ohms infinite", SettingId.StageOhms, s => s.StageOhms[0] = float.PositiveInfinity),
        ("ohms too large", SettingId.StageOhms, s => s.StageOhms[0] = TooLarge),
        ("ohms equal", SettingId.StageOhms, s => s.StageOhms[2] = s.StageOhms[1]),
        ("ohms rising", SettingId.StageOhms, s => s.StageOhms[3] = 1f),
        ("volts null", SettingId.VoltsLeft, s => s.VoltsLeft = null!),
        ("volts too few", SettingId.VoltsLeft, s => s.VoltsLeft = [125f, 62f]),
        ("volts NaN", SettingId.VoltsLeft, s => s.VoltsLeft[0] = float.NaN),
        ("volts negative", SettingId.VoltsLeft, s => s.VoltsLeft[2] = -1f),
        ("volts zero", SettingId.VoltsLeft, s => s.VoltsLeft[2] = 0f),
        ("volts infinite", SettingId.VoltsLeft, s => s.VoltsLeft[0] = float.PositiveInfinity),
        ("volts equal", SettingId.VoltsLeft, s => s.VoltsLeft[1] = s.VoltsLeft[0]),
        ("volts rising", SettingId.VoltsLeft, s => s.VoltsLeft[2] = 100f),
        ("constant", SettingId.MachineConstant, s => s.MachineConstant = 0f),
        ("constant NaN", SettingId.MachineConstant, s => s.MachineConstant = float.NaN),
        ("constant negative", SettingId.MachineConstant, s => s.MachineConstant = -1f),
        ("constant too large", SettingId.MachineConstant, s => s.MachineConstant = TooLarge),
        ("brushes negative", SettingId.BrushDropVolts, s => s.BrushDropVolts = -0.1f),
        ("brushes NaN", SettingId.BrushDropVolts, s => s.BrushDropVolts = float.NaN),
        ("brushes too large", SettingId.BrushDropVolts, s => s.BrushDropVolts = TooLarge),
        ("lockout zero", SettingId.LockoutAmps, s => s.LockoutAmps = 0f),
        ("lockout NaN", SettingId.LockoutAmps, s => s.LockoutAmps = float.NaN),
        ("lockout infinite", SettingId.LockoutAmps, s => s.LockoutAmps = float.PositiveInfinity),
        ("trip left out", SettingId.InstantTripAmps, s => s.InstantTripAmps = 0f),
        ("trip NaN", SettingId.InstantTripAmps, s => s.InstantTripAmps = float.NaN),
        ("trip negative", SettingId.InstantTripAmps, s => s.InstantTripAmps = -700f),
        ("supply left out", SettingId.HighestSupplyVolts, s => s.HighestSupplyVolts = 0f),
        ("supply NaN", SettingId.HighestSupplyVolts, s => s.HighestSupplyVolts = float.NaN),
        ("speed left out", SettingId.HighestSpeedRadPerSec, s => s.HighestSpeedRadPerSec = 0f),
        ("speed NaN", SettingId.HighestSpeedRadPerSec, s => s.HighestSpeedRadPerSec = float.NaN),
        ("slope zero", SettingId.SteadyAmpsPerSec, s => s.SteadyAmpsPerSec = 0f),
        ("slope NaN", SettingId.SteadyAmpsPerSec, s => s.SteadyAmpsPerSec = float.NaN),
        ("confirm negative", SettingId.ConfirmMicroseconds, s => s.ConfirmMicroseconds = -1),
        ("confirm too long", SettingId.ConfirmMicroseconds, s => s.ConfirmMicroseconds = Settings.LongestMicroseconds + 1),
        ("dwell negative", SettingId.MinimumDwellMicroseconds, s => s.MinimumDwellMicroseconds = -1),
        ("dwell too long", SettingId.MinimumDwellMicroseconds, s => s.MinimumDwellMicroseconds = int.MaxValue),
        ("maximum stage negative", SettingId.MaximumStageMicroseconds, s => s.MaximumStageMicroseconds = -1),
        ("maximum stage too long", SettingId.MaximumStageMicroseconds, s => s.MaximumStageMicroseconds = int.MaxValue),
        ("maximum stage at the dwell", SettingId.MaximumStageMicroseconds, s => s.MinimumDwellMicroseconds = s.MaximumStageMicroseconds),
        ("contact zero", SettingId.ContactMicroseconds, s => s.ContactMicroseconds = 0),
        ("contact negative", SettingId.ContactMicroseconds, s => s.ContactMicroseconds = -1),
        ("contact too long", SettingId.ContactMicroseconds, s => s.ContactMicroseconds = int.MaxValue),
    ];

    [Theory]
    [MemberData(nameof(BadSettings))]
    public void Settings_Spoilt_AreNamedAndNothingEverCloses(string name, SettingId id)
    {
        Bench bench = new(Array.Find(Spoilers, row => row.Name == name).Spoil);
        Assert.Equal(id, bench.Settings.FirstProblem());

        bench.Tick().PressStart().PressReset().PressStop().PressEmergencyStop().BackEmf(240f).PressStart().Ticks(20);

        Assert.Equal(Phase.NotSetUp, bench.Controller.Phase);
        bench.AssertAllOff();
        bench.AssertWhy(Reason.SettingsInvalid, (int)id, 0f);
        Assert.Equal((false, false, true), (bench.Outputs.ReadyLamp, bench.Outputs.RunningLamp, bench.Outputs.TrippedLamp));
    }

    [Fact]
    public void Settings_EverySetting_HasARow()
    {
        foreach (SettingId id in Enum.GetValues<SettingId>())
        {
            Assert.True(id == SettingId.None || Array.Exists(Spoilers, row => row.Id == id), id.ToString());
        }

        Assert.Equal(Enum.GetValues<SettingId>().Length - 1, typeof(Settings).GetFields().Length - 3);
    }

    [Fact]
    public void Settings_Untouched_AreRefused() =>
        Assert.Equal(SettingId.StageCount, new Settings().FirstProblem());

    [Fact]
    public void Settings_Chk01_AreSound() =>
        Assert.Equal(SettingId.None, Bench.Chk01().FirstProblem());

    [Fact]
    public void Settings_AtTheirBounds_AreSound()
    {
        Settings settings = Bench.Chk01();
        settings.BrushDropVolts = Settings.Largest;
        settings.LockoutAmps = Settings.Largest;
        settings.InstantTripAmps = Settings.Largest;
        settings.ConfirmMicroseconds = Settings.LongestMicroseconds;
        settings.MinimumDwellMicroseconds = Settings.LongestMicroseconds - 1;
        settings.MaximumStageMicroseconds = Settings.LongestMicroseconds;
        settings.ContactMicroseconds = 1;

        Assert.Equal(SettingId.None, settings.FirstProblem());
    }

    [Fact]
    public void Settings_NumbersBehindTheStageCount_AreNotLookedAt()
    {
        Settings settings = Bench.Chk01();
        settings.StageOhms[4] = float.NaN;
        settings.VoltsLeft[3] = -1f;

        Assert.Equal(SettingId.None, settings.FirstProblem());
    }

    [Fact]
    public void Table_HasOneRowForEverySetting_InTheOrderOfTheIds()
    {
        SettingId[] ids = [.. Enum.GetValues<SettingId>().Where(id => id != SettingId.None)];

        Assert.Equal(ids, SettingTable.Rows.Select(row => row.Id));
        Assert.Equal(ids.Length, SettingTable.Rows.Select(row => row.Name).Distinct().Count());
        Assert.All(SettingTable.Rows, row => Assert.True(row.Reason.Length > 20 && row.Lowest < row.Highest, row.Name));
    }

    [Fact]
    public void Table_Defaults_AreThoseOfANewSet()
    {
        Settings settings = new();
        foreach (SettingRow row in SettingTable.Rows.Where(row => row.DefaultText.Length > 0))
        {
            float written = float.Parse(row.DefaultText.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(written, SettingAccess.Get(settings, row.Id, 0));
        }

        foreach (SettingRow row in SettingTable.Rows.Where(row => row.DefaultText.Length == 0 && SettingAccess.Count(settings, row.Id) == 1))
        {
            Assert.False(row.Allows(SettingAccess.Get(settings, row.Id, 0)), row.Name);
        }
    }

    [Fact]
    public void Check_SeveralSpoilt_NamesThemAll()
    {
        Settings settings = Bench.Chk01();
        settings.MachineConstant = float.NaN;
        settings.VoltsLeft[1] = 200f;
        settings.ContactMicroseconds = 0;
        SettingsCheck check = new();

        check.Run(settings);

        Assert.Equal([SettingId.VoltsLeft, SettingId.MachineConstant, SettingId.ContactMicroseconds], check.Found.Take(check.Count));
    }

    [Fact]
    public void Checksum_EveryValue_ChangesIt()
    {
        int before = SettingsChecksum.Of(Bench.Chk01());
        foreach (SettingRow row in SettingTable.Rows)
        {
            for (int i = 0; i < SettingAccess.Count(Bench.Chk01(), row.Id); i++)
            {
                Settings changed = Bench.Chk01();
                if (row.IsWhole) SettingAccess.SetWhole(changed, row.Id, SettingAccess.GetWhole(changed, row.Id) + 1);
                else SettingAccess.Set(changed, row.Id, i, MathF.BitIncrement(SettingAccess.Get(changed, row.Id, i)));

                Assert.NotEqual(before, SettingsChecksum.Of(changed));
            }
        }
    }

    [Fact]
    public void Checksum_OfKnownBytes_IsThePublishedHash()
    {
        // FNV-1a, 32 bits, of the same bytes by the published recipe (offset basis 2166136261, prime 16777619; from memory).
        uint hash = 2166136261;
        void Add(byte[] bytes)
        {
            foreach (byte b in bytes) hash = (hash ^ b) * 16777619;
        }

        Settings settings = Bench.Chk01();
        Add(BitConverter.GetBytes(SettingTable.Version));
        Add(BitConverter.GetBytes(settings.StageCount));
        foreach (float ohms in settings.StageOhms[..4]) Add(BitConverter.GetBytes(ohms));
        foreach (float volts in settings.VoltsLeft[..3]) Add(BitConverter.GetBytes(volts));
        foreach (float number in (float[])[settings.MachineConstant, settings.BrushDropVolts, settings.LockoutAmps, settings.InstantTripAmps,
            settings.HighestSupplyVolts, settings.HighestSpeedRadPerSec, settings.SteadyAmpsPerSec]) Add(BitConverter.GetBytes(number));
        foreach (int number in (int[])[settings.ConfirmMicroseconds, settings.MinimumDwellMicroseconds, settings.MaximumStageMicroseconds,
            settings.ContactMicroseconds]) Add(BitConverter.GetBytes(number));

        Assert.Equal(unchecked((int)hash), SettingsChecksum.Of(settings));
    }
}
