namespace StarterCtl.Engine.Cases;

/// <content>Keys of the supply, the motor and the load.</content>
public static partial class CaseKeys
{
    private const int MostTablePoints = 24;

    /// <summary><c>title</c>: name of the case, for reports.</summary>
    public static readonly CaseKey Title =
        new("title", CaseValueKind.Text, "\"Line-shaft drive\"", "Name of the case, for reports")
        { DefaultText = "untitled" };

    /// <summary><c>supply.voltage</c>: supply voltage without load.</summary>
    public static readonly CaseKey SupplyVoltage =
        new("supply.voltage", CaseValueKind.Quantity, "\"220 V\"", "Supply voltage without load")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>supply.resistance</c>: resistance of the supply and its leads.</summary>
    public static readonly CaseKey SupplyResistance =
        new("supply.resistance", CaseValueKind.Quantity, "\"10 mohm\"", "Resistance of the supply up to the bus, or up to the starter where no cable is given")
        { Range = CaseRange.From0(Dimension.Resistance, "1 kohm"), DefaultText = "0 ohm" };

    /// <summary><c>motor.kind</c>: how the motor gets its flux.</summary>
    public static readonly CaseKey MotorKind =
        new("motor.kind", CaseValueKind.Choice, "\"separately excited\"", "How the motor gets its flux")
        { Choices = ["separately excited", "shunt", "series", "compound", "permanent magnet"], DefaultText = "separately excited" };

    /// <summary><c>motor.rated-power</c>: shaft power on the plate.</summary>
    public static readonly CaseKey MotorRatedPower =
        new("motor.rated-power", CaseValueKind.Quantity, "\"15 kW\"", "Shaft power on the plate")
        { Range = CaseRange.Above0(Dimension.Power, "1000 MW") };

    /// <summary><c>motor.rated-voltage</c>: armature voltage on the plate.</summary>
    public static readonly CaseKey MotorRatedVoltage =
        new("motor.rated-voltage", CaseValueKind.Quantity, "\"220 V\"", "Armature voltage on the plate")
        { Range = CaseRange.Above0(Dimension.Voltage, "100 kV") };

    /// <summary><c>motor.rated-current</c>: armature current on the plate.</summary>
    public static readonly CaseKey MotorRatedCurrent =
        new("motor.rated-current", CaseValueKind.Quantity, "\"78 A\"", "Armature current on the plate")
        { Range = CaseRange.Above0(Dimension.Current, "1000 kA") };

    /// <summary><c>motor.rated-speed</c>: speed on the plate.</summary>
    public static readonly CaseKey MotorRatedSpeed =
        new("motor.rated-speed", CaseValueKind.Quantity, "\"1150 rpm\"", "Speed on the plate")
        { Range = CaseRange.Above0(Dimension.Speed, "100000 rpm") };

    /// <summary><c>motor.efficiency</c>: efficiency at the rated point.</summary>
    public static readonly CaseKey MotorEfficiency =
        new("motor.efficiency", CaseValueKind.Ratio, "0.87", "Efficiency at the rated point")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1") };

    /// <summary><c>motor.armature-resistance</c>: resistance of the armature circuit without the brushes.</summary>
    public static readonly CaseKey MotorArmatureResistance =
        new("motor.armature-resistance", CaseValueKind.Quantity, "\"0.18 ohm\"",
            "Resistance of the armature circuit without the brushes")
        { Range = CaseRange.Above0(Dimension.Resistance, "1 kohm") };

    /// <summary><c>motor.armature-inductance</c>: inductance of the armature circuit.</summary>
    public static readonly CaseKey MotorArmatureInductance =
        new("motor.armature-inductance", CaseValueKind.Quantity, "\"3 mH\"", "Inductance of the armature circuit")
        { Range = CaseRange.From0(Dimension.Inductance, "1000 H"), DefaultText = "0 H" };

    /// <summary><c>motor.brush-drop</c>: voltage drop of both brushes together.</summary>
    public static readonly CaseKey MotorBrushDrop =
        new("motor.brush-drop", CaseValueKind.Quantity, "\"2 V\"", "Voltage drop of both brushes together")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV"), DefaultText = "0 V" };

    /// <summary><c>motor.inertia</c>: moment of inertia of the armature.</summary>
    public static readonly CaseKey MotorInertia =
        new("motor.inertia", CaseValueKind.Quantity, "\"0.6 kg m2\"", "Moment of inertia of the armature")
        { Range = CaseRange.Above0(Dimension.Inertia, "1e9 kg m2") };

    /// <summary><c>motor.constant</c>: back-EMF per speed, the same as torque per current.</summary>
    public static readonly CaseKey MotorConstant =
        new("motor.constant", CaseValueKind.Quantity, "\"1.69 V s/rad\"",
            "Back-EMF per speed, the same as torque per current")
        { Range = CaseRange.Above0(Dimension.MachineConstant, "1e6 V s/rad") };

    /// <summary><c>motor.construction.poles</c>: number of poles.</summary>
    public static readonly CaseKey MotorPoles =
        new("motor.construction.poles", CaseValueKind.Count, "4", "Number of poles")
        { Range = CaseRange.Counts(2, 100), IsEven = true };

    /// <summary><c>motor.construction.conductors</c>: armature conductors in all slots together.</summary>
    public static readonly CaseKey MotorConductors =
        new("motor.construction.conductors", CaseValueKind.Count, "492", "Armature conductors in all slots together")
        { Range = CaseRange.Counts(1, 1000000) };

