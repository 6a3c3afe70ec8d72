namespace StarterCtl.Engine.Cases;

/// <content>Keys of what the parts around a start bear: cable, bus, contactors, and the duty that warms sections and windings.</content>
public static partial class CaseKeys
{
    /// <summary><c>supply.cable-length</c>: length of the cable from the bus to the starter.</summary>
    public static readonly CaseKey SupplyCableLength =
        new("supply.cable-length", CaseValueKind.Quantity, "\"40 m\"", "Length of the cable from the bus to the starter, one way; its resistance there and back then lies in the circuit behind supply.resistance")
        { Range = CaseRange.Above0(Dimension.Length, "100 km") };

    /// <summary><c>supply.cable-area</c>: cross-section of one conductor of that cable.</summary>
    public static readonly CaseKey SupplyCableArea =
        new("supply.cable-area", CaseValueKind.Quantity, "\"25 mm2\"", "Cross-section of one conductor of that cable")
        { Range = CaseRange.Above0(Dimension.Area, "100000 mm2") };

    /// <summary><c>supply.cable-material</c>: metal of that cable.</summary>
    public static readonly CaseKey SupplyCableMaterial =
        new("supply.cable-material", CaseValueKind.Choice, "\"aluminium\"", "Metal of that cable's conductors")
        { Choices = ["copper", "aluminium"], DefaultText = "copper" };

    /// <summary><c>supply.cable-temperature</c>: temperature of that cable's conductors.</summary>
    public static readonly CaseKey SupplyCableTemperature =
        new("supply.cable-temperature", CaseValueKind.Quantity, "\"50 degC\"", "Temperature of that cable's conductors; 70 degC is what PVC bears all the time")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "250 degC"), DefaultText = "70 degC" };

    /// <summary><c>supply.permitted-dip</c>: part of its voltage by which the bus may dip.</summary>
    public static readonly CaseKey SupplyPermittedDip =
        new("supply.permitted-dip", CaseValueKind.Ratio, "0.05", "Part of its voltage by which the bus may dip in a start; gives the largest motor for it")
        { Range = new CaseRange(0, false, 1, false, "above 0, below 1") };

    /// <summary><c>motor.winding-temperature-limit</c>: highest temperature of the windings.</summary>
    public static readonly CaseKey MotorWindingTemperatureLimit =
        new("motor.winding-temperature-limit", CaseValueKind.Quantity, "\"145 degC\"", "Highest temperature of armature and field winding, as a mean over the winding")
        { Range = CaseRange.Between(Dimension.Temperature, "0 degC", "500 degC") };

    /// <summary><c>starter.section-hot-spot-limit</c>: highest temperature of the sections.</summary>
    public static readonly CaseKey StarterSectionHotSpotLimit =
        new("starter.section-hot-spot-limit", CaseValueKind.Quantity, "\"375 degC\"", "Highest temperature of any spot of a section")
        { Range = CaseRange.Between(Dimension.Temperature, "0 degC", "2000 degC") };

    /// <summary><c>starter.section-hot-spot-factor</c>: rise of a section's hottest spot over its mean rise.</summary>
    public static readonly CaseKey StarterSectionHotSpotFactor =
        new("starter.section-hot-spot-factor", CaseValueKind.Ratio, "1.2", "Temperature rise of a section's hottest spot over its mean rise")
        { Range = new CaseRange(1, true, 10, true, "1 to 10"), DefaultText = "1" };

    /// <summary><c>contactors.rated-current</c>: rated operational currents of the contactors at hand.</summary>
    public static readonly CaseKey ContactorsRatedCurrent =
        new("contactors.rated-current", CaseValueKind.Quantities, "[\"95 A\"]", "Rated operational current of the contactors at hand in the category that design names: one value for all, or line, stages and brake in this order")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA"), MostItems = Core.Settings.MostStages + 2 };

    /// <summary><c>duty.run-time</c>: time from a start to the stop.</summary>
    public static readonly CaseKey DutyRunTime =
        new("duty.run-time", CaseValueKind.Quantity, "\"45 s\"", "Time from the press of start to the stop in every cycle of the duty; when left out, the start alone")
        { Range = CaseRange.Above0(Dimension.Time, "1000000 s") };

    /// <summary><c>duty.rest</c>: time from a stop to the next start.</summary>
    public static readonly CaseKey DutyRest =
        new("duty.rest", CaseValueKind.Quantity, "\"5 min\"", "Time from a stop to the next start, in which the shaft comes to rest")
        { Range = CaseRange.Above0(Dimension.Time, "1000000 s") };

    /// <summary><c>duty.starts-per-hour</c>: starts in an hour, evenly spread.</summary>
    public static readonly CaseKey DutyStartsPerHour =
        new("duty.starts-per-hour", CaseValueKind.Count, "12", "Starts in an hour, evenly spread, instead of duty.rest")
        { Range = CaseRange.Counts(1, 3600) };
}
