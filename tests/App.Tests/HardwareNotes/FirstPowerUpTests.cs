using System;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Page 16: what the controller says in each step, with the settings of the shipped line shaft and a panel without its motor.</summary>
public sealed class FirstPowerUpTests
{
    [Fact]
    public void Steps_AreWhatTheControllerSays() => Note.AssertHas("16-first-power-up.md", Note.Table(
        ["step", "what is tried", "phase", "lamp", "what it says", "after, s"],
        [
            Seen(2, "control supply on, stop chain open", new DeadPanel(readings => readings.EmergencyStop = true)),
            Seen(2, "chain closed, reset pressed", new DeadPanel(readings => { }) { IsReset = true }),
            Seen(3, "wire of stop button S1 off", new DeadPanel(readings => readings.StopPressed = true)),
            Seen(3, "auxiliary contact of K1 bridged", new DeadPanel(readings => readings.StagesClosed = 1)),
            Seen(4, "plug of the speed pick-up off", new DeadPanel(readings => readings.SpeedValid = false)),
            Seen(4, "R12 of the divider off: 460 V read", new DeadPanel(readings => readings.SupplyVolts = 460)),
            Seen(5, "main supply off, plug of coil Q1 off, start pressed", new DeadPanel(readings => readings.SupplyVolts = 0) { IsStarted = true, LineFollows = false }),
            Seen(6, "main supply off, start pressed: Q1 comes in", new DeadPanel(readings => readings.SupplyVolts = 0) { IsStarted = true }),
            Seen(7, "the same, emergency stop after 1 s", new DeadPanel(readings => readings.SupplyVolts = 0) { IsStarted = true, ChainOpensSeconds = 1 }),
            Seen(8, "lamp in place of the armature, start pressed", new DeadPanel(readings => readings.ArmatureAmps = readings.LineClosed ? 0.45f : 0) { IsStarted = true }),
        ]));

    private static object[] Seen(int step, string tried, DeadPanel panel)
    {
        panel.Run();
        Controller controller = panel.Controller;
        string said = controller.Fault.IsLatched ? $"`{FaultTable.Rows[RowOf(controller.Fault.Id)].Name}`"
            : controller.Refusals != Refusal.None ? $"start refused: `{RefusalText.List(controller.Refusals)}`" : "waits for start";
        string lamp = panel.Outputs.TrippedLamp ? "red" : panel.Outputs.RunningLamp ? "green" : panel.Outputs.ReadyLamp ? "white" : "none";
        return [step, tried, $"`{PhaseText.Name(controller.Phase)}`", lamp, said, controller.Fault.IsLatched ? Math.Round(panel.TrippedSeconds, 3) : ""];
    }

    private static int RowOf(FaultId id) => Array.FindIndex(FaultTable.Rows, row => row.Id == id);
}