    /// <summary><c>motor.construction.parallel-paths</c>: parallel paths of the armature winding.</summary>
    public static readonly CaseKey MotorParallelPaths =
        new("motor.construction.parallel-paths", CaseValueKind.Count, "2", "Parallel paths of the armature winding")
        { Range = CaseRange.Counts(1, 1000000) };

    /// <summary><c>motor.construction.flux-per-pole</c>: flux of one pole across the air gap.</summary>
    public static readonly CaseKey MotorFluxPerPole =
        new("motor.construction.flux-per-pole", CaseValueKind.Quantity, "\"12 mWb\"",
            "Flux of one pole across the air gap")
        { Range = CaseRange.Above0(Dimension.Flux, "1000 Wb") };

    /// <summary><c>motor.resistance-temperature</c>: temperature at which the resistances of the case hold.</summary>
    public static readonly CaseKey MotorResistanceTemperature =
        new("motor.resistance-temperature", CaseValueKind.Quantity, "\"20 degC\"", "Temperature at which the motor's resistances and its magnets' constant hold")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "300 degC"), DefaultText = "20 degC" };

    /// <summary><c>motor.winding-temperature</c>: temperature of the windings and magnets now.</summary>
    public static readonly CaseKey MotorWindingTemperature =
        new("motor.winding-temperature", CaseValueKind.Quantity, "\"95 degC\"", "Temperature of windings and magnets in this case; when left out, motor.resistance-temperature")
        { Range = CaseRange.Between(Dimension.Temperature, "-50 degC", "300 degC") };

    /// <summary><c>motor.magnet-temperature-coefficient</c>: change of a magnet's flux with temperature.</summary>
    public static readonly CaseKey MotorMagnetTemperatureCoefficient =
        new("motor.magnet-temperature-coefficient", CaseValueKind.Ratio, "-0.002", "Change of a permanent magnet's flux per kelvin; about -0.002 for ferrite, about -0.001 for neodymium")
        { Range = new CaseRange(-0.02, true, 0, true, "-0.02 to 0"), DefaultText = "0" };

    /// <summary><c>load.inertia</c>: moment of inertia of the load, at the motor shaft.</summary>
    public static readonly CaseKey LoadInertia =
        new("load.inertia", CaseValueKind.Quantity, "\"1.9 kg m2\"",
            "Moment of inertia of the load, at the motor shaft")
        { Range = CaseRange.From0(Dimension.Inertia, "1e9 kg m2"), DefaultText = "0 kg m2" };

    /// <summary><c>load.constant-torque</c>: load torque that does not depend on speed.</summary>
    public static readonly CaseKey LoadConstantTorque =
        new("load.constant-torque", CaseValueKind.Quantity, "\"70 N m\"", "Load torque that does not depend on speed")
        { Range = CaseRange.From0(Dimension.Torque, "100000 kN m"), DefaultText = "0 N m" };

    /// <summary><c>load.viscous-torque</c>: load torque in proportion to speed.</summary>
    public static readonly CaseKey LoadViscousTorque =
        new("load.viscous-torque", CaseValueKind.Quantity, "\"0.05 N m s/rad\"", "Load torque in proportion to speed")
        { Range = CaseRange.From0(Dimension.ViscousTorque, "1e6 N m s/rad"), DefaultText = "0 N m s/rad" };

    /// <summary><c>load.fan-torque</c>: load torque in proportion to speed squared.</summary>
    public static readonly CaseKey LoadFanTorque =
        new("load.fan-torque", CaseValueKind.Quantity, "\"0.002 N m s2/rad2\"",
            "Load torque in proportion to speed squared")
        { Range = CaseRange.From0(Dimension.FanTorque, "1e6 N m s2/rad2"), DefaultText = "0 N m s2/rad2" };

    /// <summary><c>load.table-speeds</c>: speed of each point of the load's table.</summary>
    public static readonly CaseKey LoadTableSpeeds =
        new("load.table-speeds", CaseValueKind.Quantities, "[\"0 rpm\", \"100 rpm\", \"1200 rpm\"]", "Speed of each point of a load torque over speed, beside the other torques; the first 0, rising; beyond the last its torque is held")
        { Range = CaseRange.From0(Dimension.Speed, "100000 rpm"), FewestItems = 2, MostItems = MostTablePoints };

    /// <summary><c>load.table-torques</c>: torque of each point of the load's table.</summary>
    public static readonly CaseKey LoadTableTorques =
        new("load.table-torques", CaseValueKind.Quantities, "[\"60 N m\", \"20 N m\", \"45 N m\"]", "Load torque at each of load.table-speeds, against rotation of either direction; the first holds the shaft at rest")
        { Range = CaseRange.From0(Dimension.Torque, "100000 kN m"), FewestItems = 2, MostItems = MostTablePoints };

    /// <summary><c>load.hoist-torque</c>: load torque that acts in one direction whatever the speed.</summary>
    public static readonly CaseKey LoadHoistTorque =
        new("load.hoist-torque", CaseValueKind.Quantity, "\"90 N m\"", "Load torque that acts in one direction whatever the speed: above 0 against forward rotation, below 0 with it")
        { Range = CaseRange.Between(Dimension.Torque, "-100000 kN m", "100000 kN m"), DefaultText = "0 N m" };

    /// <summary><c>load.speed</c>: shaft speed when the case begins.</summary>
    public static readonly CaseKey LoadSpeed =
        new("load.speed", CaseValueKind.Quantity, "\"0 rpm\"", "Shaft speed when the case begins")
        { Range = CaseRange.Between(Dimension.Speed, "-100000 rpm", "100000 rpm"), DefaultText = "0 rpm" };
}
