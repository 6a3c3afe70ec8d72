using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>Settings of every kind for the nonsense: what is fitted and watched is told by the bits of a number.</summary>
internal static class NonsenseSettings
{
    /// <summary>How many kinds there are.</summary>
    internal const int Kinds = 13;

    internal static Settings Of(int kind, int stageCount, int confirmMilliseconds, int dwellMilliseconds)
    {
        Settings settings = Sound(stageCount, confirmMilliseconds, dwellMilliseconds);
        switch (kind)
        {
            case 1: AddField(settings, true, true); break;
            case 2: AddField(settings, true, false); AddBrake(settings, true); break;
            case 3: AddProof(settings, true, true); AddBrake(settings, false); break;
            case 4: AddProof(settings, false, false); AddBrake(settings, true); break;
            case 5: AddDip(settings, DipAction.PutResistanceBack); AddLimits(settings); break;
            case 6: AddDip(settings, DipAction.LeaveStages); AddSpeedLoss(settings, SpeedLossAction.KeepRunning); break;
            case 7: AddDip(settings, DipAction.PutResistanceBack); AddSpeedLoss(settings, SpeedLossAction.FinishStart); AddLimits(settings); break;
            case 8: AddField(settings, true, true); AddCurve(settings, FluxSource.FieldCurrent); AddHeat(settings); break;
            case 9: AddCurve(settings, FluxSource.ArmatureCurrent); AddSpeedLoss(settings, SpeedLossAction.FinishStart); break;
            case 10: AddHeat(settings); AddDip(settings, DipAction.PutResistanceBack); AddLimits(settings); settings.StartsPerHour = 20; break;
            case 11: AddEverything(settings); break;
            case 12: AddProof(settings, false, false); AddSpeedLoss(settings, SpeedLossAction.FinishStart); settings.SpeedSensorFitted = false; break;
            default: break;
        }

        Assert.Equal(SettingId.None, settings.FirstProblem());
        return settings;
    }

    internal static Settings Sound(int stageCount, int confirmMilliseconds, int dwellMilliseconds)
    {
        Settings settings = Bench.Chk01();
        settings.StageCount = stageCount;
        settings.ConfirmMicroseconds = confirmMilliseconds * Bench.Millisecond;
        settings.MinimumDwellMicroseconds = dwellMilliseconds * Bench.Millisecond;
        settings.BrushDropVolts = confirmMilliseconds;
        settings.LockoutAmps = 750f;
        settings.MaximumStageMicroseconds = 300 * Bench.Millisecond;
        settings.ContactMicroseconds = 30 * Bench.Millisecond;
        for (int i = 0; i <= stageCount; i++) settings.StageOhms[i] = 0.4f - 0.02f * i;
        for (int i = 0; i < stageCount; i++) settings.VoltsLeft[i] = 125f - 6f * i;
        return settings;
    }

    private static void AddEverything(Settings settings)
    {
        AddField(settings, true, true);
        AddBrake(settings, true);
        AddDip(settings, DipAction.PutResistanceBack);
        AddSpeedLoss(settings, SpeedLossAction.KeepRunning);
        AddLimits(settings);
        AddHeat(settings);
        AddCurve(settings, FluxSource.FieldCurrent);
        settings.StepToleranceRatio = 0.3f;
        settings.StepSettleMicroseconds = 2 * Bench.Millisecond;
        settings.ZeroAmps = 20f;
    }

    private static void AddField(Settings settings, bool contact, bool sensor)
    {
        settings.FieldContactorFitted = true;
        settings.FieldContactFitted = contact;
        settings.FieldSensorFitted = sensor;
        settings.MinimumFieldAmps = sensor ? 1f : 0f;
        settings.FieldBuildMicroseconds = 5 * Bench.Millisecond;
        settings.MaximumFieldMicroseconds = 40 * Bench.Millisecond;
    }

    private static void AddBrake(Settings settings, bool contact)
    {
        settings.BrakeFitted = true;
        settings.BrakeContactFitted = contact;
        settings.BrakeOhms = 0.35f;
        settings.BrakeReleaseRadPerSec = 10f;
        settings.BrakeDelayMicroseconds = 3 * Bench.Millisecond;
        settings.MaximumBrakeMicroseconds = 60 * Bench.Millisecond;
        settings.ZeroAmps = 20f;
    }

    private static void AddProof(Settings settings, bool isLineBlind, bool isStageBlind)
    {
        settings.LineContactFitted = !isLineBlind;
        settings.StageContactsFitted = !isStageBlind;
        settings.StepToleranceRatio = 0.2f;
        settings.StepSettleMicroseconds = 2 * Bench.Millisecond;
        settings.ZeroAmps = 20f;
        settings.ContactMicroseconds = 10 * Bench.Millisecond;
        settings.StageCount = settings.StageCount < 3 ? settings.StageCount : 3;
        new[] { 250f / 700f, 125f / 700f, 62.5f / 700f, 0.05f }.CopyTo(settings.StageOhms, 0);
        new[] { 120f, 60f, 30f }.CopyTo(settings.VoltsLeft, 0);
    }

    private static void AddDip(Settings settings, DipAction action)
    {
        settings.SupplyLowVolts = 200f;
        settings.NominalSupplyVolts = 250f;
        settings.DipAction = action;
        settings.DipMicroseconds = 30 * Bench.Millisecond;
        settings.SupplyHighVolts = 290f;
        settings.SupplyHighMicroseconds = 10 * Bench.Millisecond;
    }

    private static void AddSpeedLoss(Settings settings, SpeedLossAction action)
    {
        settings.SpeedLoss = action;
        settings.SpeedLossMicroseconds = 5 * Bench.Millisecond;
        settings.ResistiveConfirmMicroseconds = 8 * Bench.Millisecond;
        settings.SteadyAmpsPerSec = 200_000f;
        // Without it the voltage equation cannot tell an open circuit.
        settings.ZeroAmps = 20f;
    }

    private static void AddLimits(Settings settings)
    {
        settings.StandstillRadPerSec = 1f;
        settings.OverspeedRadPerSec = 120f;
        settings.ReverseRadPerSec = 5f;
        settings.StallAmps = 500f;
        settings.StallMicroseconds = 20 * Bench.Millisecond;
        settings.DisagreementVolts = 80f;
        settings.DisagreementMicroseconds = 10 * Bench.Millisecond;
        settings.TripConfirmMicroseconds = 2 * Bench.Millisecond;
        settings.MaximumTickMicroseconds = 3 * Bench.Millisecond;
        settings.MaximumStartMicroseconds = 250 * Bench.Millisecond;
        settings.MaximumStageMicroseconds = 120 * Bench.Millisecond;
        settings.RequiredPermissives = 5;
    }

    private static void AddHeat(Settings settings)
    {
        settings.OverloadAmps = 150f;
        settings.OverloadSeconds = 0.3f;
        settings.ResistorJoules = 1500f;
        settings.ResistorSeconds = 0.5f;
        settings.ResistorSensorFitted = true;
    }

    private static void AddCurve(Settings settings, FluxSource source)
    {
        settings.FluxSource = source;
        settings.FieldSensorFitted = true;
        settings.CurvePoints = 4;
        float ampsPerPoint = source == FluxSource.FieldCurrent ? 1f : 200f;
        for (int i = 0; i < settings.CurvePoints; i++)
        {
            settings.CurveAmps[i] = i * ampsPerPoint;
            settings.CurveConstants[i] = i == 0 ? 0.5f : 2f + 0.3f * i;
        }

        settings.ReactionRatio = source == FluxSource.FieldCurrent ? 0.0005f : 0f;
    }
}
