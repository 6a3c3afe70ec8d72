using System.Collections.Generic;
using System.Linq;
using static StarterCtl.Core.Tests.Scene;

namespace StarterCtl.Core.Tests;

/// <summary>Every fault that can come and go: where, how, after how many ticks of 1 ms, and what clears it.</summary>
internal static class FaultCases
{
    internal static readonly Scene[] Everywhere = [Ready, FieldBuilding, Presetting, LineClosing, Accelerating, Running, Stopping, BrakeDelay, Braking];

    private const int ContactTicks = 100;

    // A watch counts from the first tick that shows the cause, and so trips one tick behind its time.
    private const int WatchedContactTicks = 101;
    private const int ConfirmTicks = 21;

    private static readonly Scene[] LineCommanded = [LineClosing, Accelerating, Running];
    private static readonly Scene[] LineSeen = [Accelerating, Running];

    internal static readonly FaultCase[] All = [.. Readings(), .. Contacts(), .. Shaft(), .. Surroundings(), .. Times()];

    private static IEnumerable<FaultCase> Readings()
    {
        yield return new(FaultId.EmergencyStop, "chain open") { Spoil = r => r.EmergencyStop = true, Value = 1f, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "supply no number") { Spoil = r => r.SupplyVolts = float.NaN, Value = float.NaN, Limit = 500f, Channel = Channel.Supply, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "supply -50.1 V") { Spoil = r => r.SupplyVolts = -50.1f, Value = -50.1f, Limit = -50f, Channel = Channel.Supply, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "current no number") { Spoil = r => r.ArmatureAmps = float.NaN, Value = float.NaN, Limit = 1e6f, Channel = Channel.ArmatureCurrent, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "speed 201 rad/s") { Spoil = r => r.SpeedRadPerSec = 201f, Value = 201f, Limit = 200f, Channel = Channel.Speed, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "field no number") { Spoil = r => r.FieldAmps = float.NaN, Value = float.NaN, Limit = 1e6f, Channel = Channel.FieldCurrent, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "resistor 2001 degC") { Spoil = r => r.ResistorCelsius = 2001f, Value = 2001f, Limit = 2000f, Channel = Channel.ResistorTemperature, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ReadingInvalid, "resistor -101 degC") { Spoil = r => r.ResistorCelsius = -101f, Value = -101f, Limit = -100f, Channel = Channel.ResistorTemperature, Trips = Everywhere, Holds = true };
        yield return new(FaultId.Overcurrent, "1001 A") { Spoil = r => r.ArmatureAmps = 1001f, Value = 1001f, Limit = 1000f, Trips = Everywhere, Holds = true };
        yield return new(FaultId.Overcurrent, "-1001 A") { Spoil = r => r.ArmatureAmps = -1001f, Value = -1001f, Limit = 1000f, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ResistorTooHot, "351 degC") { Spoil = r => r.ResistorCelsius = 351f, Value = 351f, Limit = 350f, Channel = Channel.ResistorTemperature, Trips = Everywhere, Holds = true };
        yield return new(FaultId.CurrentWhileOpen, "11 A")
        {
            Spoil = r => r.ArmatureAmps = 11f,
            Value = 11f,
            Limit = 10f,
            Ticks = 101,
            Holds = true,
            Trips = [Ready, FieldBuilding, BrakeDelay],
            IsHarmless = [Presetting, Accelerating, Running, Stopping, Braking],
        };
        yield return new(FaultId.SectionDrifted, "57 % of the current behind the closing")
        {
            Spoil = r => r.ArmatureAmps *= 0.57f,
            Value = 399f,
            Limit = 700f,
            Ticks = 30,
            Trips = [LineClosing],
            IsHarmless = [.. Everywhere.Except([LineClosing])],
        };
    }

