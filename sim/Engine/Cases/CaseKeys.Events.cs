using System.Linq;
using StarterCtl.Core;

namespace StarterCtl.Engine.Cases;

/// <content>Keys of what happens on the way and of what is expected of the run.</content>
public static partial class CaseKeys
{
    /// <summary><c>expect.fault</c>: the fault that the run must latch first.</summary>
    public static readonly CaseKey ExpectFault =
        new("expect.fault", CaseValueKind.Choice, "\"field lost\"", "Fault that the run must latch first; the run then passes by it and not by a completed start")
        { Choices = [.. FaultTable.Rows.Skip(1).Select(row => row.Name)] };

    /// <summary><c>expect.by</c>: time by which the expected fault must be latched.</summary>
    public static readonly CaseKey ExpectBy =
        new("expect.by", CaseValueKind.Quantity, "\"2 s\"", "Time by which that fault must be latched")
        { Range = CaseRange.From0(Dimension.Time, "3600 s") };

    /// <summary><c>expect.phase</c>: the phase at the end of the run.</summary>
    public static readonly CaseKey ExpectPhase =
        new("expect.phase", CaseValueKind.Choice, "\"ready\"", "Phase of the controller at the end of the run")
        { Choices = ["ready", "field building", "accelerating", "running", "stopping", "braking", "tripped"] };

    /// <summary><c>event.when-speed-above</c>: the event happens when the speed rises above this.</summary>
    public static readonly CaseKey EventWhenSpeedAbove =
        new("event.when-speed-above", CaseValueKind.Quantity, "\"600 rpm\"", "Instead of a time: when the shaft's speed rises above this")
        { Range = CaseRange.Between(Dimension.Speed, "-100000 rpm", "100000 rpm") };

    /// <summary><c>event.when-speed-below</c>: the event happens when the speed falls below this.</summary>
    public static readonly CaseKey EventWhenSpeedBelow =
        new("event.when-speed-below", CaseValueKind.Quantity, "\"600 rpm\"", "Instead of a time: when the shaft's speed falls below this")
        { Range = CaseRange.Between(Dimension.Speed, "-100000 rpm", "100000 rpm") };

    /// <summary><c>event.when-stage</c>: the event happens when a start reaches this stage.</summary>
    public static readonly CaseKey EventWhenStage =
        new("event.when-stage", CaseValueKind.Count, "2", "Instead of a time: when a start reaches this stage; one more than there are stages once all resistance is out")
        { Range = CaseRange.Counts(1, Settings.MostStages + 1) };

    /// <summary><c>event.after</c>: delay after the event's condition.</summary>
    public static readonly CaseKey EventAfter =
        new("event.after", CaseValueKind.Quantity, "\"0.2 s\"", "Time from that condition to the event; when left out, at once")
        { Range = CaseRange.From0(Dimension.Time, "3600 s") };

    /// <summary><c>event.hoist-torque</c>: load torque that acts in one direction, from then on.</summary>
    public static readonly CaseKey EventHoistTorque =
        new("event.hoist-torque", CaseValueKind.Quantity, "\"120 N m\"", "Load torque that acts in one direction whatever the speed, from then on")
        { Range = CaseRange.Between(Dimension.Torque, "-100000 kN m", "100000 kN m") };

    /// <summary><c>event.over</c>: time of a ramp.</summary>
    public static readonly CaseKey EventOver =
        new("event.over", CaseValueKind.Quantity, "\"2 s\"", "Time over which load-torque, hoist-torque and supply-voltage of the event go there in a straight line; when left out, at once")
        { Range = CaseRange.Above0(Dimension.Time, "3600 s") };

    /// <summary><c>event.load-inertia</c>: moment of inertia of the load, from then on.</summary>
    public static readonly CaseKey EventLoadInertia =
        new("event.load-inertia", CaseValueKind.Quantity, "\"2.6 kg m2\"", "Moment of inertia of the load, from then on; the speed goes on")
        { Range = CaseRange.From0(Dimension.Inertia, "1e9 kg m2") };

    /// <summary><c>event.field-supply-voltage</c>: voltage of the field's supply, from then on.</summary>
    public static readonly CaseKey EventFieldSupplyVoltage =
        new("event.field-supply-voltage", CaseValueKind.Quantity, "\"80 V\"", "Voltage of the field's own supply, from then on")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV") };

    /// <summary><c>event.field</c>: whether the field circuit is open.</summary>
    public static readonly CaseKey EventField =
        new("event.field", CaseValueKind.Choice, "\"open\"", "Field circuit, from then on")
        { Choices = ["open", "sound"] };

    /// <summary><c>event.speed-signal</c>: what becomes of the speed signal.</summary>
    public static readonly CaseKey EventSpeedSignal =
        new("event.speed-signal", CaseValueKind.Choice, "\"lost\"", "Speed signal, from then on: known to be lost, stuck at its last value, or reading zero")
        { Choices = ["lost", "stuck", "zero", "sound"] };

    /// <summary><c>event.shaft</c>: whether the shaft is locked.</summary>
    public static readonly CaseKey EventShaft =
        new("event.shaft", CaseValueKind.Choice, "\"locked\"", "Shaft, from then on")
        { Choices = ["locked", "free"] };

    /// <summary><c>event.contact</c>: the contactor that a contact fault is about.</summary>
    public static readonly CaseKey EventContact =
        new("event.contact", CaseValueKind.Choice, "\"stage 2\"", "Contactor that event.contact-fault is about")
        {
            Choices = ["line", "field", "brake", .. Enumerable.Range(1, Settings.MostStages).Select(stage => $"stage {stage}")],
            ChoicesText = $"\"line\", \"field\", \"brake\", or \"stage 1\" to \"stage {Settings.MostStages}\"",
        };

    /// <summary><c>event.contact-fault</c>: what is wrong with that contactor.</summary>
    public static readonly CaseKey EventContactFault =
        new("event.contact-fault", CaseValueKind.Choice, "\"welded\"", "State of the contactor event.contact, from then on")
        { Choices = ["welded", "refuses to close", "drops out", "auxiliary open", "auxiliary closed", "sound"] };

    /// <summary><c>event.permissives</c>: how many permissive inputs are given.</summary>
    public static readonly CaseKey EventPermissives =
        new("event.permissives", CaseValueKind.Count, "0", "How many permissive inputs, counted from the first, are given from then on")
        { Range = CaseRange.Counts(0, 16) };

    /// <summary><c>event.current-gain</c>: gain of the current sensor.</summary>
    public static readonly CaseKey EventCurrentGain =
        new("event.current-gain", CaseValueKind.Ratio, "1.1", "What the current sensor reads over what flows, from then on")
        { Range = new CaseRange(-10, true, 10, true, "-10 to 10") };

    /// <summary><c>event.resistor-temperature</c>: temperature of the starting resistor as its sensor reads it.</summary>
    public static readonly CaseKey EventResistorTemperature =
        new("event.resistor-temperature", CaseValueKind.Quantity, "\"320 degC\"", "Temperature of the starting resistor as its sensor reads it, from then on")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "2000 degC") };
}
