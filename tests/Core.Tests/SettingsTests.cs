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
        ("flux source unknown", SettingId.FluxSource, s => s.FluxSource = (FluxSource)3),
        ("flux source without a curve", SettingId.FluxSource, s => s.FluxSource = FluxSource.ArmatureCurrent),
        ("flux source without its sensor", SettingId.FluxSource, s => { Curve(s); s.FluxSource = FluxSource.FieldCurrent; }),
        ("curve of one point", SettingId.FluxSource, s => { Curve(s); s.CurvePoints = 1; s.FluxSource = FluxSource.ArmatureCurrent; }),
        ("curve points negative", SettingId.CurvePoints, s => s.CurvePoints = -1),
        ("curve points 13", SettingId.CurvePoints, s => s.CurvePoints = 13),
        ("curve amps null", SettingId.CurveAmps, s => { Curve(s); s.CurveAmps = null!; }),
        ("curve amps too few", SettingId.CurveAmps, s => { Curve(s); s.CurveAmps = [0f, 1f]; }),
        ("curve amps from above 0", SettingId.CurveAmps, s => { Curve(s); s.CurveAmps[0] = 0.1f; }),
        ("curve amps equal", SettingId.CurveAmps, s => { Curve(s); s.CurveAmps[2] = 1f; }),
        ("curve amps NaN", SettingId.CurveAmps, s => { Curve(s); s.CurveAmps[1] = float.NaN; }),
        ("curve constants null", SettingId.CurveConstants, s => { Curve(s); s.CurveConstants = null!; }),
        ("curve constants zero", SettingId.CurveConstants, s => { Curve(s); s.CurveConstants[0] = 0f; }),
        ("curve constants falling", SettingId.CurveConstants, s => { Curve(s); s.CurveConstants[2] = 1f; }),
        ("reaction NaN", SettingId.ReactionRatio, s => s.ReactionRatio = float.NaN),
        ("reaction too large", SettingId.ReactionRatio, s => s.ReactionRatio = TooLarge),
        ("peak left out", SettingId.PeakAmps, s => s.PeakAmps = 0f),
        ("peak NaN", SettingId.PeakAmps, s => s.PeakAmps = float.NaN),
        ("peak at the trip", SettingId.PeakAmps, s => s.PeakAmps = s.InstantTripAmps),
        ("line contact not fitted, no zero", SettingId.LineContactFitted, s => s.LineContactFitted = false),
        ("stage contacts not fitted, no proof", SettingId.StageContactsFitted, s => s.StageContactsFitted = false),
        ("tolerance without zero", SettingId.StepToleranceRatio, s => s.StepToleranceRatio = 0.2f),
        ("tolerance above 1", SettingId.StepToleranceRatio, s => s.StepToleranceRatio = 1.1f),
        ("tolerance NaN", SettingId.StepToleranceRatio, s => s.StepToleranceRatio = float.NaN),
        ("settle negative", SettingId.StepSettleMicroseconds, s => s.StepSettleMicroseconds = -1),
        ("zero negative", SettingId.ZeroAmps, s => s.ZeroAmps = -1f),
        ("zero NaN", SettingId.ZeroAmps, s => s.ZeroAmps = float.NaN),
        ("speed sensor not fitted, not allowed", SettingId.SpeedSensorFitted, s => { s.ZeroAmps = 1f; s.StepToleranceRatio = 0.2f; s.SpeedSensorFitted = false; s.SpeedLoss = SpeedLossAction.KeepRunning; }),
        ("speed sensor not fitted, nothing proven", SettingId.SpeedSensorFitted, s => { s.ZeroAmps = 1f; s.SpeedSensorFitted = false; s.SpeedLoss = SpeedLossAction.FinishStart; }),
        ("speed loss finishes without zero", SettingId.SpeedLoss, s => s.SpeedLoss = SpeedLossAction.FinishStart),
        ("speed loss unknown", SettingId.SpeedLoss, s => s.SpeedLoss = (SpeedLossAction)3),
        ("speed loss time negative", SettingId.SpeedLossMicroseconds, s => s.SpeedLossMicroseconds = -1),
        ("resistive confirm below confirm", SettingId.ResistiveConfirmMicroseconds, s => { s.ZeroAmps = 1f; s.SpeedLoss = SpeedLossAction.FinishStart; s.ConfirmMicroseconds = s.ResistiveConfirmMicroseconds + 1; }),
        ("resistive confirm negative", SettingId.ResistiveConfirmMicroseconds, s => s.ResistiveConfirmMicroseconds = -1),
        ("standstill NaN", SettingId.StandstillRadPerSec, s => s.StandstillRadPerSec = float.NaN),
        ("standstill negative", SettingId.StandstillRadPerSec, s => s.StandstillRadPerSec = -1f),
        ("field contact without contactor", SettingId.FieldContactFitted, s => s.FieldContactFitted = true),
        ("field minimum without sensor", SettingId.MinimumFieldAmps, s => s.MinimumFieldAmps = 1f),
        ("field minimum NaN", SettingId.MinimumFieldAmps, s => s.MinimumFieldAmps = float.NaN),
        ("field build negative", SettingId.FieldBuildMicroseconds, s => s.FieldBuildMicroseconds = -1),
        ("field time zero", SettingId.MaximumFieldMicroseconds, s => s.MaximumFieldMicroseconds = 0),
        ("field time at its build time", SettingId.MaximumFieldMicroseconds, s => s.FieldBuildMicroseconds = s.MaximumFieldMicroseconds),
        ("trip confirm negative", SettingId.TripConfirmMicroseconds, s => s.TripConfirmMicroseconds = -1),
        ("low at the nominal", SettingId.SupplyLowVolts, s => s.SupplyLowVolts = s.NominalSupplyVolts = 200f),
        ("low without nominal", SettingId.SupplyLowVolts, s => s.SupplyLowVolts = 200f),
        ("low NaN", SettingId.SupplyLowVolts, s => s.SupplyLowVolts = float.NaN),
        ("nominal negative", SettingId.NominalSupplyVolts, s => s.NominalSupplyVolts = -1f),
        ("nominal NaN", SettingId.NominalSupplyVolts, s => s.NominalSupplyVolts = float.NaN),
        ("dip action unknown", SettingId.DipAction, s => s.DipAction = (DipAction)2),
        ("dip time negative", SettingId.DipMicroseconds, s => s.DipMicroseconds = -1),
        ("high at the nominal", SettingId.SupplyHighVolts, s => s.SupplyHighVolts = s.NominalSupplyVolts = 250f),
        ("high NaN", SettingId.SupplyHighVolts, s => s.SupplyHighVolts = float.NaN),
        ("high time negative", SettingId.SupplyHighMicroseconds, s => s.SupplyHighMicroseconds = -1),
        ("overload negative", SettingId.OverloadAmps, s => s.OverloadAmps = -1f),
        ("overload NaN", SettingId.OverloadAmps, s => s.OverloadAmps = float.NaN),
        ("overload time constant zero", SettingId.OverloadSeconds, s => s.OverloadSeconds = 0f),
        ("overload reset above 1", SettingId.OverloadResetRatio, s => s.OverloadResetRatio = 1.01f),
        ("overload reset zero", SettingId.OverloadResetRatio, s => s.OverloadResetRatio = 0f),
        ("resistor energy negative", SettingId.ResistorJoules, s => s.ResistorJoules = -1f),
        ("resistor energy NaN", SettingId.ResistorJoules, s => s.ResistorJoules = float.NaN),
        ("resistor time constant zero", SettingId.ResistorSeconds, s => s.ResistorSeconds = 0f),
        ("resistor start above 1", SettingId.ResistorStartRatio, s => s.ResistorStartRatio = 1.01f),
        ("resistor temperature zero", SettingId.ResistorCelsius, s => s.ResistorCelsius = 0f),
        ("resistor temperature too high", SettingId.ResistorCelsius, s => s.ResistorCelsius = 2001f),
        ("starts negative", SettingId.StartsPerHour, s => s.StartsPerHour = -1),
        ("starts 61", SettingId.StartsPerHour, s => s.StartsPerHour = 61),
        ("stall zero", SettingId.StallAmps, s => s.StallAmps = 0f),
        ("stall NaN", SettingId.StallAmps, s => s.StallAmps = float.NaN),
        ("stall time zero", SettingId.StallMicroseconds, s => s.StallMicroseconds = 0),
        ("start time zero", SettingId.MaximumStartMicroseconds, s => s.MaximumStartMicroseconds = 0),
        ("overspeed zero", SettingId.OverspeedRadPerSec, s => s.OverspeedRadPerSec = 0f),
        ("overspeed NaN", SettingId.OverspeedRadPerSec, s => s.OverspeedRadPerSec = float.NaN),
        ("reverse zero", SettingId.ReverseRadPerSec, s => s.ReverseRadPerSec = 0f),
        ("disagreement zero", SettingId.DisagreementVolts, s => s.DisagreementVolts = 0f),
        ("disagreement time negative", SettingId.DisagreementMicroseconds, s => s.DisagreementMicroseconds = -1),
        ("tick zero", SettingId.MaximumTickMicroseconds, s => s.MaximumTickMicroseconds = 0),
        ("permissives negative", SettingId.RequiredPermissives, s => s.RequiredPermissives = -1),
        ("permissives 17 bits", SettingId.RequiredPermissives, s => s.RequiredPermissives = 65536),
        ("brake without ohms", SettingId.BrakeFitted, s => { Brake(s); s.BrakeOhms = 0f; }),
        ("brake without release", SettingId.BrakeFitted, s => { Brake(s); s.BrakeReleaseRadPerSec = 0f; }),
        ("brake without speed", SettingId.BrakeFitted, s => { Brake(s); s.ZeroAmps = 1f; s.StepToleranceRatio = 0.2f; s.SpeedSensorFitted = false; s.SpeedLoss = SpeedLossAction.FinishStart; }),
        ("brake contact not fitted, no zero", SettingId.BrakeContactFitted, s => s.BrakeContactFitted = false),
        ("brake ohms NaN", SettingId.BrakeOhms, s => s.BrakeOhms = float.NaN),
        ("brake release NaN", SettingId.BrakeReleaseRadPerSec, s => s.BrakeReleaseRadPerSec = float.NaN),
        ("brake delay negative", SettingId.BrakeDelayMicroseconds, s => s.BrakeDelayMicroseconds = -1),
        ("brake time zero", SettingId.MaximumBrakeMicroseconds, s => s.MaximumBrakeMicroseconds = 0),
    ];

    // On and off cannot be spoilt: what is written for them in a text is checked where it is read.
    private static readonly SettingId[] Switches = [SettingId.SpinningStart, SettingId.FieldContactorFitted, SettingId.FieldSensorFitted, SettingId.ResistorSensorFitted];

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
            Assert.True(id == SettingId.None || Array.IndexOf(Switches, id) >= 0 || Array.Exists(Spoilers, row => row.Id == id), id.ToString());
        }

        Assert.Equal(Enum.GetValues<SettingId>().Length - 1, typeof(Settings).GetFields().Length - 5);
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
        int before = SettingsChecksum.Of(WithCurve());
        foreach (SettingRow row in SettingTable.Rows)
        {
            for (int i = 0; i < SettingAccess.Count(WithCurve(), row.Id); i++)
            {
                Settings changed = WithCurve();
                int whole = SettingAccess.GetWhole(changed, row.Id);
                if (row.IsWhole) SettingAccess.SetWhole(changed, row.Id, whole < (int)row.Highest ? whole + 1 : whole - 1);
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

        Settings settings = WithCurve();
        Add(BitConverter.GetBytes(SettingTable.Version));
        foreach (SettingRow row in SettingTable.Rows)
        {
            for (int i = 0; i < SettingAccess.Count(settings, row.Id); i++)
            {
                Add(row.IsWhole ? BitConverter.GetBytes(SettingAccess.GetWhole(settings, row.Id)) : BitConverter.GetBytes(SettingAccess.Get(settings, row.Id, i)));
            }
        }

        Assert.Equal(unchecked((int)hash), SettingsChecksum.Of(settings));
    }

    private static Settings WithCurve()
    {
        Settings settings = Bench.Chk01();
        Curve(settings);
        settings.FieldSensorFitted = true;
        settings.FluxSource = FluxSource.FieldCurrent;
        return settings;
    }

    private static void Curve(Settings settings)
    {
        settings.CurvePoints = 3;
        new[] { 0f, 1f, 2f }.CopyTo(settings.CurveAmps, 0);
        new[] { 0.1f, 2f, 2.5f }.CopyTo(settings.CurveConstants, 0);
    }

    private static void Brake(Settings settings)
    {
        settings.BrakeFitted = true;
        settings.BrakeOhms = 0.5f;
        settings.BrakeReleaseRadPerSec = 5f;
    }
}
