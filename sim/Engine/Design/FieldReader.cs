using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads the field circuit of a case.</summary>
internal static class FieldReader
{
    /// <summary>What a field circuit of this kind of machine lacks.</summary>
    public static IEnumerable<CaseProblem> Missing(CaseFile file, MachineKind kind) =>
        kind == MachineKind.SeparatelyExcited
            ? file.MissingOf(CaseKeys.FieldSupplyVoltage, CaseKeys.FieldResistance)
            : file.MissingOf(CaseKeys.FieldResistance);

    /// <summary>Reads the circuit.</summary>
    /// <param name="file">A case that lacks nothing of it.</param>
    /// <param name="kind">A machine with a field winding.</param>
    /// <param name="copperRatio">Resistance of copper now over that where the case's resistances hold.</param>
    /// <exception cref="CaseException">The least field current is above what the supply drives.</exception>
    public static FieldCircuit Read(CaseFile file, MachineKind kind, double copperRatio)
    {
        CaseKey source = SourceOf(kind);
        FieldCircuit field = Circuit(file, kind, copperRatio);
        double ohms = field.Ohms + field.SharedOhms, standing = field.SupplyVolts / ohms;
        if (!file.Has(CaseKeys.FieldMinimumCurrent) || file.Number(CaseKeys.FieldMinimumCurrent) < standing) return field;
        throw new CaseException([file.Problem(
            CaseKeys.FieldMinimumCurrent,
            file.Written(CaseKeys.FieldMinimumCurrent),
            $"below the {Text.Number(standing)} A that {file.Written(source)} drives through {Text.Number(ohms)} ohm")]);
    }

    /// <summary>Reads the circuit, whatever current it carries.</summary>
    /// <param name="file">A case that lacks nothing of it.</param>
    /// <param name="kind">A machine with a field winding.</param>
    /// <param name="copperRatio">Resistance of copper now over that where the case's resistances hold.</param>
    public static FieldCircuit Circuit(CaseFile file, MachineKind kind, double copperRatio) => new()
    {
        SupplyVolts = file.Number(SourceOf(kind)),
        Ohms = copperRatio * file.Number(CaseKeys.FieldResistance),
        Henries = file.Number(CaseKeys.FieldInductance),
        IsShunt = kind != MachineKind.SeparatelyExcited,
        SharedOhms = copperRatio * SharedOhms(file, kind),
        DischargeSeconds = file.Number(CaseKeys.FieldDischargeTime),
        HasContactor = file.IsYes(CaseKeys.FieldContactor),
    };

    /// <summary>
    /// Field current at which the machine constant holds, A: of the plate's voltage where the winding lies on the machine's
    /// supply, through the resistance as the case states it, because heat changes the field and not the plate.
    /// </summary>
    /// <param name="file">A case that lacks nothing of the circuit.</param>
    /// <param name="kind">A machine with a field winding.</param>
    /// <param name="ratedVolts">Rated voltage; null: the supply's.</param>
    public static double RatedAmps(CaseFile file, MachineKind kind, double? ratedVolts)
    {
        if (file.Has(CaseKeys.FieldRatedCurrent)) return file.Number(CaseKeys.FieldRatedCurrent);
        double volts = file.Number(SourceOf(kind));
        if (kind != MachineKind.SeparatelyExcited) volts = ratedVolts ?? volts;
        return volts / (file.Number(CaseKeys.FieldResistance) + SharedOhms(file, kind));
    }

    private static CaseKey SourceOf(MachineKind kind) => kind == MachineKind.SeparatelyExcited ? CaseKeys.FieldSupplyVoltage : CaseKeys.SupplyVoltage;

    private static double SharedOhms(CaseFile file, MachineKind kind) =>
        kind == MachineKind.ShortShuntCompound ? file.Number(CaseKeys.SeriesFieldResistance) : 0;
}
