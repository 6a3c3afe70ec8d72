namespace StarterCtl.Core.Tests;

/// <summary>The bench's settings with everything fitted and every watch on.</summary>
internal static class Fitted
{
    internal const float FieldAmps = 5f;

    private const int Millisecond = Bench.Millisecond;

    internal static void Everything(Settings settings)
    {
        Watches(settings);
        settings.MaximumStageMicroseconds = 3_000 * Millisecond;
        settings.MaximumStartMicroseconds = 8_000 * Millisecond;
        settings.StepToleranceRatio = 0.3f;
        settings.StepSettleMicroseconds = 20 * Millisecond;
        settings.ZeroAmps = 10f;
        settings.StandstillRadPerSec = 1f;
        settings.FieldContactorFitted = true;
        settings.FieldContactFitted = true;
        settings.FieldSensorFitted = true;
        settings.MinimumFieldAmps = 2f;
        settings.FieldBuildMicroseconds = 50 * Millisecond;
        settings.MaximumFieldMicroseconds = 1_000 * Millisecond;
        settings.BrakeFitted = true;
        settings.BrakeOhms = 0.5f;
        settings.BrakeReleaseRadPerSec = 5f;
        settings.BrakeDelayMicroseconds = 50 * Millisecond;
        settings.MaximumBrakeMicroseconds = 2_000 * Millisecond;
    }

    private static void Watches(Settings settings)
    {
        settings.TripConfirmMicroseconds = 20 * Millisecond;
        settings.SupplyLowVolts = 200f;
        settings.NominalSupplyVolts = Bench.SupplyVolts;
        settings.DipAction = DipAction.PutResistanceBack;
        settings.DipMicroseconds = 300 * Millisecond;
        settings.SupplyHighVolts = 300f;
        settings.SupplyHighMicroseconds = 200 * Millisecond;
        settings.OverloadAmps = 350f;
        settings.OverloadSeconds = 125f;
        settings.ResistorJoules = 1_000_000f;
        settings.ResistorSensorFitted = true;
        settings.StartsPerHour = 6;
        settings.StallAmps = 400f;
        settings.StallMicroseconds = 500 * Millisecond;
        settings.OverspeedRadPerSec = 120f;
        settings.ReverseRadPerSec = 5f;
        settings.SteadyAmpsPerSec = 10_000f;
        settings.DisagreementVolts = 40f;
        settings.DisagreementMicroseconds = 400 * Millisecond;
        settings.MaximumTickMicroseconds = 5 * Millisecond;
        settings.RequiredPermissives = 3;
    }
}
