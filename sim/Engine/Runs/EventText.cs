using System;
using System.Collections.Generic;
using System.Numerics;
using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>What happens to machine, panel and operator, in words. The one place for these words.</summary>
public static class EventText
{
    /// <summary>The sentence for an event, in lower case and without a full stop.</summary>
    public static string Sentence(RunEvent happening)
    {
        List<string> parts = [];
        string over = happening.OverSeconds > 0 ? $" over {Text.Number(happening.OverSeconds)} s" : "";
        if (happening.LoadTorqueNewtonMetres is double torque) parts.Add($"the load's constant torque becomes {Text.Number(torque)} N m{over}");
        if (happening.SupplyVolts is double volts) parts.Add($"the supply becomes {Text.Number(volts)} V{over}");
        if (happening.HoistNewtonMetres is double hoist) parts.Add($"the hoist's torque becomes {Text.Number(hoist)} N m{over}");
        if (happening.LoadInertiaKgM2 is double inertia) parts.Add($"the load's inertia becomes {Text.Number(inertia)} kg m2");
        if (happening.FieldSupplyVolts is double fieldVolts) parts.Add($"the field's supply becomes {Text.Number(fieldVolts)} V");
        if (happening.FieldOpen is bool isOpen) parts.Add(isOpen ? "the field circuit breaks" : "the field circuit is mended");
        if (happening.SpeedSignal is SpeedSignalState signal) parts.Add(Signal(signal));
        if (happening.ShaftLocked is bool isLocked) parts.Add(isLocked ? "the shaft jams" : "the shaft is free again");
        if (happening.ContactFault is ContactFault fault) parts.Add(Contact(fault));
        if (happening.CoilVoltageRatio is double coil) parts.Add($"the coils get {Text.Number(100 * coil)} % of their rated voltage");
        if (happening.Permissives is int permissives) parts.Add(Permissives(permissives));
        if (happening.CurrentSensorGain is double gain) parts.Add($"the current sensor reads {Text.Number(gain)} times what flows");
        if (happening.MissingPulseRatio is double missing) parts.Add($"{Text.Number(100 * missing)} % of the pick-up's pulses are lost");
        if (happening.ExtraPulseRatio is double extra) parts.Add($"{Text.Number(100 * extra)} % more pulses come than the pick-up's own");
        if (happening.ResistorCelsius is double celsius) parts.Add($"the starting resistor reads {Text.Number(celsius)} degC");
        if (happening.SensorFault is SensorFault sensor) parts.Add(Sensor(sensor));
        if (happening.AmbientCelsius is double ambient) parts.Add($"the surroundings become {Text.Number(ambient)} degC");
        if (happening.CoolingBlocked is bool isBlocked) parts.Add(isBlocked ? "the cooling is blocked" : "the cooling is sound again");
        if (happening.Command is OperatorCommand command) parts.Add(Command(command));
        string when = happening.When is EventCondition condition ? $" ({Condition(condition)})" : "";
        return $"event{when}: {string.Join(", ", parts)}";
    }

    /// <summary>What an event waits for, in lower case and without a full stop.</summary>
    public static string Condition(EventCondition condition)
    {
        string delay = condition.AfterSeconds > 0 ? $"{Text.Number(condition.AfterSeconds)} s after" : "when";
        double rpm = condition.Limit * 30 / Math.PI;
        return condition.Kind switch
        {
            EventConditionKind.SpeedAbove => $"{delay} the speed rises above {Text.Number(rpm)} r/min",
            EventConditionKind.SpeedBelow => $"{delay} the speed falls below {Text.Number(rpm)} r/min",
            _ => $"{delay} stage {Text.Number(condition.Limit)} is reached",
        };
    }

    private static string Signal(SpeedSignalState signal) => signal switch
    {
        SpeedSignalState.Lost => "the speed signal is lost",
        SpeedSignalState.Stuck => "the speed signal stays at its last value",
        SpeedSignalState.Zero => "the speed signal reads zero",
        _ => "the speed signal is sound again",
    };

    private static string Sensor(SensorFault fault)
    {
        string name = fault.Sensor switch
        {
            SensorName.SupplyVolts => "supply voltage",
            SensorName.ArmatureAmps => "armature current",
            SensorName.FieldAmps => "field current",
            _ => "resistor's temperature",
        };
        return fault.Kind switch
        {
            SensorFaultKind.Stuck => $"the sensor of the {name} stays at its last reading",
            SensorFaultKind.OpenWire => $"the wire of the sensor of the {name} opens",
            _ => $"the sensor of the {name} is sound again",
        };
    }

    private static string Contact(ContactFault fault)
    {
        string name = fault.Contact switch
        {
            ContactName.Line => ContactText.Name(ContactNumber.Line),
            ContactName.Field => ContactText.Name(ContactNumber.Field),
            ContactName.Brake => ContactText.Name(ContactNumber.Brake),
            _ => ContactText.Name(fault.Stage),
        };
        return fault.Kind switch
        {
            ContactFaultKind.Welds => $"the {name} welds",
            ContactFaultKind.RefusesToClose => $"the {name} refuses to close",
            ContactFaultKind.DropsOut => $"the {name} drops out",
            ContactFaultKind.AuxiliaryStuckOpen => $"the auxiliary contact of the {name} stays open",
            ContactFaultKind.AuxiliaryStuckClosed => $"the auxiliary contact of the {name} stays closed",
            _ => $"the {name} is sound again",
        };
    }

    private static string Permissives(int bits) => bits switch
    {
        0 => "no permissive input is given any more",
        1 => "only the first permissive input is given from now on",
        _ => $"the first {BitOperations.PopCount((uint)bits)} permissive inputs are given from now on",
    };

    private static string Command(OperatorCommand command) => command switch
    {
        OperatorCommand.Start => "the operator presses start",
        OperatorCommand.Stop => "the operator presses stop",
        OperatorCommand.Reset => "the operator presses reset",
        OperatorCommand.EmergencyStop => "the emergency stop opens",
        OperatorCommand.ReleaseEmergencyStop => "the emergency stop is released",
        _ => command.ToString(),
    };
}
