namespace StarterCtl.Engine.Cases;

/// <content>Keys of how windings and starter sections warm up.</content>
public static partial class CaseKeys
{
    /// <summary><c>motor.thermal-capacity</c>: heat that warms the armature winding by a kelvin.</summary>
    public static readonly CaseKey MotorThermalCapacity =
        Capacity("motor.thermal-capacity", "\"9 kJ/K\"", "Heat that warms the armature winding by a kelvin, its series winding included; its temperature then follows the run and acts on its resistance");

    /// <summary><c>motor.thermal-resistance</c>: temperature rise of the armature winding per watt.</summary>
    public static readonly CaseKey MotorThermalResistance =
        new("motor.thermal-resistance", CaseValueKind.Quantity, "\"0.15 K/W\"", "Final temperature rise of the armature winding per watt of its loss; when left out, it does not cool")
        { Range = CaseRange.Above0(Dimension.ThermalResistance, "1e6 K/W") };

    /// <summary><c>field.thermal-capacity</c>: heat that warms the field winding by a kelvin.</summary>
    public static readonly CaseKey FieldThermalCapacity =
        Capacity("field.thermal-capacity", "\"12 kJ/K\"", "Heat that warms the field winding by a kelvin; its temperature then follows the run and acts on its resistance");

    /// <summary><c>field.thermal-resistance</c>: temperature rise of the field winding per watt.</summary>
    public static readonly CaseKey FieldThermalResistance =
        new("field.thermal-resistance", CaseValueKind.Quantity, "\"0.3 K/W\"", "Final temperature rise of the field winding per watt of its loss; when left out, it does not cool")
        { Range = CaseRange.Above0(Dimension.ThermalResistance, "1e6 K/W") };

    /// <summary><c>starter.section-thermal-capacity</c>: heat that warms a section by a kelvin.</summary>
    public static readonly CaseKey StarterSectionThermalCapacity =
        new("starter.section-thermal-capacity", CaseValueKind.Quantities, "[\"2.5 kJ/K\"]", "Heat that warms a starter section by a kelvin: one value for all or one for each, first cut out first; their temperatures then follow the run")
        { Range = CaseRange.Above0(Dimension.ThermalCapacity, "1e9 J/K") };

    /// <summary><c>starter.section-cooling-time</c>: time constant with which a section cools.</summary>
    public static readonly CaseKey StarterSectionCoolingTime =
        new("starter.section-cooling-time", CaseValueKind.Quantity, "\"600 s\"", "Time constant with which every starter section cools down to its surroundings; when left out, they do not cool")
        { Range = CaseRange.Above0(Dimension.Time, "1000000 s") };

    /// <summary><c>starter.section-temperature-coefficient</c>: change of the sections' resistance per kelvin.</summary>
    public static readonly CaseKey StarterSectionTemperatureCoefficient =
        new("starter.section-temperature-coefficient", CaseValueKind.Ratio, "0.0001", "Change of the sections' resistance per kelvin, from run.ambient-temperature on; about 0.0001 for resistance alloys")
        { Range = new CaseRange(0, true, 0.005, true, "0 to 0.005"), DefaultText = "0" };

    /// <summary><c>run.ambient-temperature</c>: temperature around motor and starter.</summary>
    public static readonly CaseKey RunAmbientTemperature =
        new("run.ambient-temperature", CaseValueKind.Quantity, "\"40 degC\"", "Temperature around motor and starter, to which all that is warm cools and at which the sections begin")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "100 degC"), DefaultText = "20 degC" };

    /// <summary><c>event.ambient-temperature</c>: temperature around motor and starter, from then on.</summary>
    public static readonly CaseKey EventAmbientTemperature =
        new("event.ambient-temperature", CaseValueKind.Quantity, "\"55 degC\"", "Temperature around motor and starter, from then on")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "100 degC") };

    /// <summary><c>event.cooling</c>: whether windings and sections give heat off.</summary>
    public static readonly CaseKey EventCooling =
        new("event.cooling", CaseValueKind.Choice, "\"blocked\"", "Cooling of windings and sections, from then on: blocked, no heat leaves any of them")
        { Choices = ["blocked", "sound"] };

    private static CaseKey Capacity(string path, string example, string summary) =>
        new(path, CaseValueKind.Quantity, example, summary) { Range = CaseRange.Above0(Dimension.ThermalCapacity, "1e9 J/K") };
}
