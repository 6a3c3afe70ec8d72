using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// What really stands there: machine, load, supply, resistors, contactors, sensors, the controller's clock. It is read from a case that
/// may differ from the nominal one; what the controller is told and the resistors were designed for never is.
/// </summary>
internal static class CasePlant
{
    private const double LeastHenries = 1e-9;
    private const double LeastInertiaKgM2 = 1e-12;

    /// <summary>The plant as the case means it. Checks what the equations cannot do without.</summary>
    /// <param name="designed">The case and its design.</param>
    /// <exception cref="CaseException">Something of the plant cannot be; names file, line and key.</exception>
    public static RunSetup Nominal(CaseDesign designed)
    {
        CaseFile file = designed.File;
        if (designed.Machine.ArmatureHenries is > 0 and < LeastHenries)
        {
            throw new CaseException([file.Problem(CaseKeys.MotorArmatureInductance, file.Written(CaseKeys.MotorArmatureInductance), "0 H, or at least 0.001 uH")]);
        }

        if (designed.Input.InertiaKgM2!.Value < LeastInertiaKgM2)
        {
            throw new CaseException([file.Problem(CaseKeys.MotorInertia, file.Written(CaseKeys.MotorInertia), "at least 1e-12 kg m2 at the shaft, load included")]);
        }

        RunSetup setup = Read(file, designed, 1, designed.SectionOhms());
        CheckCoils(file, setup.Contactors);
        if (setup.Jitter is LoopJitter jitter && jitter.MostMicroseconds >= setup.PeriodMicroseconds)
        {
            throw new CaseException([file.Problem(CaseKeys.ControlJitter, $"\"{file.Written(CaseKeys.ControlJitter)}\"", $"less than the control period of {file.Written(CaseKeys.ControlPeriod)}")]);
        }

        return setup;
    }

    /// <summary>A plant that differs from the nominal one.</summary>
    /// <param name="designed">The nominal case and its design.</param>
    /// <param name="variables">What differs.</param>
    /// <param name="values">Its value for each variable, between the variable's limits.</param>
    /// <param name="seed">Number from which noise and jitter follow, 0 to 1 000 000 000; null: the case's own.</param>
    public static RunSetup Real(CaseDesign designed, IReadOnlyList<PlantVariable> variables, ReadOnlySpan<double> values, int? seed)
    {
        CaseFile file = designed.File;
        double[] ohms = designed.SectionOhms();
        double constantRatio = 1;
        Dictionary<CaseKey, CaseValue> real = [];
        for (int i = 0; i < variables.Count; i++)
        {
            PlantVariable variable = variables[i];
            if (variable.Key == CaseKeys.StarterSections) ohms[variable.Item] = values[i];
            else if (variable.Key == CaseKeys.MotorConstant) constantRatio = values[i] / variable.Nominal;
            else real[variable.Key] = ValueOf(file, variable, values[i], real);
        }

        if (seed is int number) real[CaseKeys.SensorsSeed] = new CaseValue("", 0) { Number = number };
        return Read(real.Count == 0 ? file : file.With(real), designed, constantRatio, ohms);
    }

    private static CaseValue ValueOf(CaseFile file, PlantVariable variable, double value, Dictionary<CaseKey, CaseValue> real)
    {
        CaseKey key = variable.Key;
        if (PlantKeys.IsScaled(key)) return new CaseValue("", 0) { Numbers = [.. file.Numbers(key).Select(number => number * value)] };
        if (variable.Item < 0) return new CaseValue("", 0) { Number = value };
        double[] items = [.. real.TryGetValue(key, out CaseValue? begun) ? begun.Numbers : file.Numbers(key)];
        items[variable.Item] = value;
        return new CaseValue("", 0) { Numbers = items };
    }

    private static RunSetup Read(CaseFile file, CaseDesign designed, double constantRatio, double[] sectionOhms)
    {
        (CaseMachine machine, double constant) = MachineReader.ReadReal(file, designed, constantRatio);
        double henries = machine.ArmatureHenries < LeastHenries ? 0 : machine.ArmatureHenries;
        double inertia = file.Number(CaseKeys.MotorInertia) + file.Number(CaseKeys.LoadInertia);
        return new RunSetup
        {
            Machine = new Machine(constant, machine.ArmatureOhms, henries, file.Number(CaseKeys.MotorBrushDrop), inertia) { Flux = machine.Flux },
            Load = LoadReader.Read(file),
            LoadInertiaKgM2 = file.Number(CaseKeys.LoadInertia),
            Supply = SupplyReader.Read(file),
            SectionOhms = sectionOhms,
            Contactors = ContactorsOf(file),
            PeriodMicroseconds = CaseControl.Microseconds(file.Number(CaseKeys.ControlPeriod)),
            Jitter = JitterOf(file),
            DurationSeconds = file.Number(CaseKeys.RunDuration),
            InitialSpeedRadPerSec = file.Number(CaseKeys.LoadSpeed),
            Field = machine.Field,
            Sensors = CaseSensors.Of(file),
            Heat = CaseHeat.Of(file, sectionOhms.Length, machine.Field),
            BrakeOhms = file.HasAnyOf("brake") ? (file.Has(CaseKeys.BrakeResistance) ? file.Number(CaseKeys.BrakeResistance) : 0) : null,
        };
    }

    private static LoopJitter? JitterOf(CaseFile file)
    {
        int microseconds = CaseControl.Microseconds(file.Number(CaseKeys.ControlJitter));
        return microseconds == 0 ? null : new LoopJitter(microseconds, file.Count(CaseKeys.SensorsSeed));
    }

    private static Contactors ContactorsOf(CaseFile file) => new(file.Number(CaseKeys.ContactorsClosingTime), file.Number(CaseKeys.ContactorsOpeningTime))
    {
        BounceCount = file.Count(CaseKeys.ContactorsBounceCount),
        BounceSeconds = file.Number(CaseKeys.ContactorsBounceTime),
        PickUpRatio = file.Number(CaseKeys.ContactorsPickUpVoltage),
        DropOutRatio = file.Number(CaseKeys.ContactorsDropOutVoltage),
        ArcVolts = file.Number(CaseKeys.ContactorsArcVoltage),
    };

    private static void CheckCoils(CaseFile file, Contactors contactors)
    {
        if (contactors.DropOutRatio <= contactors.PickUpRatio) return;
        CaseKey blamed = file.Has(CaseKeys.ContactorsDropOutVoltage) ? CaseKeys.ContactorsDropOutVoltage : CaseKeys.ContactorsPickUpVoltage;
        throw new CaseException([file.Problem(
            blamed,
            $"a coil that lets go below {Text.Number(contactors.DropOutRatio)} and closes from {Text.Number(contactors.PickUpRatio)}",
            $"{CaseKeys.ContactorsDropOutVoltage.Path} up to {CaseKeys.ContactorsPickUpVoltage.Path}")]);
    }
}
