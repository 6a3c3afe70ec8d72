using System.Collections.Generic;
using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>The one table of signals. Everything that writes or reads a record goes by it; append only.</summary>
public static class SignalTable
{
    /// <summary>Every signal in the order of the columns.</summary>
    public static IReadOnlyList<Signal> All { get; } =
    [
        new("timeSeconds", "s", "Time since the start of the case; the controller's power-up tick lies one period before 0.", SignalRole.Time, SignalKind.LongReal, (in s) => s.TimeSeconds, (ref s, n) => s.TimeSeconds = n),
        new("supplyVolts", "V", "Voltage at the starter's input terminals, as the controller reads it.", SignalRole.Reading, SignalKind.Real, (in s) => s.SupplyVolts, (ref s, n) => s.SupplyVolts = (float)n),
        new("armatureAmps", "A", "Armature current, as the controller reads it.", SignalRole.Reading, SignalKind.Real, (in s) => s.ArmatureAmps, (ref s, n) => s.ArmatureAmps = (float)n),
        new("speedRadPerSec", "rad/s", "Shaft speed, as the controller reads it.", SignalRole.Reading, SignalKind.Real, (in s) => s.SpeedRadPerSec, (ref s, n) => s.SpeedRadPerSec = (float)n),
        new("backEmfVolts", "V", "Back-EMF that the controller estimates from speed.", SignalRole.Decision, SignalKind.Real, (in s) => s.BackEmfVolts, (ref s, n) => s.BackEmfVolts = (float)n),
        new("resistiveBackEmfVolts", "V", "Back-EMF that the controller estimates from volts, amperes and resistance; empty while not valid.", SignalRole.Decision, SignalKind.Real, (in s) => s.ResistiveBackEmfVolts, (ref s, n) => s.ResistiveBackEmfVolts = (float)n),
        new("torqueNewtonMetres", "N m", "Torque that the machine makes (simulation only).", SignalRole.Plant, SignalKind.LongReal, (in s) => s.TorqueNewtonMetres, (ref s, n) => s.TorqueNewtonMetres = n),
        new("loadTorqueNewtonMetres", "N m", "Torque that the load takes (simulation only).", SignalRole.Plant, SignalKind.LongReal, (in s) => s.LoadTorqueNewtonMetres, (ref s, n) => s.LoadTorqueNewtonMetres = n),
        new("phase", "", "Phase of the controller.", SignalRole.Decision, SignalKind.Id, (in s) => (int)s.Phase, (ref s, n) => s.Phase = (Phase)n, SignalWords.Of<Phase>()),
        new("stage", "", "Stage in effect; one more than the stages once all resistance is out.", SignalRole.Decision, SignalKind.Whole, (in s) => s.Stage, (ref s, n) => s.Stage = (int)n),
        new("reason", "", "Why the controller did what it did on this tick.", SignalRole.Decision, SignalKind.Id, (in s) => (int)s.Reason, (ref s, n) => s.Reason = (Reason)n, SignalWords.Of<Reason>()),
        new("reasonQuantity", "", "Number that belongs to the reason.", SignalRole.Decision, SignalKind.Real, (in s) => s.ReasonQuantity, (ref s, n) => s.ReasonQuantity = (float)n),
        new("reasonLimit", "", "What that number is held against.", SignalRole.Decision, SignalKind.Real, (in s) => s.ReasonLimit, (ref s, n) => s.ReasonLimit = (float)n),
        new("closeLine", "", "1 while the line coil is on.", SignalRole.Decision, SignalKind.Switch, (in s) => s.CloseLine ? 1 : 0, (ref s, n) => s.CloseLine = n != 0),
        new("lineClosed", "", "1 while the line contact is closed.", SignalRole.Reading, SignalKind.Switch, (in s) => s.LineClosed ? 1 : 0, (ref s, n) => s.LineClosed = n != 0),
        new("closeStages", "", "Stage coils as bits, 1 = stage 1, 2 = stage 2, 4 = stage 3 and so on.", SignalRole.Decision, SignalKind.Bits, (in s) => s.CloseStages, (ref s, n) => s.CloseStages = (int)n),
        new("stagesClosed", "", "Stage contacts as bits, likewise.", SignalRole.Reading, SignalKind.Bits, (in s) => s.StagesClosed, (ref s, n) => s.StagesClosed = (int)n),
        new("fault", "", "Latched fault.", SignalRole.Decision, SignalKind.Id, (in s) => (int)s.Fault, (ref s, n) => s.Fault = (FaultId)n, SignalWords.Of<FaultId>()),
        new("fieldAmps", "A", "Field current, as the controller reads it.", SignalRole.Reading, SignalKind.Real, (in s) => s.FieldAmps, (ref s, n) => s.FieldAmps = (float)n),
        new("closeBrake", "", "1 while the brake coil is on.", SignalRole.Decision, SignalKind.Switch, (in s) => s.CloseBrake ? 1 : 0, (ref s, n) => s.CloseBrake = n != 0),
        new("brakeClosed", "", "1 while the brake contact is closed.", SignalRole.Reading, SignalKind.Switch, (in s) => s.BrakeClosed ? 1 : 0, (ref s, n) => s.BrakeClosed = n != 0),
        new("closeField", "", "1 while the field coil is on.", SignalRole.Decision, SignalKind.Switch, (in s) => s.CloseField ? 1 : 0, (ref s, n) => s.CloseField = n != 0),
        new("fieldClosed", "", "1 while the field contact is closed.", SignalRole.Reading, SignalKind.Switch, (in s) => s.FieldClosed ? 1 : 0, (ref s, n) => s.FieldClosed = n != 0),
        new("speedValid", "", "1 while the controller is given a speed at all.", SignalRole.Reading, SignalKind.Switch, (in s) => s.SpeedValid ? 1 : 0, (ref s, n) => s.SpeedValid = n != 0),
        new("armatureCelsius", "degC", "Temperature of the armature winding (simulation only); empty where it does not follow the run.", SignalRole.Plant, SignalKind.Real, (in s) => s.ArmatureCelsius, (ref s, n) => s.ArmatureCelsius = (float)n),
        new("fieldCelsius", "degC", "Temperature of the field winding (simulation only), likewise.", SignalRole.Plant, SignalKind.Real, (in s) => s.FieldCelsius, (ref s, n) => s.FieldCelsius = (float)n),
        new("hottestSectionCelsius", "degC", "Temperature of the hottest starter section (simulation only), likewise.", SignalRole.Plant, SignalKind.Real, (in s) => s.HottestSectionCelsius, (ref s, n) => s.HottestSectionCelsius = (float)n),
        new("elapsedMicroseconds", "", "Microseconds that the controller was told on this tick; 0 on the tick at power-up.", SignalRole.Reading, SignalKind.Whole, (in s) => s.ElapsedMicroseconds, (ref s, n) => s.ElapsedMicroseconds = (int)n),
        new("stale", "", "1 when nothing could be read, so that the readings are of an earlier tick.", SignalRole.Reading, SignalKind.Switch, (in s) => s.Stale ? 1 : 0, (ref s, n) => s.Stale = n != 0),
        new("resistorCelsius", "degC", "Temperature of the starting resistor, as the controller reads it.", SignalRole.Reading, SignalKind.Real, (in s) => s.ResistorCelsius, (ref s, n) => s.ResistorCelsius = (float)n),
        new("permissives", "", "Permissive inputs as bits, 1 = input 1, 2 = input 2 and so on.", SignalRole.Reading, SignalKind.Bits, (in s) => s.Permissives, (ref s, n) => s.Permissives = (int)n),
        new("startPressed", "", "1 while the start input is on.", SignalRole.Reading, SignalKind.Switch, (in s) => s.StartPressed ? 1 : 0, (ref s, n) => s.StartPressed = n != 0),
        new("stopPressed", "", "1 while the stop input is on.", SignalRole.Reading, SignalKind.Switch, (in s) => s.StopPressed ? 1 : 0, (ref s, n) => s.StopPressed = n != 0),
        new("resetPressed", "", "1 while the reset input is on.", SignalRole.Reading, SignalKind.Switch, (in s) => s.ResetPressed ? 1 : 0, (ref s, n) => s.ResetPressed = n != 0),
        new("emergencyStop", "", "1 while the stop chain is open.", SignalRole.Reading, SignalKind.Switch, (in s) => s.EmergencyStop ? 1 : 0, (ref s, n) => s.EmergencyStop = n != 0),
        new("readyLamp", "", "1 while the lamp says that a press of start will be accepted.", SignalRole.Decision, SignalKind.Switch, (in s) => s.ReadyLamp ? 1 : 0, (ref s, n) => s.ReadyLamp = n != 0),
        new("runningLamp", "", "1 while the lamp says that the start is complete.", SignalRole.Decision, SignalKind.Switch, (in s) => s.RunningLamp ? 1 : 0, (ref s, n) => s.RunningLamp = n != 0),
        new("trippedLamp", "", "1 while the lamp says that a fault is latched.", SignalRole.Decision, SignalKind.Switch, (in s) => s.TrippedLamp ? 1 : 0, (ref s, n) => s.TrippedLamp = n != 0),
    ];
}
