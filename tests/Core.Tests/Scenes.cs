using System;

namespace StarterCtl.Core.Tests;

/// <summary>Brings a bench with everything fitted to where a fault can meet it.</summary>
internal static class Scenes
{
    internal const float AcceleratingVolts = 150f;
    internal const float RunningVolts = 230f;

    private const int ContactTicks = 10;
    private const int SlowContactTicks = 90;
    private const int SettledTicks = 50;

    internal static Bench Prepare(Scene scene, Action<Settings>? change = null)
    {
        Bench bench = new(settings => Fit(settings, scene, change), scene == Scene.Presetting ? SlowContactTicks : ContactTicks) { Flows = true };
        bench.Tick();
        switch (scene)
        {
            case Scene.Ready:
                return bench;
            case Scene.FieldBuilding:
                return bench.PressStart();
            case Scene.Presetting:
                bench.BackEmf(AcceleratingVolts).PressStart();
                return bench.TickUntil(() => bench.Outputs.CloseStages != 0);
            case Scene.LineClosing:
                return bench.PressStart().TickUntil(() => bench.Outputs.CloseLine);
            case Scene.Accelerating:
                return bench.InStage(2).BackEmf(AcceleratingVolts).Ticks(SettledTicks);
            default:
                return AfterRunning(bench, scene);
        }
    }

    private static Bench AfterRunning(Bench bench, Scene scene)
    {
        bench.InStage(4).BackEmf(RunningVolts).TickUntil(() => bench.Controller.Phase == Phase.Running).Ticks(SettledTicks);
        if (scene == Scene.Running) return bench;
        if (scene == Scene.Tripped) return bench.PressEmergencyStop().Ticks(SettledTicks);
        bench.PressStop();
        if (scene == Scene.Stopping) return bench;
        bench.TickUntil(() => bench.Controller.Why.Reason == Reason.BrakeDelay);
        return scene == Scene.BrakeDelay ? bench : bench.TickUntil(() => bench.Readings.BrakeClosed);
    }

    private static void Fit(Settings settings, Scene scene, Action<Settings>? change)
    {
        Fitted.Everything(settings);
        if (scene == Scene.FieldBuilding) settings.FieldBuildMicroseconds = 900 * Bench.Millisecond;
        if (scene == Scene.BrakeDelay) settings.BrakeDelayMicroseconds = 600 * Bench.Millisecond;
        change?.Invoke(settings);
    }
}
