namespace StarterCtl.Engine.Cases;

/// <content>Keys of brake, sensors and protections.</content>
public static partial class CaseKeys
{
    /// <summary><c>control.spinning-start</c>: whether a turning shaft may be started.</summary>
    public static readonly CaseKey ControlSpinningStart =
        YesOrNo("control.spinning-start", "yes", "Whether a turning shaft may be started, with as much resistance as its back-EMF leaves needed");

    /// <summary><c>brake.resistance</c>: resistance of the brake resistor.</summary>
    public static readonly CaseKey BrakeResistance =
        new("brake.resistance", CaseValueKind.Quantity, "\"1.6 ohm\"", "Resistance of the dynamic brake's resistor, without the armature; fits a brake")
        { Range = CaseRange.Above0(Dimension.Resistance, "1 kohm") };

    /// <summary><c>brake.release-speed</c>: speed at which the brake is released.</summary>
    public static readonly CaseKey BrakeReleaseSpeed =
        new("brake.release-speed", CaseValueKind.Quantity, "\"60 rpm\"", "Speed at which the brake is released")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>brake.delay</c>: time between the line's opening and the brake.</summary>
    public static readonly CaseKey BrakeDelay =
        Time("brake.delay", "\"100 ms\"", "0 ms", "Time from the line contact proven open to the brake, until the arc is out");

    /// <summary><c>brake.maximum-time</c>: longest braking.</summary>
    public static readonly CaseKey BrakeMaximumTime =
        LimitTime("brake.maximum-time", "\"8 s\"", "10 s", "Longest braking, and longest wait for it");

    /// <summary><c>sensors.speed</c>: whether the shaft has a speed sensor.</summary>
    public static readonly CaseKey SensorsSpeed =
        YesOrNo("sensors.speed", "yes", "Whether the shaft has a speed sensor");

    /// <summary><c>sensors.speed-loss</c>: what happens when the speed is lost.</summary>
    public static readonly CaseKey SensorsSpeedLoss =
        new("sensors.speed-loss", CaseValueKind.Choice, "\"keep running\"", "What happens when the speed is lost: trip, keep a running motor running, or finish a start by voltage and current too")
        { Choices = ["trip", "keep running", "finish start"], DefaultText = "trip" };

    /// <summary><c>sensors.speed-loss-time</c>: time for which the speed may be unknown.</summary>
    public static readonly CaseKey SensorsSpeedLossTime =
        Time("sensors.speed-loss-time", "\"200 ms\"", "0 ms", "Time for which the speed may be unknown before it counts as lost");

    /// <summary><c>sensors.resistive-confirm-time</c>: confirm time where voltage and current decide.</summary>
    public static readonly CaseKey SensorsResistiveConfirmTime =
        Time("sensors.resistive-confirm-time", "\"500 ms\"", "500 ms", "Confirm time of a cutout that voltage and current decide without the speed");

