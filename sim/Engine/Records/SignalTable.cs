using System.Collections.Generic;

namespace StarterCtl.Engine.Records;

/// <summary>The one table of signals. Everything that writes or reads a record goes by it; append only.</summary>
public static class SignalTable
{
    /// <summary>Every signal in the order of the columns.</summary>
    public static IReadOnlyList<Signal> All { get; } =
    [
        new("timeSeconds", "s", "Time since the start of the case; the controller's power-up tick lies one period before 0.", s => s.TimeSeconds),
        new("supplyVolts", "V", "Voltage at the starter's input terminals, as the controller reads it.", s => s.SupplyVolts),
        new("armatureAmps", "A", "Armature current, as the controller reads it.", s => s.ArmatureAmps),
        new("speedRadPerSec", "rad/s", "Shaft speed, as the controller reads it.", s => s.SpeedRadPerSec),
        new("backEmfVolts", "V", "Back-EMF that the controller estimates from speed.", s => s.BackEmfVolts),
        new("resistiveBackEmfVolts", "V", "Back-EMF that the controller estimates from volts, amperes and resistance; empty while not valid.", s => s.ResistiveBackEmfVolts),
        new("torqueNewtonMetres", "N m", "Torque that the machine makes (simulation only).", s => s.TorqueNewtonMetres),
        new("loadTorqueNewtonMetres", "N m", "Torque that the load takes (simulation only).", s => s.LoadTorqueNewtonMetres),
        new("phase", "", "Phase of the controller.", s => (int)s.Phase, s => s.Phase.ToString()),
        new("stage", "", "Stage in effect; one more than the stages once all resistance is out.", s => s.Stage),
        new("reason", "", "Why the controller did what it did on this tick.", s => (int)s.Reason, s => s.Reason.ToString()),
        new("reasonQuantity", "", "Number that belongs to the reason.", s => s.ReasonQuantity),
        new("reasonLimit", "", "What that number is held against.", s => s.ReasonLimit),
        new("closeLine", "", "1 while the line coil is on.", s => s.CloseLine ? 1 : 0),
        new("lineClosed", "", "1 while the line contact is closed.", s => s.LineClosed ? 1 : 0),
        new("closeStages", "", "Stage coils as bits, 1 = stage 1, 2 = stage 2, 4 = stage 3 and so on.", s => s.CloseStages),
        new("stagesClosed", "", "Stage contacts as bits, likewise.", s => s.StagesClosed),
        new("fault", "", "Latched fault.", s => (int)s.Fault, s => s.Fault.ToString()),
        new("fieldAmps", "A", "Field current, as the controller reads it.", s => s.FieldAmps),
        new("closeBrake", "", "1 while the brake coil is on.", s => s.CloseBrake ? 1 : 0),
        new("brakeClosed", "", "1 while the brake contact is closed.", s => s.BrakeClosed ? 1 : 0),
        new("closeField", "", "1 while the field coil is on.", s => s.CloseField ? 1 : 0),
        new("fieldClosed", "", "1 while the field contact is closed.", s => s.FieldClosed ? 1 : 0),
        new("speedValid", "", "1 while the controller is given a speed at all.", s => s.SpeedValid ? 1 : 0),
        new("armatureCelsius", "degC", "Temperature of the armature winding (simulation only); empty where it does not follow the run.", s => s.ArmatureCelsius),
        new("fieldCelsius", "degC", "Temperature of the field winding (simulation only), likewise.", s => s.FieldCelsius),
        new("hottestSectionCelsius", "degC", "Temperature of the hottest starter section (simulation only), likewise.", s => s.HottestSectionCelsius),
    ];
}
