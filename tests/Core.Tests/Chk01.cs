namespace StarterCtl.Core.Tests;

/// <summary>The three-stage starter of CHK-01 (250 V, 700 A to 350 A). Written with what the board's runtime has, as <see cref="ReplayCourse"/> is.</summary>
internal static class Chk01
{
    internal const float MachineConstant = 2.5f;

    internal static Settings Settings()
    {
        Settings settings = new Settings();
        settings.StageCount = 3;
        settings.MachineConstant = MachineConstant;
        settings.PeakAmps = 700f;
        settings.InstantTripAmps = 1000f;
        settings.HighestSupplyVolts = 500f;
        settings.HighestSpeedRadPerSec = 200f;
        settings.MaximumStageMicroseconds = 10_000_000;
        settings.ContactMicroseconds = 100_000;
        settings.StageOhms[0] = 250f / 700f;
        settings.StageOhms[1] = 125f / 700f;
        settings.StageOhms[2] = 62.5f / 700f;
        settings.StageOhms[3] = 0.05f;
        settings.VoltsLeft[0] = 125f;
        settings.VoltsLeft[1] = 62.5f;
        settings.VoltsLeft[2] = 31.25f;
        return settings;
    }
}
