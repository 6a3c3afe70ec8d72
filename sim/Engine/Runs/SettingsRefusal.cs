using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Runs;

/// <summary>What the controller's own check has against a set of settings, in the words of the case that made them.</summary>
internal static class SettingsRefusal
{
    /// <summary>Refuses a case whose settings the controller could not use.</summary>
    /// <param name="file">The case.</param>
    /// <param name="settings">What it made.</param>
    /// <exception cref="CaseException">Names every setting that is not usable by its key.</exception>
    public static void ThrowIfAny(CaseFile file, Settings settings)
    {
        List<CaseProblem> problems = [.. WithoutCircuit(file)];
        SettingsCheck check = new();
        check.Run(settings);
        for (int i = 0; i < check.Count; i++)
        {
            CaseProblem problem = ProblemOf(file, settings, check.Found[i], check.Problems[i], check.Others[i]);
            // One wrong value can make several settings unusable.
            if (problems.TrueForAll(other => other.Key != problem.Key)) problems.Add(problem);
        }

        if (problems.Count > 0) throw new CaseException(problems);
    }

    // A watch that has nothing to look at would be left out without a word.
    private static IEnumerable<CaseProblem> WithoutCircuit(CaseFile file)
    {
        if (file.Has(CaseKeys.SensorsFieldContact) && !file.HasAnyOf("field")) yield return file.Problem(CaseKeys.SensorsFieldContact, "it in a case without a field circuit", "field.supply-voltage and field.resistance in the file");
        if (file.Has(CaseKeys.SensorsBrakeContact) && !file.HasAnyOf("brake")) yield return file.Problem(CaseKeys.SensorsBrakeContact, "it in a case without a brake", "brake.resistance in the file");
        foreach ((CaseKey key, CaseKey needed) in Companions)
        {
            if (file.Has(key) && !file.Has(needed)) yield return file.Problem(key, $"{Quoted(file, key)} without {needed.Path}", $"{needed.Path} in the file, {needed.AllowedInFull}");
        }
    }

    private static (CaseKey Key, CaseKey Needed)[] Companions =>
    [
        (CaseKeys.ProtectionDipTime, CaseKeys.ProtectionSupplyLow),
        (CaseKeys.ProtectionDipAction, CaseKeys.ProtectionSupplyLow),
        (CaseKeys.ProtectionSupplyHighTime, CaseKeys.ProtectionSupplyHigh),
        (CaseKeys.ProtectionOverloadClass, CaseKeys.ProtectionOverloadCurrent),
        (CaseKeys.ProtectionOverloadReset, CaseKeys.ProtectionOverloadCurrent),
        (CaseKeys.ProtectionResistorTimeConstant, CaseKeys.ProtectionResistorEnergy),
        (CaseKeys.ProtectionResistorStartLevel, CaseKeys.ProtectionResistorEnergy),
        (CaseKeys.ProtectionStallTime, CaseKeys.ProtectionStallCurrent),
        (CaseKeys.ProtectionDisagreementTime, CaseKeys.ProtectionDisagreement),
        (CaseKeys.SensorsStepSettleTime, CaseKeys.SensorsStepTolerance),
    ];

    private static CaseProblem ProblemOf(CaseFile file, Settings settings, SettingId id, SettingProblem problem, SettingId other)
    {
        CaseKey key = id == SettingId.CurveConstants ? CurveReader.ValuesKey(file) : SettingKeys.Of(id);
        switch (problem)
        {
            case SettingProblem.NeedsOther:
                return Needed(file, id, key, other);
            case SettingProblem.NotBelowOther when id == SettingId.PeakAmps:
                return Bound(file, CaseKeys.ControlInstantTrip, "above the permitted peak of " + Value(settings, id));
            case SettingProblem.NotBelowOther:
                return Bound(file, key, $"below {SettingKeys.Of(other).Path}, {Value(settings, other)}");
            case SettingProblem.NotAboveOther when id == SettingId.MaximumStageMicroseconds:
                return Bound(file, key, $"above the minimum dwell of {file.Written(CaseKeys.ControlMinimumDwell)}");
            case SettingProblem.NotAboveOther:
                return Bound(file, key, $"above {SettingKeys.Of(other).Path}, {Value(settings, other)}");
            case SettingProblem.BelowOther:
                return Bound(file, key, $"at least {SettingKeys.Of(other).Path}, {Value(settings, other)}");
            case SettingProblem.DoesNotFall:
                return file.Problem(key, "values that do not fall from stage to stage in the controller's single precision", "stages whose resistances and thresholds differ by more than a part in a million");
            case SettingProblem.DoesNotRise:
                return Bound(file, key, "values that rise from point to point, the first current 0");
            default:
                return OutOfRange(file, key, id);
        }
    }

    private static CaseProblem Needed(CaseFile file, SettingId id, CaseKey key, SettingId other)
    {
        CaseKey needed = SettingKeys.Of(other);
        if (id == SettingId.BrakeFitted && other != SettingId.SpeedSensorFitted)
        {
            return file.Problem(needed, "a brake without it", needed.AllowedInFull);
        }

        if (id == SettingId.BrakeFitted) return file.Problem(needed, $"{Quoted(file, needed)} with a brake", "\"yes\": the brake is released by the speed");
        if (id == SettingId.SpeedSensorFitted && other == SettingId.StepToleranceRatio) return file.Problem(key, $"{Quoted(file, key)} without {needed.Path}", $"{needed.Path} in the file: without a speed sensor only the current's own step tells whether line and resistance are in");
        if (id == SettingId.SpeedSensorFitted) return file.Problem(key, $"{Quoted(file, key)} with {needed.Path} = {Quoted(file, needed)}", $"{needed.Path} = \"finish start\": without a speed sensor voltage and current have to decide");
        if (id == SettingId.MinimumFieldAmps) return file.Problem(key, $"{Quoted(file, key)} without a field current to watch", $"a field circuit, and {needed.Path} = \"yes\"");
        if (id == SettingId.FieldContactFitted) return file.Problem(key, $"{Quoted(file, key)} without a field contactor", $"{needed.Path} = \"yes\", or leave it out");
        return file.Problem(key, $"{Quoted(file, key)} without {needed.Path}", $"{needed.Path} in the file, {needed.AllowedInFull}");
    }

    private static CaseProblem Bound(CaseFile file, CaseKey key, string allowed) => file.Problem(key, Quoted(file, key), allowed);

    // Values that pass one by one can still ask the controller for a limit beyond what it can hold.
    private static CaseProblem OutOfRange(CaseFile file, CaseKey key, SettingId id)
    {
        SettingRow row = SettingTable.Rows.First(row => row.Id == id);
        string unit = row.Unit.Length == 0 ? "" : " " + row.Unit;
        return file.Problem(
            key,
            $"values that lead to a setting {row.Name} which the controller cannot hold",
            $"values that make it {(row.IncludesLowest ? "" : "above ")}{Text.Number(row.Lowest)} to {Text.Number(row.Highest)}{unit}; volts and speeds are believed up to twice those of the case");
    }

    private static string Quoted(CaseFile file, CaseKey key) =>
        file.Has(key) || key.DefaultText != null ? $"\"{file.Written(key)}\"" : "nothing";

    private static string Value(Settings settings, SettingId id)
    {
        SettingRow row = SettingTable.Rows.First(row => row.Id == id);
        float number = SettingAccess.Get(settings, id, 0);
        return row.Unit == "us" ? $"{Text.Number(number * 1e-6)} s" : $"{Text.Number(number)} {row.Unit}";
    }
}
