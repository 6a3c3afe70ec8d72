using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>The field circuit of a case.</summary>
internal static class CaseField
{
    // Common practice, no source: more than this between two ways to one figure is a wrong figure, not a tolerance.
    private const double Disagreement = 0.05;

    /// <summary>Reads the field circuit.</summary>
    /// <param name="file">The case.</param>
    /// <returns>Null where the case has none: the flux is constant then.</returns>
    /// <exception cref="CaseException">The circuit is incomplete or contradicts the machine.</exception>
    public static FieldCircuit? Of(CaseFile file)
    {
        if (!file.HasAnyOf("field")) return null;
        if (file.Text(CaseKeys.MotorKind) == "permanent magnet")
        {
            throw new CaseException([file.Problem(CaseKeys.FieldSupplyVoltage, "a field circuit on a permanent magnet motor", "motor.kind = \"separately excited\", or no [field]")]);
        }

        file.Require(CaseKeys.FieldSupplyVoltage, CaseKeys.FieldResistance);
        double volts = file.Number(CaseKeys.FieldSupplyVoltage), ohms = file.Number(CaseKeys.FieldResistance);
        double standing = volts / ohms;
        if (file.Has(CaseKeys.FieldMinimumCurrent) && file.Number(CaseKeys.FieldMinimumCurrent) >= standing)
        {
            throw new CaseException([file.Problem(
                CaseKeys.FieldMinimumCurrent,
                file.Written(CaseKeys.FieldMinimumCurrent),
                $"below the {Text.Number(standing)} A that {file.Written(CaseKeys.FieldSupplyVoltage)} drives through {file.Written(CaseKeys.FieldResistance)}")]);
        }

        return new FieldCircuit
        {
            SupplyVolts = volts,
            Ohms = ohms,
            Henries = file.Number(CaseKeys.FieldInductance),
            DischargeSeconds = file.Number(CaseKeys.FieldDischargeTime),
            HasContactor = file.IsYes(CaseKeys.FieldContactor),
        };
    }

    /// <summary>Reads the curve of the flux over the field current, or draws the line to the rated point.</summary>
    /// <param name="file">A case with a field circuit.</param>
    /// <param name="constant">Machine constant at the rated field current, V s/rad.</param>
    /// <exception cref="CaseException">The curve is no curve, or contradicts the machine constant.</exception>
    public static Magnetisation MagnetisationOf(CaseFile file, double constant)
    {
        double ratedAmps = file.Has(CaseKeys.FieldRatedCurrent)
            ? file.Number(CaseKeys.FieldRatedCurrent)
            : file.Number(CaseKeys.FieldSupplyVoltage) / file.Number(CaseKeys.FieldResistance);
        if (!file.Has(CaseKeys.FieldCurveCurrents) && !file.Has(CaseKeys.FieldCurveConstants)) return Magnetisation.Proportional(ratedAmps, constant);
        file.Require(CaseKeys.FieldCurveCurrents, CaseKeys.FieldCurveConstants);
        IReadOnlyList<double> amps = file.Numbers(CaseKeys.FieldCurveCurrents), constants = file.Numbers(CaseKeys.FieldCurveConstants);
        bool rises = amps[0] == 0 && amps.Zip(amps.Skip(1)).All(pair => pair.First < pair.Second);
        if (!rises) throw new CaseException([file.Problem(CaseKeys.FieldCurveCurrents, Quoted(file, CaseKeys.FieldCurveCurrents), "currents that begin with 0 A and rise")]);
        if (constants.Count != amps.Count || constants.Zip(constants.Skip(1)).Any(pair => pair.First > pair.Second))
        {
            throw new CaseException([file.Problem(CaseKeys.FieldCurveConstants, Quoted(file, CaseKeys.FieldCurveConstants), $"{amps.Count} constants, one for each current, that do not fall")]);
        }

        Magnetisation curve = new(amps, constants);
        double atRated = curve.ConstantAt(ratedAmps);
        if (Math.Abs(atRated / constant - 1) <= Disagreement) return curve;
        throw new CaseException([file.Problem(
            CaseKeys.FieldCurveConstants,
            $"a curve that gives {Text.Number(atRated)} V s/rad at {Text.Number(ratedAmps)} A",
            $"within 5 % of the machine constant of {Text.Number(constant)} V s/rad there")]);
    }

    private static string Quoted(CaseFile file, CaseKey key) => $"\"{file.Written(key)}\"";
}
