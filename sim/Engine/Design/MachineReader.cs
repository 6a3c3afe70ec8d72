using System;
using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads a machine of any kind from a case, with its flux and at its temperature.</summary>
internal static class MachineReader
{
    // Common practice, no source: more than this between two ways to one figure is a wrong figure, not a tolerance.
    private const double Disagreement = 0.05;

    // Rounding of a current that is meant to be the curve's last.
    private const double Rounding = 1e-9;

    /// <summary>Everything that the machine lacks or has too much of.</summary>
    /// <param name="file">The case.</param>
    /// <param name="isRun">True when the case is to be run, which needs its field circuit too.</param>
    public static IEnumerable<CaseProblem> Problems(CaseFile file, bool isRun)
    {
        foreach (CaseProblem problem in KindCheck.Problems(file)) yield return problem;
        MachineKind kind = KindCheck.KindOf(file);
        if (kind == MachineKind.PermanentMagnet) yield break;
        if (NeedsField(file, kind, isRun))
        {
            foreach (CaseProblem missing in FieldReader.Missing(file, kind)) yield return missing;
        }

        if (IsCompound(kind))
        {
            foreach (CaseProblem missing in file.MissingOf(CaseKeys.SeriesFieldTurnsRatio)) yield return missing;
        }

        if ((kind == MachineKind.Series || IsCompound(kind)) && !PlateReader.HasRatedAmps(file))
        {
            yield return file.Problem(CaseKeys.MotorRatedCurrent, "nothing", $"{CaseKeys.MotorRatedCurrent.AllowedInFull}; or motor.rated-power, rated-voltage and efficiency");
        }

        if (!HasCurve(file, kind)) yield break;
        foreach (CaseProblem problem in CurveReader.Problems(file)) yield return problem;
    }

    /// <summary>Reads the machine, and puts the constant that holds for it into its plate.</summary>
    /// <param name="file">A case without <see cref="Problems"/>.</param>
    /// <param name="plate">Its plate.</param>
    /// <param name="isRun">True when the case is to be run.</param>
    /// <param name="warnings">Receives what is unusual.</param>
    /// <exception cref="CaseException">The curve does not reach the currents of the case, or contradicts its constant.</exception>
    public static (CaseMachine Machine, Plate Plate) Read(CaseFile file, Plate plate, bool isRun, List<string> warnings)
    {
        MachineKind kind = KindCheck.KindOf(file);
        FieldCircuit? field = NeedsField(file, kind, isRun) ? FieldReader.Read(file, kind, CopperRatio(file)) : null;
        CaseMachine machine = Windings(file, kind, field, field is null ? 0 : FieldReader.RatedAmps(file, kind, plate.RatedVolts));
        if (file.Text(CaseKeys.SeriesFieldSense) == "differential") warnings.Add("The series winding works against the shunt winding: a differential compound motor can run away or turn round under load.");
        if (kind == MachineKind.PermanentMagnet) return (machine, Warmed(file, plate));
        if (HasCurve(file, kind)) return WithCurve(file, machine, plate);
        return (field is null || plate.MachineConstant is not double constant ? machine : Proportional(machine, constant, warnings), plate);
    }

    /// <summary>
    /// Reads the machine that really stands there: its windings from a case whose values differ from the nominal one's, its flux from what the
    /// nominal plate and rated field current stand for, however much resistances and voltages differ.
    /// </summary>
    /// <param name="real">The nominal case with other values.</param>
    /// <param name="nominal">The nominal case; not changed.</param>
    /// <param name="constantRatio">Machine constant over the nominal one.</param>
    /// <returns>The machine, and its constant at the rated point, V s/rad.</returns>
    public static (CaseMachine Machine, double Constant) ReadReal(CaseFile real, CaseDesign nominal, double constantRatio)
    {
        CaseMachine meant = nominal.Machine;
        double constant = constantRatio * nominal.Plate.MachineConstant!.Value;
        if (ReferenceEquals(real, nominal.File) && constantRatio == 1) return (meant, constant);
        FieldCircuit? field = meant.Field is null ? null : FieldReader.Circuit(real, meant.Kind, CopperRatio(real));
        CaseMachine machine = Windings(real, meant.Kind, field, meant.RatedFieldAmps);
        if (meant.Kind == MachineKind.PermanentMagnet) return (machine, constant * (MagnetRatio(real) / MagnetRatio(nominal.File)));
        if (meant.Flux is null) return (machine, constant);
        if (!HasCurve(nominal.File, meant.Kind)) return (WithLine(machine, constant), constant);
        FluxLaw law = LawOf(real, meant.Kind, constantRatio);
        return (machine with { Flux = law }, law.ConstantAt(meant.RatedFieldAmps, nominal.Plate.RatedAmps ?? 0));
    }

    // The series winding of a short shunt stands in the field circuit.
    private static CaseMachine Windings(CaseFile file, MachineKind kind, FieldCircuit? field, double ratedFieldAmps)
    {
        double copperRatio = CopperRatio(file);
        double ohms = copperRatio * file.Number(CaseKeys.MotorArmatureResistance), seriesOhms = copperRatio * file.Number(CaseKeys.SeriesFieldResistance);
        double henries = file.Number(CaseKeys.MotorArmatureInductance) + file.Number(CaseKeys.SeriesFieldInductance);
        return new CaseMachine(kind, kind == MachineKind.ShortShuntCompound ? ohms : ohms + seriesOhms, henries, null, field) { RatedFieldAmps = ratedFieldAmps };
    }

    private static double CopperRatio(CaseFile file) =>
        CopperTemperature.ResistanceRatio(file.Number(CaseKeys.MotorResistanceTemperature), WindingCelsius(file));

