namespace StarterCtl.Engine.Cases;

/// <content>Keys of the starter, the controller, the contactors, the run and its events.</content>
public static partial class CaseKeys
{
    /// <summary><c>starter.peak-current</c>: armature current that no stage exceeds (I1).</summary>
    public static readonly CaseKey StarterPeakCurrent =
        new("starter.peak-current", CaseValueKind.Quantity, "\"156 A\"", "Armature current that no stage exceeds (I1)")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>starter.switching-current</c>: armature current at which a stage is cut out (I2).</summary>
    public static readonly CaseKey StarterSwitchingCurrent =
        new("starter.switching-current", CaseValueKind.Quantity, "\"95 A\"",
            "Armature current at which a stage is cut out (I2)")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>starter.stages</c>: number of stages; when left out, as many as needed.</summary>
    public static readonly CaseKey StarterStages =
        new("starter.stages", CaseValueKind.Count, "3", "Number of stages; when left out, as many as needed")
        { Range = CaseRange.Counts(1, Core.Settings.MostStages) };

    /// <summary><c>starter.slack</c>: what gives way when the limits ask for no whole number of stages.</summary>
    public static readonly CaseKey StarterSlack =
        new("starter.slack", CaseValueKind.Choice, "\"last section\"",
            "What gives way when the limits ask for no whole number of stages")
        { Choices = ["last section", "raise switching current", "lower peak current"] };

    /// <summary><c>starter.sections</c>: real resistor sections instead of computed ones.</summary>
    public static readonly CaseKey StarterSections =
        new("starter.sections", CaseValueKind.Quantities, "[\"0.52 ohm\", \"0.31 ohm\"]",
            "Real resistor sections instead of computed ones, first cut out first")
        { Range = CaseRange.Above0(Dimension.Resistance, "1 kohm") };

    /// <summary><c>starter.cutout-voltages</c>: back-EMF thresholds instead of computed ones.</summary>
    public static readonly CaseKey StarterCutoutVoltages =
        new("starter.cutout-voltages", CaseValueKind.Quantities, "[\"90 V\", \"140 V\"]",
            "Back-EMF thresholds at rated voltage instead of computed ones")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>control.period</c>: time between two decisions of the controller.</summary>
    public static readonly CaseKey ControlPeriod =
        new("control.period", CaseValueKind.Quantity, "\"1 ms\"", "Time between two decisions of the controller")
        {
            Range = CaseRange.Between(Dimension.Time, "10 us", "100 ms"),
            IsWholeMicroseconds = true,
            DefaultText = "1 ms",
        };

    /// <summary><c>control.jitter</c>: by how much a tick may be late.</summary>
    public static readonly CaseKey ControlJitter =
        new("control.jitter", CaseValueKind.Quantity, "\"200 us\"",
            "Longest by which a tick of the simulated controller comes late, by chance anything from 0 to it; the next is not late for that")
        { Range = CaseRange.From0(Dimension.Time, "100 ms"), IsWholeMicroseconds = true, DefaultText = "0 ms" };

    /// <summary><c>control.confirm-time</c>: time for which the conditions of a cutout must hold.</summary>
    public static readonly CaseKey ControlConfirmTime =
        new("control.confirm-time", CaseValueKind.Quantity, "\"2 ms\"",
            "Time for which the conditions of a cutout must hold")
        { Range = CaseRange.From0(Dimension.Time, "1000 s"), DefaultText = "0 ms" };

    /// <summary><c>control.minimum-dwell</c>: shortest time in a stage.</summary>
    public static readonly CaseKey ControlMinimumDwell =
        new("control.minimum-dwell", CaseValueKind.Quantity, "\"50 ms\"", "Shortest time in a stage")
        { Range = CaseRange.From0(Dimension.Time, "1000 s"), DefaultText = "0 ms" };

    /// <summary><c>control.maximum-stage-time</c>: longest time in a stage before the controller trips.</summary>
    public static readonly CaseKey ControlMaximumStageTime =
        new("control.maximum-stage-time", CaseValueKind.Quantity, "\"10 s\"",
            "Longest time in a stage before the controller trips")
        { Range = CaseRange.Above0(Dimension.Time, "1000 s"), DefaultText = "10 s" };

    /// <summary><c>control.lockout-current</c>: armature current above which no stage is cut out.</summary>
    public static readonly CaseKey ControlLockoutCurrent =
        new("control.lockout-current", CaseValueKind.Quantity, "\"120 A\"",
            "Armature current above which no stage is cut out")
        {
            Range = CaseRange.Above0(Dimension.Current, "1000 kA"),
            AllowsNone = true,
            IsPercentOfRatedCurrent = true,
            DefaultText = "none",
        };

