namespace StarterCtl.Engine.Cases;

/// <content>Keys of the field circuit, the magnetisation and the series winding.</content>
public static partial class CaseKeys
{
    /// <summary><c>field.supply-voltage</c>: voltage of the field's own supply.</summary>
    public static readonly CaseKey FieldSupplyVoltage =
        new("field.supply-voltage", CaseValueKind.Quantity, "\"110 V\"", "Voltage of the field's own supply; a shunt winding has none, it lies on the motor's")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>field.resistance</c>: resistance of the field circuit.</summary>
    public static readonly CaseKey FieldResistance =
        new("field.resistance", CaseValueKind.Quantity, "\"92 ohm\"", "Resistance of the field circuit, winding and rheostat")
        { Range = CaseRange.Above0(Dimension.Resistance, "1000 kohm") };

    /// <summary><c>field.inductance</c>: inductance of the field winding.</summary>
    public static readonly CaseKey FieldInductance =
        new("field.inductance", CaseValueKind.Quantity, "\"30 H\"", "Inductance of the field winding")
        { Range = CaseRange.From0(Dimension.Inductance, "100000 H"), DefaultText = "0 H" };

    /// <summary><c>field.rated-current</c>: field current at which the machine constant holds.</summary>
    public static readonly CaseKey FieldRatedCurrent =
        new("field.rated-current", CaseValueKind.Quantity, "\"1.2 A\"", "Field current at which the machine constant holds; when left out, its supply voltage over its resistance, for a shunt winding the rated voltage over it")
        { Range = CaseRange.Above0(Dimension.Current, "100 kA") };

    /// <summary><c>field.curve-currents</c>: field current of each point of the magnetisation curve.</summary>
    public static readonly CaseKey FieldCurveCurrents =
        new("field.curve-currents", CaseValueKind.Quantities, "[\"0 A\", \"0.6 A\", \"1.2 A\"]", "Field current of each point of the magnetisation curve, for a series motor its own current; the first 0, rising; without a curve the flux is in proportion")
        { Range = CaseRange.From0(Dimension.Current, "100 kA"), FewestItems = 2, MostItems = Core.Settings.MostCurvePoints };

    /// <summary><c>field.curve-constants</c>: machine constant at each point of the magnetisation curve.</summary>
    public static readonly CaseKey FieldCurveConstants =
        new("field.curve-constants", CaseValueKind.Quantities, "[\"0.05 V s/rad\", \"1 V s/rad\", \"1.6 V s/rad\"]", "Machine constant at each point of the magnetisation curve, the first above 0, not falling; takes the place of the machine's own")
        { Range = CaseRange.From0(Dimension.MachineConstant, "1e6 V s/rad"), FewestItems = 2, MostItems = Core.Settings.MostCurvePoints };

    /// <summary><c>field.curve-emfs</c>: back-EMF at each point of the magnetisation curve.</summary>
    public static readonly CaseKey FieldCurveEmfs =
        new("field.curve-emfs", CaseValueKind.Quantities, "[\"6 V\", \"118 V\", \"190 V\"]", "Back-EMF measured at field.curve-speed at each point of the magnetisation curve, the first above 0, not falling; instead of field.curve-constants")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV"), FewestItems = 2, MostItems = Core.Settings.MostCurvePoints };

    /// <summary><c>field.curve-speed</c>: speed at which the back-EMFs of the curve were measured.</summary>
    public static readonly CaseKey FieldCurveSpeed =
        new("field.curve-speed", CaseValueKind.Quantity, "\"1150 rpm\"", "Speed at which field.curve-emfs were measured")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>field.armature-reaction</c>: field current that the armature current takes away.</summary>
    public static readonly CaseKey FieldArmatureReaction =
        new("field.armature-reaction", CaseValueKind.Ratio, "0.002", "Field amperes that each ampere of the armature takes away")
        { Range = new CaseRange(0, true, 1, false, "0 to below 1"), DefaultText = "0" };

    /// <summary><c>field.discharge-time</c>: time constant of the current in an open field circuit.</summary>
    public static readonly CaseKey FieldDischargeTime =
        Time("field.discharge-time", "\"50 ms\"", "50 ms", "Time constant with which the field current dies through its discharge resistor once the circuit is open");

    /// <summary><c>field.contactor</c>: whether the controller switches the field.</summary>
    public static readonly CaseKey FieldContactor =
        YesOrNo("field.contactor", "no", "Whether the controller switches the field by a contactor; otherwise it is on before the start");

    /// <summary><c>field.minimum-current</c>: least field current with which the armature may be live.</summary>
    public static readonly CaseKey FieldMinimumCurrent =
        new("field.minimum-current", CaseValueKind.Quantity, "\"0.6 A\"", "Least field current with which the armature may be live")
        { Range = CaseRange.Above0(Dimension.Current, "100 kA") };

    /// <summary><c>field.build-time</c>: time for which the field must stand before the line closes.</summary>
    public static readonly CaseKey FieldBuildTime =
        Time("field.build-time", "\"1 s\"", "0 ms", "Time for which the field must stand before the line closes");

    /// <summary><c>field.maximum-time</c>: time within which the field must stand.</summary>
    public static readonly CaseKey FieldMaximumTime =
        LimitTime("field.maximum-time", "\"5 s\"", "5 s", "Time within which the field must stand");

    /// <summary><c>series-field.resistance</c>: resistance of the series winding.</summary>
    public static readonly CaseKey SeriesFieldResistance =
        new("series-field.resistance", CaseValueKind.Quantity, "\"20 mohm\"", "Resistance of the series winding; when left out, motor.armature-resistance includes it")
        { Range = CaseRange.From0(Dimension.Resistance, "1 kohm"), DefaultText = "0 ohm" };

    /// <summary><c>series-field.inductance</c>: inductance of the series winding.</summary>
    public static readonly CaseKey SeriesFieldInductance =
        new("series-field.inductance", CaseValueKind.Quantity, "\"2 mH\"", "Inductance of the series winding; when left out, motor.armature-inductance includes it")
        { Range = CaseRange.From0(Dimension.Inductance, "1000 H"), DefaultText = "0 H" };

    /// <summary><c>series-field.turns-ratio</c>: turns of the series winding over those of the shunt winding.</summary>
    public static readonly CaseKey SeriesFieldTurnsRatio =
        new("series-field.turns-ratio", CaseValueKind.Ratio, "0.004", "Turns of a compound motor's series winding over those of its shunt winding")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1") };

    /// <summary><c>series-field.connection</c>: whether the series winding carries the shunt winding's current too.</summary>
    public static readonly CaseKey SeriesFieldConnection =
        new("series-field.connection", CaseValueKind.Choice, "\"long shunt\"", "Whether a compound motor's series winding carries the armature current alone (long shunt) or the shunt winding's too (short shunt)")
        { Choices = ["long shunt", "short shunt"], DefaultText = "long shunt" };

    /// <summary><c>series-field.sense</c>: whether the series winding adds to the shunt winding.</summary>
    public static readonly CaseKey SeriesFieldSense =
        new("series-field.sense", CaseValueKind.Choice, "\"cumulative\"", "Whether a compound motor's series winding adds to the shunt winding (cumulative) or takes away from it (differential)")
        { Choices = ["cumulative", "differential"], DefaultText = "cumulative" };
}
