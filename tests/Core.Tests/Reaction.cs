using System;

namespace StarterCtl.Core.Tests;

/// <summary>Where a failure meets the rig.</summary>
internal enum Meeting
{
    /// <summary>200 ms after a start is complete.</summary>
    Running,

    /// <summary>As stage 2 comes in.</summary>
    Starting,

    /// <summary>At rest; 200 ms later start is pressed for 100 ms.</summary>
    Ready,

    /// <summary>Running; 200 ms later stop is pressed for 100 ms, and the brake brings the shaft down.</summary>
    Stopping,

    /// <summary>Tripped by an emergency stop that is released again; 200 ms later reset is pressed for 100 ms.</summary>
    Tripped,
}

/// <summary>What came of it within the time watched.</summary>
internal enum Outcome
{
    /// <summary>Latched a fault.</summary>
    Trips,

    /// <summary>Ready, and refuses the start.</summary>
    Refuses,

    /// <summary>Runs with everything cut out.</summary>
    Runs,

    /// <summary>Stops as by a press of stop.</summary>
    Stops,

    /// <summary>Ready, nothing refused.</summary>
    IsReady,

    /// <summary>Still tripped by the emergency stop.</summary>
    StaysTripped,

    /// <summary>Neither up to speed nor tripped when the time watched was over.</summary>
    IsSlow,
}

/// <summary>What was seen.</summary>
internal sealed record Reaction(Outcome Outcome, FaultId Fault, Refusal Refusal, int Milliseconds)
{
    internal const int WatchedMilliseconds = 4_000;

    private const int PressAt = 200;
    private const int PressTicks = 100;
    private const int OperateAt = 1_000;

    /// <summary>Brings the rig to the meeting, lets the input fail and watches.</summary>
    internal static Reaction Of(FailingInput cell, Meeting meeting, out float worstAmps, Action<Settings>? change = null)
    {
        ReactionRig rig = At(meeting, change);
        cell.Fail(rig);
        worstAmps = 0f;
        for (int ms = 0; ms < WatchedMilliseconds; ms++)
        {
            bool isPressed = ms is >= PressAt and < PressAt + PressTicks;
            rig.Truth.StartPressed = meeting == Meeting.Ready && isPressed;
            rig.Truth.StopPressed = meeting == Meeting.Stopping && isPressed;
            rig.Truth.ResetPressed = meeting == Meeting.Tripped && isPressed;
            if (meeting is Meeting.Running or Meeting.Starting && ms >= OperateAt) Operate(rig, cell.Input);
            rig.Tick();
            worstAmps = MathF.Max(worstAmps, MathF.Abs(rig.Truth.ArmatureAmps));
            if (rig.Controller.Fault.IsLatched && meeting != Meeting.Tripped) return new(Outcome.Trips, rig.Controller.Fault.Id, Refusal.None, ms + 1);
            if (rig.Controller.Phase == Phase.Stopping && meeting != Meeting.Stopping) return new(Outcome.Stops, FaultId.None, Refusal.None, ms + 1);
        }

        Outcome outcome = rig.Controller.Phase switch
        {
            Phase.Running => Outcome.Runs,
            Phase.Tripped => Outcome.StaysTripped,
            Phase.Ready => rig.Controller.Refusals == Refusal.None ? Outcome.IsReady : Outcome.Refuses,
            _ => Outcome.IsSlow,
        };
        return new(outcome, FaultId.None, outcome == Outcome.Refuses ? rig.Controller.Refusals : Refusal.None, 0);
    }

    private static ReactionRig At(Meeting meeting, Action<Settings>? change)
    {
        ReactionRig rig = new ReactionRig(change).Tick().Tick();
        if (meeting == Meeting.Ready) return rig;
        rig.Truth.StartPressed = true;
        rig.Tick();
        rig.Truth.StartPressed = false;
        rig.TickUntil(() => rig.Controller.Stage == 2);
        if (meeting == Meeting.Starting) return rig;
        rig.TickUntil(() => rig.Controller.Phase == Phase.Running);
        for (int i = 0; i < PressAt; i++) rig.Tick();
        if (meeting != Meeting.Tripped) return rig;
        rig.Truth.EmergencyStop = true;
        rig.Tick();
        rig.Truth.EmergencyStop = false;
        return rig.TickUntil(() => rig.Truth.SpeedRadPerSec <= 0f);
    }

    // What people or the plant ask for through the input that has failed.
    private static void Operate(ReactionRig rig, Input input)
    {
        rig.Truth.StopPressed = input == Input.Stop;
        rig.Truth.EmergencyStop = input == Input.EmergencyStop;
        if (input == Input.Permissive) rig.Truth.Permissives = 0;
    }
}
