using System;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The bench of the fault-reaction matrix: everything fitted, a shaft that really speeds up, and between what is true and
/// what the controller reads a wiring that can fail. 250 V; 100 A of load torque; each ampere above it gives 0.5 V/s.
/// </summary>
internal sealed class ReactionRig
{
    internal const int Millisecond = Bench.Millisecond;

    private const int ContactTicks = 10;
    private const float LoadAmps = 100f;
    private const float VoltsPerAmpTick = 0.0005f;
    private const float CoastVoltsPerTick = LoadAmps * VoltsPerAmpTick;

    private readonly int[] _disagreedTicks = new int[4 + Settings.MostStages];

    internal ReactionRig(Action<Settings>? change = null)
    {
        Settings settings = Bench.Chk01();
        Fitted.Everything(settings);
        change?.Invoke(settings);
        Settings = settings;
        Controller = new Controller(settings);
        Truth.SupplyVolts = Bench.SupplyVolts;
        Truth.SpeedValid = true;
        Truth.ResistorCelsius = 40f;
        Truth.Permissives = settings.RequiredPermissives;
    }

    internal Settings Settings { get; }

    internal Controller Controller { get; }

    internal Outputs Outputs { get; } = new();

    /// <summary>What is so.</summary>
    internal Readings Truth { get; } = new();

    /// <summary>What is read of it; null while nothing has failed. The number counts ticks from the failure.</summary>
    internal Action<Readings, int>? Wiring { get; set; }

    /// <summary>The time that the controller is told, microseconds; null while it is told the truth.</summary>
    internal Func<int, int>? Clock { get; set; }

    /// <summary>Ticks since the failure.</summary>
    internal int FailedTicks { get; private set; }

    internal ReactionRig Tick()
    {
        Follow();
        Flow();
        Readings read = Copy(Truth);
        Wiring?.Invoke(read, FailedTicks);
        Controller.Tick(Clock?.Invoke(FailedTicks) ?? Millisecond, read, Outputs);
        if (Wiring != null || Clock != null) FailedTicks++;
        return this;
    }

    internal ReactionRig TickUntil(Func<bool> reached)
    {
        for (int i = 0; i < 10_000 && !reached(); i++) Tick();
        return reached() ? this : throw new InvalidOperationException($"{Controller.Phase} {Controller.Why.Reason} {Controller.Fault.Id}");
    }

    private static Readings Copy(Readings truth) => new()
    {
        SupplyVolts = truth.SupplyVolts,
        ArmatureAmps = truth.ArmatureAmps,
        SpeedRadPerSec = truth.SpeedRadPerSec,
        SpeedValid = truth.SpeedValid,
        LineClosed = truth.LineClosed,
        StagesClosed = truth.StagesClosed,
        FieldAmps = truth.FieldAmps,
        ResistorCelsius = truth.ResistorCelsius,
        BrakeClosed = truth.BrakeClosed,
        FieldClosed = truth.FieldClosed,
        Permissives = truth.Permissives,
        StartPressed = truth.StartPressed,
        StopPressed = truth.StopPressed,
        ResetPressed = truth.ResetPressed,
        EmergencyStop = truth.EmergencyStop,
    };

    // Every contact follows its own coil after its own 10 ms.
    private void Follow()
    {
        Truth.LineClosed = Follows(0, Truth.LineClosed, Outputs.CloseLine);
        Truth.BrakeClosed = Follows(1, Truth.BrakeClosed, Outputs.CloseBrake);
        Truth.FieldClosed = Follows(2, Truth.FieldClosed, Outputs.CloseField);
        for (int stage = 1; stage <= Settings.StageCount; stage++)
        {
            int bit = 1 << (stage - 1);
            bool isClosed = Follows(3 + stage, (Truth.StagesClosed & bit) != 0, (Outputs.CloseStages & bit) != 0);
            Truth.StagesClosed = isClosed ? Truth.StagesClosed | bit : Truth.StagesClosed & ~bit;
        }
    }

    private bool Follows(int contact, bool isClosed, bool isCommanded)
    {
        _disagreedTicks[contact] = isClosed == isCommanded ? 0 : _disagreedTicks[contact] + 1;
        return _disagreedTicks[contact] >= ContactTicks ? isCommanded : isClosed;
    }

    private void Flow()
    {
        float ohms = Settings.StageOhms[0];
        for (int stage = 1; stage <= Settings.StageCount; stage++)
        {
            if ((Truth.StagesClosed & (1 << (stage - 1))) != 0) ohms -= Settings.StageOhms[stage - 1] - Settings.StageOhms[stage];
        }

        float backEmfVolts = Bench.MachineConstant * Truth.SpeedRadPerSec;
        float brakeAmps = Truth.BrakeClosed ? -backEmfVolts / Settings.BrakeOhms : 0f;
        Truth.ArmatureAmps = Truth.LineClosed ? (Truth.SupplyVolts - backEmfVolts) / ohms : brakeAmps;
        Truth.FieldAmps = Truth.FieldClosed ? Fitted.FieldAmps : 0f;
        backEmfVolts += Truth.ArmatureAmps * VoltsPerAmpTick - CoastVoltsPerTick;
        Truth.SpeedRadPerSec = backEmfVolts > 0f ? backEmfVolts / Bench.MachineConstant : 0f;
    }
}