    private static bool NeedsField(CaseFile file, MachineKind kind, bool isRun) => kind switch
    {
        MachineKind.SeparatelyExcited => file.HasAnyOf("field") && (isRun || HasCurve(file, kind)),
        MachineKind.Shunt => isRun || HasCurve(file, kind),
        MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound => true,
        _ => false,
    };

    // A straight line ends at the rated point and would hide what the armature current adds or takes away.
    private static bool HasCurve(CaseFile file, MachineKind kind) =>
        CurveReader.IsThere(file) || kind == MachineKind.Series || IsCompound(kind) || file.Number(CaseKeys.FieldArmatureReaction) > 0;

    private static bool IsCompound(MachineKind kind) => kind is MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound;

    /// <summary>Temperature of the windings and magnets of a case, degC.</summary>
    public static double WindingCelsius(CaseFile file) =>
        file.Number(file.Has(CaseKeys.MotorWindingTemperature) ? CaseKeys.MotorWindingTemperature : CaseKeys.MotorResistanceTemperature);

    /// <summary>Flux of the magnets of a case over that where its constant holds: a straight line over the temperature, which the winding's stands for; common practice, no source.</summary>
    public static double MagnetRatio(CaseFile file) =>
        1 + file.Number(CaseKeys.MotorMagnetTemperatureCoefficient) * (WindingCelsius(file) - file.Number(CaseKeys.MotorResistanceTemperature));

    private static Plate Warmed(CaseFile file, Plate plate)
    {
        CaseKey key = CaseKeys.MotorMagnetTemperatureCoefficient;
        double kelvin = WindingCelsius(file) - file.Number(CaseKeys.MotorResistanceTemperature), left = MagnetRatio(file);
        if (!(left > 0))
        {
            throw new CaseException([file.Problem(key, $"{file.Written(key)}, which leaves no flux after {Text.Number(kelvin)} K", $"above {Text.Number(-1 / kelvin)} there")]);
        }

        if (left == 1 || plate.MachineConstant is not double constant) return plate;
        return plate with
        {
            MachineConstant = left * constant,
            ConstantSource = $"{plate.ConstantSource} At {Text.Number(WindingCelsius(file))} degC the magnets make {Text.Number(left * constant)} V s/rad.",
        };
    }

    private static CaseMachine Proportional(CaseMachine machine, double constant, List<string> warnings)
    {
        if (machine.StandingFieldAmps > machine.RatedFieldAmps * (1 + Rounding))
        {
            warnings.Add($"The field takes {Text.Number(machine.StandingFieldAmps)} A, more than its rated {Text.Number(machine.RatedFieldAmps)} A: without a magnetisation curve the flux stays at its rated value there.");
        }

        return WithLine(machine, constant);
    }

    private static CaseMachine WithLine(CaseMachine machine, double constant) =>
        machine with { Flux = new FluxLaw(Magnetisation.Proportional(machine.RatedFieldAmps, constant)) };

    private static (CaseMachine Machine, Plate Plate) WithCurve(CaseFile file, CaseMachine machine, Plate plate)
    {
        FluxLaw law = LawOf(file, machine.Kind, 1);
        double ratedAmps = law.ExcitingAmps(machine.RatedFieldAmps, plate.RatedAmps ?? 0);
        CheckReach(file, law, ratedAmps, "the rated point");
        CheckReach(file, law, law.ExcitingAmps(machine.StandingFieldAmps, 0), "the field that the supply drives");
        double constant = law.Curve.ConstantAt(ratedAmps);
        if (plate.MachineConstant is double other && Math.Abs(constant / other - 1) > Disagreement)
        {
            throw new CaseException([file.Problem(
                CurveReader.ValuesKey(file),
                $"a curve that gives {Text.Number(constant)} V s/rad at {Text.Number(ratedAmps)} A",
                $"within 5 % of the machine constant of {Text.Number(other)} V s/rad there")]);
        }

        Plate rated = plate with
        {
            MachineConstant = constant,
            ConstantSource = $"From the magnetisation curve: k = {Text.Number(constant)} V s/rad at the rated exciting current of {Text.Number(ratedAmps)} A.",
        };
        return (machine with { Flux = law }, rated);
    }

    private static FluxLaw LawOf(CaseFile file, MachineKind kind, double constantRatio)
    {
        FluxLaw law = new(CurveReader.Read(file, constantRatio)) { ReactionRatio = file.Number(CaseKeys.FieldArmatureReaction) };
        if (kind == MachineKind.Series) return law with { FieldShare = 0, ArmatureShare = 1 };
        if (!IsCompound(kind)) return law;
        double turnsRatio = file.Number(CaseKeys.SeriesFieldTurnsRatio);
        double share = file.Text(CaseKeys.SeriesFieldSense) == "differential" ? -turnsRatio : turnsRatio;
        return law with { FieldShare = kind == MachineKind.ShortShuntCompound ? 1 + share : 1, ArmatureShare = share };
    }

    private static void CheckReach(CaseFile file, FluxLaw law, double excitingAmps, string what)
    {
        if (excitingAmps < 0)
        {
            throw new CaseException([file.Problem(
                law.ArmatureShare < 0 ? CaseKeys.SeriesFieldTurnsRatio : CaseKeys.FieldArmatureReaction,
                $"an armature current that takes {Text.Number(-excitingAmps)} A more than the field gives at {what}",
                "a ratio that leaves flux there")]);
        }

        if (excitingAmps <= law.Curve.LastAmps * (1 + Rounding)) return;
        throw new CaseException([file.Problem(
            CaseKeys.FieldCurveCurrents,
            $"a curve that ends at {Text.Number(law.Curve.LastAmps)} A",
            $"points up to at least the {Text.Number(excitingAmps)} A of {what}")]);
    }
}
