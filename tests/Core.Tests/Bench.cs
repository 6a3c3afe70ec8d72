using System;
using System.Reflection;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// A controller on the bench: the three-stage starter of CHK-01 (250 V, 700 A to 350 A) with contacts that follow their
/// coils after some ticks, and switches to spoil everything.
/// </summary>
internal sealed class Bench
{
    internal const int Millisecond = 1000;
    internal const float SupplyVolts = 250f;
    internal const float MachineConstant = Tests.Chk01.MachineConstant;
    internal const int AllStages = 7;

    private readonly int _contactTicks;
    private int _lineDisagreedTicks;
    private int _stagesDisagreedTicks;
    private int _brakeDisagreedTicks;
    private int _fieldDisagreedTicks;

    internal Bench(Action<Settings>? change = null, int contactTicks = 1)
    {
        _contactTicks = contactTicks;
        Settings = Chk01();
        change?.Invoke(Settings);
        Controller = new Controller(Settings);
        Readings.SupplyVolts = SupplyVolts;
        Readings.SpeedValid = true;
        Readings.Permissives = Settings.RequiredPermissives;
        Readings.ResistorCelsius = 40f;
    }

    internal Settings Settings { get; }

    internal Controller Controller { get; }

    internal Readings Readings { get; } = new();

    internal Outputs Outputs { get; } = new();

    /// <summary>Called behind every tick with its elapsed time.</summary>
    internal Action<int>? Ticked { get; set; }

    /// <summary>Contacts that stay as they are, whatever their coils do.</summary>
    internal bool LineStuck { get; set; }

    /// <summary>Stage contacts that stay as they are, as bits.</summary>
    internal int StagesStuck { get; set; }

    internal bool BrakeStuck { get; set; }

    internal bool FieldStuck { get; set; }

    /// <summary>True when armature and field currents are those that contacts, supply and speed make.</summary>
    internal bool Flows { get; set; }

    /// <summary>
    /// What the wiring makes of the readings on their way to the controller. Behind the tick they are again what they were:
    /// contacts, currents and shaft go on as they are, whatever was read.
    /// </summary>
    internal Action<Readings>? Spoil { get; set; }

    internal static Settings Chk01() => Tests.Chk01.Settings();

    internal Bench BackEmf(float volts)
    {
        Readings.SpeedRadPerSec = volts / MachineConstant;
        return this;
    }

    /// <summary>One tick: contacts follow, the controller decides.</summary>
    internal Bench Tick(int elapsedMicroseconds = Millisecond)
    {
        FollowCoils();
        if (Flows) Flow();
        if (Spoil == null) Controller.Tick(elapsedMicroseconds, Readings, Outputs);
        else TickSpoilt(elapsedMicroseconds, Spoil);
        Ticked?.Invoke(elapsedMicroseconds);
        return this;
    }

    internal Bench Ticks(int count)
    {
        for (int i = 0; i < count; i++) Tick();
        return this;
    }

    /// <summary>Ticks until a condition holds; gives up after a long time.</summary>
    internal Bench TickUntil(Func<bool> reached, int mostTicks = 1000)
    {
        for (int i = 0; i < mostTicks && !reached(); i++) Tick();
        Assert.True(reached(), $"not reached: still {Controller.Phase}, stage {Controller.Stage}, {Controller.Why.Reason}");
        return this;
    }

    internal Bench TickUntil(Reason reason) => TickUntil(() => Controller.Why.Reason == reason);

    internal Bench PressStart()
    {
        Readings.StartPressed = true;
        Tick();
        Readings.StartPressed = false;
        return this;
    }

    internal Bench PressStop()
    {
        Readings.StopPressed = true;
        Tick();
        Readings.StopPressed = false;
        return this;
    }

    internal Bench PressReset()
    {
        Readings.ResetPressed = true;
        Tick();
        Readings.ResetPressed = false;
        return this;
    }

    internal Bench PressEmergencyStop()
    {
        Readings.EmergencyStop = true;
        Tick();
        Readings.EmergencyStop = false;
        return this;
    }

    /// <summary>Powers up and starts; stage 1 is in effect, the line proven closed and the shaft at rest.</summary>
    internal Bench Started()
    {
        Tick().PressStart();
        return TickUntil(() => Readings.LineClosed && Controller.Why.Reason != Reason.WaitingForLineContact);
    }

