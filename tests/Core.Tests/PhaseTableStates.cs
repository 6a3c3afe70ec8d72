using System;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The rows of the phase table. Two states of one phase are two rows where the same input does different things in them. Every
/// watch trips on its first tick, so that one tick shows it; only a dip may last.
/// </summary>
internal static class PhaseTableStates
{
    private const int SlowContactTicks = 50;

    internal static readonly (string Name, Func<Bench> Prepare)[] All =
    [
        ("NotSetUp", () => new Bench(settings => settings.StageCount = 0).Tick()),
        ("Ready", () => Equipped()),
        ("Ready, stage closed", StageClosed),
        ("Field building", () => Equipped().PressStart().Ticks(2)),
        ("Field weak", FieldWeak),
        ("Presetting", () => Equipped(SlowContactTicks).BackEmf(150f).PressStart().TickUntil(Reason.PresettingStages)),
        ("Waiting for shaft", WaitingForShaft),
        ("Line closing", () => Equipped(SlowContactTicks).PressStart().TickUntil(Reason.WaitingForLineContact)),
        ("Accelerating", () => Equipped().InStage(2).BackEmf(150f).Tick()),
        ("Accelerating, dip", () => Supply(Equipped().InStage(2).BackEmf(150f), 199f)),
        ("Last stage closing", LastStageClosing),
        ("Running", () => Running()),
        ("Running, dip", () => Supply(Running(), 199f)),
        ("Running, no speed", RunningWithoutSpeed),
        ("Stopping", () => Running(SlowContactTicks).PressStop()),
        ("Stopping, brake delay", () => Running().PressStop().TickUntil(Reason.BrakeDelay)),
        ("Stopping, EMF too high", BackEmfAboveBrake),
        ("Braking", () => Running().PressStop().TickUntil(Reason.Braking)),
        ("Tripped", () => Equipped().PressEmergencyStop().Tick()),
        ("Tripped, cause present", CausePresent),
    ];

    private static Bench Equipped(int contactTicks = 1, Action<Settings>? change = null)
    {
        Bench bench = new(settings => Equip(settings, change), contactTicks);
        bench.Readings.FieldAmps = Fitted.FieldAmps;
        return bench.Tick();
    }

    private static void Equip(Settings settings, Action<Settings>? change)
    {
        Fitted.Everything(settings);
        settings.StepToleranceRatio = 0f;
        settings.TripConfirmMicroseconds = 0;
        settings.SupplyHighMicroseconds = 0;
        settings.DisagreementVolts = Settings.Largest;
        settings.MaximumTickMicroseconds = Settings.LongestMicroseconds;
        change?.Invoke(settings);
    }

    private static Bench Running(int contactTicks = 1, Action<Settings>? change = null) =>
        Equipped(contactTicks, change).InStage(4).BackEmf(Scenes.RunningVolts).TickUntil(Reason.AllStagesCutOut);

    private static Bench Supply(Bench bench, float volts)
    {
        bench.Readings.SupplyVolts = volts;
        return bench.Tick();
    }

    private static Bench StageClosed()
    {
        Bench bench = Equipped();
        bench.StagesStuck = 1;
        bench.Readings.StagesClosed = 1;
        return bench.Tick();
    }

    private static Bench FieldWeak()
    {
        Bench bench = Equipped().PressStart();
        bench.Readings.FieldAmps = 1.9f;
        return bench.Tick();
    }

    private static Bench WaitingForShaft()
    {
        Bench bench = Equipped().PressStart().BackEmf(-10f);
        return bench.TickUntil(Reason.WaitingForShaft);
    }

    private static Bench LastStageClosing()
    {
        Bench bench = Equipped().InStage(3).BackEmf(Scenes.RunningVolts);
        bench.StagesStuck = 4;
        return bench.Tick().Tick();
    }

    private static Bench RunningWithoutSpeed()
    {
        Bench bench = Running(1, settings => settings.SpeedLoss = SpeedLossAction.KeepRunning);
        bench.Readings.SpeedValid = false;
        return bench.TickUntil(Reason.RunningWithoutSpeed);
    }

    private static Bench BackEmfAboveBrake() =>
        Running(1, settings => settings.BrakeOhms = 0.3f).PressStop().TickUntil(Reason.BackEmfAboveBrake);

    private static Bench CausePresent()
    {
        Bench bench = Equipped();
        bench.Readings.SupplyVolts = float.NaN;
        return bench.Tick();
    }
}