    /// <summary><c>control.instant-trip</c>: armature current of either sign that trips at once.</summary>
    public static readonly CaseKey ControlInstantTrip =
        new("control.instant-trip", CaseValueKind.Quantity, "\"250 A\"",
            "Armature current of either sign that trips at once")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>control.contact-time</c>: time within which a contact must follow its coil.</summary>
    public static readonly CaseKey ControlContactTime =
        new("control.contact-time", CaseValueKind.Quantity, "\"500 ms\"",
            "Time within which a contact must follow its coil")
        { Range = CaseRange.Above0(Dimension.Time, "1000 s") };

    /// <summary><c>contactors.closing-time</c>: time from coil on to contact closed.</summary>
    public static readonly CaseKey ContactorsClosingTime =
        new("contactors.closing-time", CaseValueKind.Quantity, "\"40 ms\"", "Time from coil on to contact closed")
        { Range = CaseRange.From0(Dimension.Time, "10 s"), DefaultText = "0 ms" };

    /// <summary><c>contactors.opening-time</c>: time from coil off to contact open.</summary>
    public static readonly CaseKey ContactorsOpeningTime =
        new("contactors.opening-time", CaseValueKind.Quantity, "\"15 ms\"", "Time from coil off to contact open")
        { Range = CaseRange.From0(Dimension.Time, "10 s"), DefaultText = "0 ms" };

    /// <summary><c>run.duration</c>: length of the simulated run.</summary>
    public static readonly CaseKey RunDuration =
        new("run.duration", CaseValueKind.Quantity, "\"8 s\"", "Length of the simulated run")
        { Range = CaseRange.Above0(Dimension.Time, "3600 s"), DefaultText = "10 s" };

    /// <summary><c>run.record-period</c>: time between two recorded samples.</summary>
    public static readonly CaseKey RunRecordPeriod =
        new("run.record-period", CaseValueKind.Quantity, "\"1 ms\"", "Time between two recorded samples")
        { Range = CaseRange.Above0(Dimension.Time, "3600 s") };

    /// <summary><c>limits.peak-current</c>: armature current that the run must not exceed.</summary>
    public static readonly CaseKey LimitsPeakCurrent =
        new("limits.peak-current", CaseValueKind.Quantity, "\"160 A\"", "Armature current that the run must not exceed")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), IsPercentOfRatedCurrent = true };

    /// <summary><c>limits.peak-torque</c>: motor torque that the run must not exceed.</summary>
    public static readonly CaseKey LimitsPeakTorque =
        new("limits.peak-torque", CaseValueKind.Quantity, "\"280 N m\"", "Motor torque that the run must not exceed")
        { Range = CaseRange.Above0(Dimension.Torque, "100000 kN m") };

    /// <summary><c>limits.start-time</c>: time by which the start must be complete.</summary>
    public static readonly CaseKey LimitsStartTime =
        new("limits.start-time", CaseValueKind.Quantity, "\"6 s\"", "Time by which the start must be complete")
        { Range = CaseRange.Above0(Dimension.Time, "3600 s") };

    /// <summary><c>event.at</c>: time of the event since the run began.</summary>
    public static readonly CaseKey EventAt =
        new("event.at", CaseValueKind.Quantity, "\"5 s\"", "Time of the event since the run began")
        { Range = CaseRange.From0(Dimension.Time, "3600 s") };

    /// <summary><c>event.load-torque</c>: load torque that does not depend on speed, from then on.</summary>
    public static readonly CaseKey EventLoadTorque =
        new("event.load-torque", CaseValueKind.Quantity, "\"120 N m\"",
            "Load torque that does not depend on speed, from then on")
        { Range = CaseRange.From0(Dimension.Torque, "100000 kN m") };

    /// <summary><c>event.supply-voltage</c>: supply voltage without load, from then on.</summary>
    public static readonly CaseKey EventSupplyVoltage =
        new("event.supply-voltage", CaseValueKind.Quantity, "\"180 V\"", "Supply voltage without load, from then on")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV") };

    /// <summary><c>event.command</c>: what the operator does.</summary>
    public static readonly CaseKey EventCommand =
        new("event.command", CaseValueKind.Choice, "\"stop\"", "What the operator does")
        { Choices = ["start", "stop", "reset", "emergency stop", "release emergency stop"] };
}