    private static IEnumerable<FaultCase> Contacts()
    {
        yield return new(FaultId.ContactDidNotClose, "line") { Spoil = r => r.LineClosed = false, Ticks = ContactTicks, Trips = LineCommanded, IsHarmless = [Ready, FieldBuilding, Presetting, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.ContactDidNotClose, "stage 1") { Spoil = r => r.StagesClosed &= ~1, Value = 1f, Ticks = ContactTicks, Trips = [Presetting, Accelerating, Running], IsHarmless = [Ready, FieldBuilding, LineClosing, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.ContactDidNotClose, "brake") { Spoil = r => r.BrakeClosed = false, Value = ContactNumber.Brake, Ticks = WatchedContactTicks, Trips = [Braking], IsHarmless = [.. Everywhere.Except([Braking])] };
        yield return new(FaultId.ContactDidNotClose, "field") { Spoil = r => r.FieldClosed = false, Value = ContactNumber.Field, Ticks = WatchedContactTicks, Trips = [.. Everywhere.Except([Ready, Presetting])], IsHarmless = [Ready] };
        yield return new(FaultId.ContactDidNotOpen, "line") { Spoil = r => r.LineClosed = true, Ticks = ContactTicks, Holds = true, Trips = [FieldBuilding, Presetting, Stopping, BrakeDelay], IsHarmless = LineSeen };
        yield return new(FaultId.ContactDidNotOpen, "line under the brake") { Spoil = r => r.LineClosed = true, Holds = true, Trips = [Braking], IsHarmless = LineSeen };
        yield return new(FaultId.ContactDidNotOpen, "line, field not watched") { Change = s => s.MinimumFieldAmps = 0f, Spoil = r => r.LineClosed = true, Ticks = ContactTicks, Holds = true, Trips = [Ready] };
        yield return new(FaultId.ContactDidNotOpen, "stage 3") { Spoil = r => r.StagesClosed |= 4, Value = 3f, Ticks = ContactTicks, Holds = true, Trips = [Ready, FieldBuilding, Accelerating, Stopping, BrakeDelay], IsHarmless = [Running] };
        yield return new(FaultId.ContactDidNotOpen, "stage 3 under the brake") { Spoil = r => r.StagesClosed |= 4, Value = 3f, Holds = true, Trips = [Braking], IsHarmless = [Running] };
        yield return new(FaultId.ContactDidNotOpen, "stage 3 before the line is in") { Spoil = r => r.StagesClosed |= 4, Value = 3f, Holds = true, Trips = [LineClosing], IsHarmless = [Running] };
        yield return new(FaultId.ContactDidNotOpen, "brake") { Spoil = r => r.BrakeClosed = true, Value = ContactNumber.Brake, Ticks = WatchedContactTicks, Holds = true, Trips = [Ready, FieldBuilding, Presetting, Stopping, BrakeDelay], IsHarmless = [Braking] };
        yield return new(FaultId.ContactDidNotOpen, "brake under the line") { Spoil = r => r.BrakeClosed = true, Value = ContactNumber.Brake, Holds = true, Trips = [LineClosing, Accelerating, Running], IsHarmless = [Braking] };
        yield return new(FaultId.ContactDidNotOpen, "field") { Spoil = r => r.FieldClosed = true, Value = ContactNumber.Field, Ticks = WatchedContactTicks, Holds = true, Trips = [Ready], IsHarmless = [.. Everywhere.Except([Ready])] };
    }

    private static IEnumerable<FaultCase> Shaft()
    {
        yield return new(FaultId.SpeedSignalLost, "at once") { Spoil = r => r.SpeedValid = false, Trips = Everywhere, Holds = true };
        yield return new(FaultId.SpeedSignalLost, "after 30 ms") { Change = s => s.SpeedLossMicroseconds = 30 * Bench.Millisecond, Spoil = r => r.SpeedValid = false, Ticks = 31, Trips = [LineClosing, Accelerating, Running, Braking] };
        yield return new(FaultId.Overspeed, "121 rad/s") { Spoil = r => r.SpeedRadPerSec = 121f, Value = 121f, Limit = 120f, Ticks = ConfirmTicks, Trips = [.. Everywhere.Except([Accelerating])], Holds = true };
        yield return new(FaultId.Overspeed, "driven to 121 rad/s") { Provoke = b => b.BackEmf(302.5f), Value = 121f, Limit = 120f, Ticks = ConfirmTicks, Trips = [Accelerating], Holds = true };
        yield return new(FaultId.ReverseRotation, "-6 rad/s") { Spoil = r => r.SpeedRadPerSec = -6f, Value = -6f, Limit = -5f, Ticks = ConfirmTicks, Refusal = Refusal.ShaftTurnsBackwards, Trips = LineSeen, IsHarmless = [Ready, FieldBuilding, Presetting, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.Stalled, "401 A at rest")
        {
            Change = s => s.DisagreementVolts = Settings.Largest,
            Spoil = r => (r.SpeedRadPerSec, r.ArmatureAmps) = (1f, r.LineClosed ? 401f : 0f),
            Value = 401f,
            Limit = 400f,
            Ticks = 501,
            Trips = LineSeen,
            IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking],
        };
        yield return new(FaultId.BackEmfDisagreement, "speed 20 rad/s too low") { Spoil = r => r.SpeedRadPerSec -= 20f, Value = 50f, Limit = 40f, Ticks = 401, Trips = LineSeen, IsHarmless = [BrakeDelay, Braking, Stopping] };
        yield return new(FaultId.BackEmfDisagreement, "speed 20 rad/s too high") { Spoil = r => r.SpeedRadPerSec += 20f, Value = 50f, Limit = 40f, Ticks = 401, Trips = [Running], IsHarmless = [Ready, FieldBuilding, BrakeDelay, Braking, Stopping] };
    }

    private static IEnumerable<FaultCase> Surroundings()
    {
        yield return new(FaultId.FieldLost, "1.9 A") { Spoil = r => r.FieldAmps = 1.9f, Value = 1.9f, Limit = 2f, Ticks = ConfirmTicks, Trips = LineCommanded, IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.SupplyLow, "199 V") { Spoil = r => r.SupplyVolts = 199f, Value = 199f, Limit = 200f, Ticks = 301, Refusal = Refusal.SupplyLow, Trips = [Presetting, LineClosing, Accelerating, Running], IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.SupplyHigh, "301 V") { Spoil = r => r.SupplyVolts = 301f, Value = 301f, Limit = 300f, Ticks = 201, Refusal = Refusal.SupplyHigh, Trips = LineCommanded, IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.Overload, "image at its limit") { Provoke = b => b.Controller.Heat.Motor.Level = 1f, Spoil = r => r.ArmatureAmps = 9f, Value = 9f, Limit = 350f, Trips = Everywhere, Holds = true };
        yield return new(FaultId.ResistorTooHot, "image at its limit") { Provoke = b => b.Controller.Heat.Resistor.Level = 1f, Value = 1e6f, Limit = 1e6f, Trips = Everywhere, Holds = true };
        yield return new(FaultId.PermissiveLost, "the second withdrawn") { Spoil = r => r.Permissives = 5, Value = 1f, Limit = 3f, Ticks = ConfirmTicks, Refusal = Refusal.PermissiveMissing, Trips = [FieldBuilding, Presetting, LineClosing, Accelerating, Running], IsHarmless = [Ready, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.LoopLate, "5.001 ms") { TickMicroseconds = 5001, Value = 5001 * 0.000001f, Limit = 5000 * 0.000001f, Trips = [.. Everywhere.Except([Ready])], IsHarmless = [Ready] };
        yield return new(FaultId.NoField, "1.9 A") { Spoil = r => r.FieldAmps = 1.9f, Value = 1.9f, Limit = 2f, Ticks = 1000, Trips = [FieldBuilding], IsHarmless = [Ready, BrakeDelay, Braking] };
        yield return new(FaultId.NoField, "1.9 A before the line is commanded") { Spoil = r => r.FieldAmps = 1.9f, Value = 1.9f, Limit = 2f, Trips = [Presetting], IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking] };
        yield return new(FaultId.NoField, "contact open before the line is commanded") { Spoil = r => r.FieldClosed = false, Value = 5f, Limit = 2f, Trips = [Presetting], IsHarmless = [Ready, FieldBuilding, Stopping, BrakeDelay, Braking] };
    }

    private static IEnumerable<FaultCase> Times()
    {
        // Nothing is done to these but to wait.
        yield return new(FaultId.StageTookTooLong, "stage 2 for 3 s") { Value = 2f, Limit = 3f, Ticks = 2950, Trips = [Accelerating], IsHarmless = [Ready, Running] };
        yield return new(FaultId.SequenceIncomplete, "400 ms") { Change = s => s.MaximumStartMicroseconds = 400 * Bench.Millisecond, Value = 1f, Limit = 0.4f, Ticks = 400, Trips = [LineClosing], IsHarmless = [Ready, FieldBuilding, Running, BrakeDelay, Braking] };
        yield return new(FaultId.BrakeDidNotFinish, "230 V for 2 s") { Value = 92f, Limit = 5f, Ticks = 1990, Trips = [Braking], IsHarmless = [Ready, Running] };
    }
}
