using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>Reads the magnetisation curve of a case: machine constants, or back-EMFs measured at one speed.</summary>
internal static class CurveReader
{
    // Points closer than this part of the last current are one point to the controller's single precision.
    private const double LeastStep = 1e-6;

    private static readonly CaseKey[] Keys = [CaseKeys.FieldCurveCurrents, CaseKeys.FieldCurveConstants, CaseKeys.FieldCurveEmfs, CaseKeys.FieldCurveSpeed];

    /// <summary>Whether a case has anything of a curve.</summary>
    public static bool IsThere(CaseFile file) => System.Array.Exists(Keys, file.Has);

    /// <summary>The key that holds the values of the curve.</summary>
    public static CaseKey ValuesKey(CaseFile file) => file.Has(CaseKeys.FieldCurveEmfs) ? CaseKeys.FieldCurveEmfs : CaseKeys.FieldCurveConstants;

    /// <summary>What is missing or wrong; nothing where there is a usable curve.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file)
    {
        bool hasEmfs = file.Has(CaseKeys.FieldCurveEmfs), hasConstants = file.Has(CaseKeys.FieldCurveConstants), hasSpeed = file.Has(CaseKeys.FieldCurveSpeed);
        foreach (CaseProblem missing in file.MissingOf(CaseKeys.FieldCurveCurrents)) yield return missing;
        if (!hasEmfs && !hasConstants)
        {
            yield return file.Problem(CaseKeys.FieldCurveConstants, "nothing", $"{CaseKeys.FieldCurveConstants.AllowedInFull}; or field.curve-emfs with field.curve-speed");
        }

        if (hasEmfs && hasConstants) yield return file.Problem(CaseKeys.FieldCurveEmfs, "it beside field.curve-constants", "one of the two: the constants are the back-EMFs over their speed");
        if (hasEmfs && !hasSpeed) yield return file.MissingOf(CaseKeys.FieldCurveSpeed).First();
        if (!hasEmfs && hasSpeed) yield return file.Problem(CaseKeys.FieldCurveSpeed, $"{Quoted(file, CaseKeys.FieldCurveSpeed)} without field.curve-emfs", "field.curve-emfs in the file, measured at that speed");
        if (!file.Has(CaseKeys.FieldCurveCurrents) || hasEmfs == hasConstants || hasEmfs != hasSpeed) yield break;
        foreach (CaseProblem problem in ProblemsOfShape(file)) yield return problem;
    }

    /// <summary>Reads the curve of a case without <see cref="Problems"/>.</summary>
    /// <param name="file">The case.</param>
    /// <param name="constantRatio">By what the constants of its points are multiplied.</param>
    public static Magnetisation Read(CaseFile file, double constantRatio)
    {
        double over = file.Has(CaseKeys.FieldCurveEmfs) ? file.Number(CaseKeys.FieldCurveSpeed) : 1;
        return new Magnetisation(file.Numbers(CaseKeys.FieldCurveCurrents), [.. file.Numbers(ValuesKey(file)).Select(value => constantRatio * (value / over))]);
    }

    private static IEnumerable<CaseProblem> ProblemsOfShape(CaseFile file)
    {
        CaseKey key = ValuesKey(file);
        (string name, string unit) = key == CaseKeys.FieldCurveEmfs ? ("back-EMFs", "V") : ("constants", "V s/rad");
        IReadOnlyList<double> amps = file.Numbers(CaseKeys.FieldCurveCurrents), values = file.Numbers(key);
        bool rises = amps[0] == 0 && amps.Zip(amps.Skip(1)).All(pair => pair.Second - pair.First > LeastStep * amps[^1]);
        if (!rises) yield return file.Problem(CaseKeys.FieldCurveCurrents, Quoted(file, CaseKeys.FieldCurveCurrents), "currents that begin with 0 A and rise, each by more than a millionth of the last");
        if (values.Count != amps.Count) yield return file.Problem(key, $"{values.Count} {name} for {amps.Count} currents", "one for each of field.curve-currents");
        if (values.Zip(values.Skip(1)).Any(pair => pair.First > pair.Second)) yield return file.Problem(key, Quoted(file, key), $"{name} that do not fall");
        if (ConstantsOutOfRange(file, values)) yield return file.Problem(CaseKeys.FieldCurveSpeed, $"{Quoted(file, CaseKeys.FieldCurveSpeed)}, at which the curve ends with {Text.Number(values[^1] / file.Number(CaseKeys.FieldCurveSpeed))} V s/rad", $"a speed at which its constants lie {CaseKeys.MotorConstant.Range!.Text}");
        if (values[0] > 0) yield break;
        yield return file.Problem(
            key,
            $"{Quoted(file, key)}, without anything at 0 A",
            $"a first value above 0, which the iron keeps without field current: about {100 * Magnetisation.UsualResidualRatio:0} % of the rated is usual, here {Text.Number(Magnetisation.UsualResidualRatio * values[^1])} {unit}");
    }

    private static bool ConstantsOutOfRange(CaseFile file, IReadOnlyList<double> values)
    {
        if (!file.Has(CaseKeys.FieldCurveEmfs)) return false;
        double speed = file.Number(CaseKeys.FieldCurveSpeed);
        return values.Any(value => value > 0 && !CaseKeys.MotorConstant.Range!.Contains(value / speed));
    }

    private static string Quoted(CaseFile file, CaseKey key) => $"\"{file.Written(key)}\"";
}
