using StarterCtl.Engine.Cases;

namespace StarterCtl.Benchmarks;

/// <summary>The reference starts as cases with tolerances, as a sweep takes them: machine, load, times and control period are those of <see cref="ReferenceStart"/>.</summary>
internal static class ReferenceSweep
{
    private const string Rest = """

        [load]
        inertia = "3 kg m2"
        constant-torque = "250 N m"

        [starter]
        peak-current = "700 A"
        switching-current = "350 A"

        [control]
        confirm-time = "2 ms"
        instant-trip = "1050 A"

        [contactors]
        closing-time = "40 ms"
        opening-time = "15 ms"

        [run]
        duration = "2.5 s"

        [tolerances]
        supply.voltage = "5 %"
        motor.armature-resistance = "10 %"
        motor.armature-inductance = "20 %"
        load.inertia = "10 %"
        load.constant-torque = "10 %"
        starter.sections = "5 %"
        contactors.closing-time = "30 ms to 50 ms"

        """;

    /// <summary>Constant flux, ten quantities differ.</summary>
    public static CaseFile ConstantFlux { get; } = CaseFile.Parse("constant-flux.toml", """
        [supply]
        voltage = "250 V"

        [motor]
        armature-resistance = "50 mohm"
        armature-inductance = "0.5 mH"
        inertia = "1 kg m2"
        constant = "2.5 V s/rad"
        """ + Rest + """
        motor.constant = "normal 2 %"
        """);

    /// <summary>The saturating shunt machine with its field transient, thirteen quantities differ.</summary>
    public static CaseFile SaturatingShunt { get; } = CaseFile.Parse("saturating-shunt.toml", """
        [supply]
        voltage = "250 V"
        resistance = "5 mohm"

        [motor]
        kind = "shunt"
        rated-voltage = "250 V"
        armature-resistance = "50 mohm"
        armature-inductance = "0.5 mH"
        inertia = "1 kg m2"

        [field]
        resistance = "125 ohm"
        inductance = "37.5 H"
        contactor = "yes"
        minimum-current = "1.6 A"
        curve-currents = ["0 A", "0.5 A", "1 A", "1.5 A", "2 A", "3 A"]
        curve-constants = ["0.08 V s/rad", "0.95 V s/rad", "1.7 V s/rad", "2.2 V s/rad", "2.5 V s/rad", "2.75 V s/rad"]

        [sensors]
        field-current = "yes"
        """ + Rest + """
        supply.resistance = "3 mohm to 7 mohm"
        field.resistance = "10 %"
        field.inductance = "20 %"
        field.curve-constants = "normal 2 %"
        """);
}
