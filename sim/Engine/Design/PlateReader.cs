using System;
using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads the plate from a case and finds the machine constant.</summary>
public static class PlateReader
{
    // Common practice, no source: more than this between two ways to one figure is a wrong figure, not a tolerance.
    private const double Disagreement = 0.05;

    private static readonly CaseKey[] Construction =
        [CaseKeys.MotorPoles, CaseKeys.MotorConductors, CaseKeys.MotorParallelPaths, CaseKeys.MotorFluxPerPole];

    /// <summary>Reads the plate.</summary>
    /// <param name="file">A case with supply voltage and armature resistance.</param>
    /// <param name="warnings">Receives what the plate contradicts.</param>
    public static Plate Read(CaseFile file, List<string> warnings)
    {
        Plate plate = new()
        {
            Kind = file.Text(CaseKeys.MotorKind),
            RatedWatts = Optional(file, CaseKeys.MotorRatedPower),
            RatedVolts = Optional(file, CaseKeys.MotorRatedVoltage),
            RatedRadPerSec = Optional(file, CaseKeys.MotorRatedSpeed),
            RatedAmps = Optional(file, CaseKeys.MotorRatedCurrent) ?? AmpsFromEfficiency(file),
        };
        plate = WithConstant(file, plate);
        AddContradictions(file, plate, warnings);
        return plate;
    }

    /// <summary>What a case lacks for the machine constant; nothing when there is a way to it.</summary>
    public static IEnumerable<CaseProblem> MissingConstant(CaseFile file)
    {
        if (file.Has(CaseKeys.MotorConstant)) yield break;
        if (Array.Exists(Construction, file.Has))
        {
            foreach (CaseProblem missing in file.MissingOf(Construction)) yield return missing;
            yield break;
        }

        if (CurveReader.IsThere(file)) yield break;
        bool hasCurrent = file.Has(CaseKeys.MotorRatedCurrent) || (file.Has(CaseKeys.MotorRatedPower) && file.Has(CaseKeys.MotorEfficiency));
        bool hasPlate = hasCurrent && file.Has(CaseKeys.MotorRatedVoltage) && file.Has(CaseKeys.MotorRatedSpeed);
        if (hasPlate) yield break;
        yield return file.Problem(
            CaseKeys.MotorConstant,
            "nothing to take it from",
            "motor.constant; or motor.construction with poles, conductors, parallel-paths and flux-per-pole; or motor.rated-voltage, rated-speed and rated-current (or rated-power and efficiency)");
    }

    /// <summary>Whether a case says what its rated current is.</summary>
    public static bool HasRatedAmps(CaseFile file) =>
        file.Has(CaseKeys.MotorRatedCurrent)
        || (file.Has(CaseKeys.MotorRatedPower) && file.Has(CaseKeys.MotorRatedVoltage) && file.Has(CaseKeys.MotorEfficiency));

    private static double? Optional(CaseFile file, CaseKey key) => file.Has(key) ? file.Number(key) : null;

    private static double? AmpsFromEfficiency(CaseFile file) =>
        file.Has(CaseKeys.MotorRatedPower) && file.Has(CaseKeys.MotorRatedVoltage) && file.Has(CaseKeys.MotorEfficiency)
            ? MachineConstant.RatedAmps(file.Number(CaseKeys.MotorRatedPower), file.Number(CaseKeys.MotorRatedVoltage), file.Number(CaseKeys.MotorEfficiency))
            : null;