    /// <summary><c>sensors.standstill-speed</c>: speed up to which the shaft counts as standing.</summary>
    public static readonly CaseKey SensorsStandstillSpeed =
        new("sensors.standstill-speed", CaseValueKind.Quantity, "\"12 rpm\"", "Speed up to which the shaft counts as standing")
        { Range = CaseRange.From0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>sensors.zero-current</c>: current that counts as none.</summary>
    public static readonly CaseKey SensorsZeroCurrent =
        new("sensors.zero-current", CaseValueKind.Quantity, "\"2 A\"", "Armature current that counts as none: offset and noise of the sensor")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>sensors.step-tolerance</c>: part by which the current may contradict a resistance.</summary>
    public static readonly CaseKey SensorsStepTolerance =
        new("sensors.step-tolerance", CaseValueKind.Ratio, "0.2", "Part by which the resistance that the current shows after a closing may differ from the designed one; switches the proof by current on")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1") };

    /// <summary><c>sensors.step-settle-time</c>: time from the step of the current until it is judged.</summary>
    public static readonly CaseKey SensorsStepSettleTime =
        Time("sensors.step-settle-time", "\"30 ms\"", "20 ms", "Time from the step of the current until it is judged");

    /// <summary><c>sensors.line-contact</c>: whether the line contactor has an auxiliary contact.</summary>
    public static readonly CaseKey SensorsLineContact =
        YesOrNo("sensors.line-contact", "yes", "Whether the line contactor has an auxiliary contact; without it the current proves it");

    /// <summary><c>sensors.stage-contacts</c>: whether the stage contactors have auxiliary contacts.</summary>
    public static readonly CaseKey SensorsStageContacts =
        YesOrNo("sensors.stage-contacts", "yes", "Whether every stage contactor has an auxiliary contact; without them the step of the current proves it");

    /// <summary><c>sensors.brake-contact</c>: whether the brake contactor has an auxiliary contact.</summary>
    public static readonly CaseKey SensorsBrakeContact =
        YesOrNo("sensors.brake-contact", "yes", "Whether the brake contactor has an auxiliary contact");

    /// <summary><c>sensors.field-contact</c>: whether the field contactor has an auxiliary contact.</summary>
    public static readonly CaseKey SensorsFieldContact =
        YesOrNo("sensors.field-contact", "yes", "Whether the field contactor has an auxiliary contact");

    /// <summary><c>sensors.field-current</c>: whether the field current is measured.</summary>
    public static readonly CaseKey SensorsFieldCurrent =
        YesOrNo("sensors.field-current", "yes", "Whether the current of the field circuit is measured");

    /// <summary><c>protection.trip-confirm-time</c>: how long overspeed and the like must last.</summary>
    public static readonly CaseKey ProtectionTripConfirmTime =
        Time("protection.trip-confirm-time", "\"20 ms\"", "0 ms", "Time for which overspeed, reverse rotation, a lost field or a lost permissive must last to trip");

    /// <summary><c>protection.supply-low</c>: supply below which a dip begins.</summary>
    public static readonly CaseKey ProtectionSupplyLow =
        new("protection.supply-low", CaseValueKind.Quantity, "\"170 V\"", "Supply below which no start and no cutout happens and a dip begins")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>protection.dip-time</c>: longest dip that is ridden through.</summary>
    public static readonly CaseKey ProtectionDipTime =
        Time("protection.dip-time", "\"500 ms\"", "0 ms", "Longest dip that is ridden through; then the line opens");

    /// <summary><c>protection.dip-action</c>: what a dip does to the stages.</summary>
    public static readonly CaseKey ProtectionDipAction =
        new("protection.dip-action", CaseValueKind.Choice, "\"put resistance back\"", "What a dip does to the stages")
        { Choices = ["leave stages", "put resistance back"], DefaultText = "leave stages" };

    /// <summary><c>protection.supply-high</c>: supply above which no start happens.</summary>
    public static readonly CaseKey ProtectionSupplyHigh =
        new("protection.supply-high", CaseValueKind.Quantity, "\"250 V\"", "Supply above which no start happens and which trips after its time")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>protection.supply-high-time</c>: time for which the supply may be high.</summary>
    public static readonly CaseKey ProtectionSupplyHighTime =
        Time("protection.supply-high-time", "\"1 s\"", "0 ms", "Time for which the supply may be high");

    /// <summary><c>protection.overload-current</c>: current setting of the overload.</summary>
    public static readonly CaseKey ProtectionOverloadCurrent =
        new("protection.overload-current", CaseValueKind.Quantity, "\"77 A\"", "Current setting of the overload: the rated current")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>protection.overload-class</c>: trip class of the overload.</summary>
    public static readonly CaseKey ProtectionOverloadClass =
        new("protection.overload-class", CaseValueKind.Choice, "\"10\"", "Trip class of the overload: time constant of the motor's thermal image of 125, 290, 580 or 870 s")
        { Choices = ["10A", "10", "20", "30"], DefaultText = "10" };

    /// <summary><c>protection.overload-reset</c>: level below which an overload may be reset.</summary>
    public static readonly CaseKey ProtectionOverloadReset =
        new("protection.overload-reset", CaseValueKind.Ratio, "0.8", "Level of the thermal image, 1 at the trip, below which an overload may be reset and a start is permitted")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1"), DefaultText = "0.8" };

    /// <summary><c>protection.resistor-energy</c>: energy that the starting resistor may hold.</summary>
    public static readonly CaseKey ProtectionResistorEnergy =
        new("protection.resistor-energy", CaseValueKind.Quantity, "\"120 kJ\"", "Energy that the whole starting resistor may hold above its surroundings")
        { Range = CaseRange.Above0(Dimension.Energy, "1000 MJ") };

    /// <summary><c>protection.resistor-time-constant</c>: cooling time constant of the starting resistor.</summary>
    public static readonly CaseKey ProtectionResistorTimeConstant =
        LimitTime("protection.resistor-time-constant", "\"600 s\"", "600 s", "Cooling time constant of the starting resistor", "1000000 s");

    /// <summary><c>protection.resistor-start-level</c>: part of the energy up to which a start is permitted.</summary>
    public static readonly CaseKey ProtectionResistorStartLevel =
        new("protection.resistor-start-level", CaseValueKind.Ratio, "0.5", "Part of the resistor's energy up to which a start is permitted")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1"), DefaultText = "0.5" };

    /// <summary><c>protection.resistor-temperature</c>: resistor temperature that trips.</summary>
    public static readonly CaseKey ProtectionResistorTemperature =
        new("protection.resistor-temperature", CaseValueKind.Quantity, "\"350 degC\"", "Temperature of the starting resistor that trips; fits a sensor for it")
        { Range = CaseRange.Above0(Dimension.Temperature, "2000 degC") };

    /// <summary><c>protection.starts-per-hour</c>: starts permitted in any hour.</summary>
    public static readonly CaseKey ProtectionStartsPerHour =
        new("protection.starts-per-hour", CaseValueKind.Count, "6", "Starts permitted in any hour")
        { Range = CaseRange.Counts(1, Core.Settings.MostStartsPerHour) };

    /// <summary><c>protection.maximum-start-time</c>: longest time from the line's command to full supply.</summary>
    public static readonly CaseKey ProtectionMaximumStartTime =
        LimitTime("protection.maximum-start-time", "\"12 s\"", null, "Longest time from the line's command until all resistance is out");

    /// <summary><c>protection.stall-current</c>: current above which a standing shaft is stalled.</summary>
    public static readonly CaseKey ProtectionStallCurrent =
        new("protection.stall-current", CaseValueKind.Quantity, "\"120 A\"", "Armature current above which a standing shaft is stalled")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>protection.stall-time</c>: time for which the shaft may stand with it.</summary>
    public static readonly CaseKey ProtectionStallTime =
        LimitTime("protection.stall-time", "\"1 s\"", "1 s", "Time for which the shaft may stand with the stall current");

    /// <summary><c>protection.overspeed</c>: speed that trips.</summary>
    public static readonly CaseKey ProtectionOverspeed =
        new("protection.overspeed", CaseValueKind.Quantity, "\"1500 rpm\"", "Speed of either direction that trips; left out: twice the rated speed for a series motor, off for any other")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>protection.reverse-speed</c>: speed against the start that trips.</summary>
    public static readonly CaseKey ProtectionReverseSpeed =
        new("protection.reverse-speed", CaseValueKind.Quantity, "\"30 rpm\"", "Speed against the direction of the start that trips while the line is closed")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>protection.disagreement</c>: difference of the two back-EMFs that trips.</summary>
    public static readonly CaseKey ProtectionDisagreement =
        new("protection.disagreement", CaseValueKind.Quantity, "\"30 V\"", "Difference between the back-EMF from speed and the one from voltage and current that trips")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>protection.disagreement-time</c>: time for which they may differ.</summary>
    public static readonly CaseKey ProtectionDisagreementTime =
        Time("protection.disagreement-time", "\"500 ms\"", "500 ms", "Time for which the two back-EMFs may differ");

    /// <summary><c>protection.maximum-tick</c>: longest time between two decisions.</summary>
    public static readonly CaseKey ProtectionMaximumTick =
        LimitTime("protection.maximum-tick", "\"3 ms\"", null, "Longest time between two decisions while a coil is on");

    /// <summary><c>protection.permissives</c>: how many permissive inputs must be given.</summary>
    public static readonly CaseKey ProtectionPermissives =
        new("protection.permissives", CaseValueKind.Count, "2", "Number of permissive inputs that must be given to start and to run")
        { Range = CaseRange.Counts(1, 16) };

    private static CaseKey YesOrNo(string path, string defaultText, string summary) =>
        new(path, CaseValueKind.Choice, "\"yes\"", summary) { Choices = ["yes", "no"], DefaultText = defaultText };

    private static CaseKey Time(string path, string example, string defaultText, string summary) =>
        new(path, CaseValueKind.Quantity, example, summary) { Range = CaseRange.From0(Dimension.Time, "1000 s"), DefaultText = defaultText };

    private static CaseKey LimitTime(string path, string example, string? defaultText, string summary, string highest = "1000 s") =>
        new(path, CaseValueKind.Quantity, example, summary) { Range = CaseRange.Above0(Dimension.Time, highest), DefaultText = defaultText };
}
