using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Refuses keys that make no sense for the kind of a machine: what would be left out without a word.</summary>
internal static class KindCheck
{
    // A series winding is all the field there is: nothing switches, feeds or watches it but the armature's own circuit.
    private static readonly CaseKey[] NotOfSeries =
    [
        CaseKeys.FieldSupplyVoltage, CaseKeys.FieldResistance, CaseKeys.FieldInductance, CaseKeys.FieldRatedCurrent,
        CaseKeys.FieldDischargeTime, CaseKeys.FieldContactor, CaseKeys.FieldMinimumCurrent, CaseKeys.FieldBuildTime,
        CaseKeys.FieldMaximumTime, CaseKeys.FieldThermalCapacity, CaseKeys.FieldThermalResistance,
        CaseKeys.SensorsFieldContact, CaseKeys.SensorsFieldCurrent,
    ];

    private static readonly CaseKey[] OfBrake = [CaseKeys.BrakeResistance, CaseKeys.BrakeReleaseSpeed, CaseKeys.BrakeDelay, CaseKeys.BrakeMaximumTime];

    private static readonly CaseKey[] OfSeriesWinding =
        [CaseKeys.SeriesFieldResistance, CaseKeys.SeriesFieldInductance, CaseKeys.SeriesFieldTurnsRatio, CaseKeys.SeriesFieldConnection, CaseKeys.SeriesFieldSense];

    private static readonly CaseKey[] OfCompoundAlone = [CaseKeys.SeriesFieldTurnsRatio, CaseKeys.SeriesFieldConnection, CaseKeys.SeriesFieldSense];

    /// <summary>How the machine of a case gets its flux.</summary>
    public static MachineKind KindOf(CaseFile file) => file.Text(CaseKeys.MotorKind) switch
    {
        "shunt" => MachineKind.Shunt,
        "series" => MachineKind.Series,
        "compound" when file.Text(CaseKeys.SeriesFieldConnection) == "short shunt" => MachineKind.ShortShuntCompound,
        "compound" => MachineKind.LongShuntCompound,
        "permanent magnet" => MachineKind.PermanentMagnet,
        _ => MachineKind.SeparatelyExcited,
    };

    /// <summary>The problem of every key that the kind has no use for.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file)
    {
        MachineKind kind = KindOf(file);
        IEnumerable<CaseProblem> ofKind = kind switch
        {
            MachineKind.PermanentMagnet => OfPermanentMagnet(file),
            MachineKind.Series => OfSeries(file),
            MachineKind.Shunt or MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound => OfShuntWinding(file),
            _ => [],
        };
        return [.. ofKind, .. OfSeriesKeys(file, kind), .. OfMagnets(file, kind)];
    }

    private static IEnumerable<CaseProblem> OfPermanentMagnet(CaseFile file)
    {
        if (!file.HasAnyOf("field")) yield break;
        yield return file.Problem(CaseKeys.FieldSupplyVoltage, "a field circuit on a permanent magnet motor", "motor.kind = \"separately excited\", or no [field]");
    }

    private static IEnumerable<CaseProblem> OfShuntWinding(CaseFile file)
    {
        if (!file.Has(CaseKeys.FieldSupplyVoltage)) yield break;
        yield return file.Problem(
            CaseKeys.FieldSupplyVoltage,
            $"{Quoted(file, CaseKeys.FieldSupplyVoltage)} on a {file.Text(CaseKeys.MotorKind)} motor, whose field lies on supply.voltage",
            "motor.kind = \"separately excited\", or no field.supply-voltage");
    }

    private static IEnumerable<CaseProblem> OfSeries(CaseFile file)
    {
        foreach (CaseKey key in NotOfSeries.Where(file.Has))
        {
            yield return file.Problem(
                key,
                $"{Quoted(file, key)} on a series motor, whose field is its armature's circuit",
                "no such key; the winding's own are series-field.resistance and series-field.inductance");
        }

        if (!file.HasAnyOf("brake")) yield break;
        yield return file.Problem(
            OfBrake.First(file.Has), "a dynamic brake on a series motor, whose field would have to be reversed first", "no [brake], or another motor.kind");
    }

    private static IEnumerable<CaseProblem> OfSeriesKeys(CaseFile file, MachineKind kind)
    {
        bool isCompound = kind is MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound;
        CaseKey[] refused = isCompound ? [] : kind == MachineKind.Series ? OfCompoundAlone : OfSeriesWinding;
        string allowed = kind == MachineKind.Series
            ? "series-field.resistance and series-field.inductance alone, or motor.kind = \"compound\""
            : "motor.kind = \"compound\" or \"series\", or no [series-field]";
        return refused.Where(file.Has).Select(key => file.Problem(key, $"{Quoted(file, key)} on a {file.Text(CaseKeys.MotorKind)} motor", allowed));
    }

    private static IEnumerable<CaseProblem> OfMagnets(CaseFile file, MachineKind kind)
    {
        CaseKey key = CaseKeys.MotorMagnetTemperatureCoefficient;
        if (!file.Has(key) || kind == MachineKind.PermanentMagnet) yield break;
        yield return file.Problem(key, $"{file.Written(key)} on a {file.Text(CaseKeys.MotorKind)} motor, which has no magnets", "motor.kind = \"permanent magnet\", or no such key");
    }

    private static string Quoted(CaseFile file, CaseKey key) =>
        key.Kind == CaseValueKind.Ratio ? file.Written(key) : $"\"{file.Written(key)}\"";
}