    private static Plate WithConstant(CaseFile file, Plate plate)
    {
        if (file.Has(CaseKeys.MotorConstant))
        {
            double given = file.Number(CaseKeys.MotorConstant);
            return plate with { MachineConstant = given, ConstantSource = $"k = {Text.Number(given)} V s/rad, given in the case." };
        }

        if (Array.Exists(Construction, file.Has))
        {
            file.Require(Construction);
            int poles = file.Count(CaseKeys.MotorPoles), conductors = file.Count(CaseKeys.MotorConductors), paths = file.Count(CaseKeys.MotorParallelPaths);
            double webers = file.Number(CaseKeys.MotorFluxPerPole);
            double built = MachineConstant.FromConstruction(poles, conductors, paths, webers);
            return plate with
            {
                MachineConstant = built,
                ConstantSource = $"From construction: k = P Z phi / (2 pi A) = {poles} x {conductors} x {Text.Number(webers)} Wb / (2 pi x {paths}) = {Text.Number(built)} V s/rad.",
            };
        }

        return FromPlate(file, plate) is not double fromPlate
            ? plate
            : plate with
            {
                MachineConstant = fromPlate,
                ConstantSource = $"From the plate: k = (V - Vb - Ia Ra) / w = ({file.Written(CaseKeys.MotorRatedVoltage)} - {file.Written(CaseKeys.MotorBrushDrop)} - {Text.Number(plate.RatedAmps!.Value)} A x {WrittenOhms(file)}) / {Text.Number(plate.RatedRadPerSec!.Value)} rad/s = {Text.Number(fromPlate)} V s/rad.",
            };
    }

    private static double? FromPlate(CaseFile file, Plate plate)
    {
        if (plate is not { RatedVolts: double volts, RatedAmps: double amps, RatedRadPerSec: double speed }) return null;
        double brushVolts = file.Number(CaseKeys.MotorBrushDrop);
        if (brushVolts >= volts)
        {
            throw new CaseException([file.Problem(
                CaseKeys.MotorBrushDrop, file.Written(CaseKeys.MotorBrushDrop), $"below the rated voltage of {Text.Number(volts)} V")]);
        }

        double k = MachineConstant.FromPlate(volts, amps, speed, CircuitOhms(file), brushVolts);
        if (k > 0) return k;
        throw new CaseException([file.Problem(
            CaseKeys.MotorArmatureResistance,
            $"{WrittenOhms(file)}, which with brush drop takes all of the rated voltage at {Text.Number(amps)} A: no back-EMF is left",
            $"below {Text.Number((volts - brushVolts) / amps)} ohm")]);
    }

    // As the case states them: what the plate says does not change with the temperature of the day.
    private static double CircuitOhms(CaseFile file) => file.Number(CaseKeys.MotorArmatureResistance) + file.Number(CaseKeys.SeriesFieldResistance);

    private static string WrittenOhms(CaseFile file) =>
        file.Number(CaseKeys.SeriesFieldResistance) > 0
            ? $"({file.Written(CaseKeys.MotorArmatureResistance)} + {file.Written(CaseKeys.SeriesFieldResistance)})"
            : file.Written(CaseKeys.MotorArmatureResistance);

    private static void AddContradictions(CaseFile file, Plate plate, List<string> warnings)
    {
        if (plate.MachineConstant is double k && FromPlate(file, plate) is double fromPlate && Math.Abs(k / fromPlate - 1) > Disagreement)
        {
            warnings.Add($"The machine constant is {Text.Number(k)} V s/rad, but the plate gives {Text.Number(fromPlate)} V s/rad.");
        }

        if (plate is { RatedWatts: double watts, RatedVolts: double volts, RatedAmps: double amps })
        {
            double dropWatts = amps * (amps * CircuitOhms(file) + file.Number(CaseKeys.MotorBrushDrop));
            double convertedWatts = volts * amps - dropWatts;
            if (convertedWatts < watts)
            {
                warnings.Add($"The plate promises {Text.Number(watts)} W, but at rated current the armature turns only {Text.Number(convertedWatts)} W of {Text.Number(volts * amps)} W into shaft power.");
            }

            AddEfficiency(file, watts / (volts * amps), warnings);
        }
    }

    private static void AddEfficiency(CaseFile file, double efficiencyRatio, List<string> warnings)
    {
        if (!file.Has(CaseKeys.MotorEfficiency) || Math.Abs(efficiencyRatio / file.Number(CaseKeys.MotorEfficiency) - 1) <= Disagreement) return;
        warnings.Add($"The plate's efficiency is {file.Written(CaseKeys.MotorEfficiency)}, but its power over its voltage and current is {Text.Number(efficiencyRatio)}.");
    }
}