    /// <summary>Starts and carries the shaft to the end of the stages before this one.</summary>
    internal Bench InStage(int stage)
    {
        Started();
        for (int cut = 1; cut < stage; cut++)
        {
            BackEmf(SupplyVolts - Settings.VoltsLeft[cut - 1]);
            TickUntil(() => Controller.Stage > cut);
        }

        return this;
    }

    /// <summary>Starts and carries the shaft to full speed.</summary>
    internal Bench Run()
    {
        Started().BackEmf(240f);
        return TickUntil(() => Controller.Phase == Phase.Running);
    }

    internal void AssertWhy(Reason reason, float quantity, float limit, int microsecondsLeft = 0)
    {
        Explanation why = Controller.Why;
        Assert.Equal((reason, quantity, limit, microsecondsLeft), (why.Reason, why.Quantity, why.Limit, why.MicrosecondsLeft));
    }

    internal void AssertCoils(bool line, int stages) =>
        Assert.Equal((line, stages), (Outputs.CloseLine, Outputs.CloseStages));

    internal void AssertAllOff()
    {
        AssertCoils(false, 0);
        Assert.False(Outputs.CloseBrake);
    }

    internal void AssertTripped(FaultId fault, float measured, float limit)
    {
        FaultLatch latched = Controller.Fault;
        Assert.Equal(Phase.Tripped, Controller.Phase);
        Assert.Equal((fault, measured, limit), (latched.Id, latched.Value, latched.Limit));
        AssertAllOff();
        Assert.True(Outputs.TrippedLamp);
        Assert.False(Outputs.ReadyLamp || Outputs.RunningLamp);
    }

    private void FollowCoils()
    {
        _lineDisagreedTicks = Readings.LineClosed == Outputs.CloseLine ? 0 : _lineDisagreedTicks + 1;
        if (!LineStuck && _lineDisagreedTicks >= _contactTicks) Readings.LineClosed = Outputs.CloseLine;

        _stagesDisagreedTicks = Readings.StagesClosed == Outputs.CloseStages ? 0 : _stagesDisagreedTicks + 1;
        if (_stagesDisagreedTicks >= _contactTicks)
        {
            Readings.StagesClosed = (Outputs.CloseStages & ~StagesStuck) | (Readings.StagesClosed & StagesStuck);
            _stagesDisagreedTicks = 0;
        }

        _brakeDisagreedTicks = Readings.BrakeClosed == Outputs.CloseBrake ? 0 : _brakeDisagreedTicks + 1;
        if (!BrakeStuck && _brakeDisagreedTicks >= _contactTicks) Readings.BrakeClosed = Outputs.CloseBrake;

        _fieldDisagreedTicks = Readings.FieldClosed == Outputs.CloseField ? 0 : _fieldDisagreedTicks + 1;
        if (!FieldStuck && _fieldDisagreedTicks >= _contactTicks) Readings.FieldClosed = Outputs.CloseField;
    }

    private void Flow()
    {
        float ohms = Settings.StageOhms[0];
        for (int stage = 1; stage <= Settings.StageCount; stage++)
        {
            if ((Readings.StagesClosed & (1 << (stage - 1))) != 0) ohms -= Settings.StageOhms[stage - 1] - Settings.StageOhms[stage];
        }

        float backEmfVolts = MachineConstant * Readings.SpeedRadPerSec;
        float brakeAmps = Readings.BrakeClosed ? -backEmfVolts / Settings.BrakeOhms : 0f;
        Readings.ArmatureAmps = Readings.LineClosed ? (Readings.SupplyVolts - backEmfVolts) / ohms : brakeAmps;
        Readings.FieldAmps = Readings.FieldClosed ? Fitted.FieldAmps : 0f;
    }

    private void TickSpoilt(int elapsedMicroseconds, Action<Readings> spoil)
    {
        Readings truth = new();
        Copy(Readings, truth);
        spoil(Readings);
        Controller.Tick(elapsedMicroseconds, Readings, Outputs);
        Copy(truth, Readings);
    }

    private static void Copy(Readings from, Readings to)
    {
        foreach (FieldInfo field in typeof(Readings).GetFields()) field.SetValue(to, field.GetValue(from));
    }
}
