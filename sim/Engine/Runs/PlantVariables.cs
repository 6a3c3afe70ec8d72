using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Runs;

/// <summary>The tolerances of a case, held against its nominal values.</summary>
internal static class PlantVariables
{
    /// <summary>Every number that may differ, in the order of the file.</summary>
    /// <param name="designed">The nominal case.</param>
    /// <exception cref="CaseException">A tolerance is about something that the case does not have, or reaches values that cannot be; carries every problem.</exception>
    public static PlantVariable[] Of(CaseDesign designed)
    {
        if (designed.File.Tolerances.Count == 0) return [];
        List<CaseProblem> problems = [];
        List<PlantVariable> variables = [];
        foreach (CaseTolerance tolerance in designed.File.Tolerances)
        {
            CaseProblem[] found = [.. Problems(designed, tolerance)];
            problems.AddRange(found);
            if (found.Length == 0) variables.AddRange(NominalsOf(designed, tolerance.Key)!.Select((nominal, item) => VariableOf(tolerance, nominal, item)));
        }

        if (problems.Count == 0) problems.AddRange(Contradictions(designed, variables));
        if (problems.Count > 0) throw new CaseException(problems);
        return [.. variables];
    }

    private static PlantVariable VariableOf(CaseTolerance tolerance, double nominal, int item)
    {
        (double low, double high) = Limits(tolerance, nominal);
        bool isWhole = !PlantKeys.IsByItem(tolerance.Key);
        return new PlantVariable(tolerance.Key, isWhole ? -1 : item, nominal, tolerance.Shape, low, high);
    }

    private static (double Low, double High) Limits(CaseTolerance tolerance, double nominal) => tolerance.Basis switch
    {
        ToleranceBasis.Value => (tolerance.Low, tolerance.High),
        ToleranceBasis.Deviation => (nominal + tolerance.Low, nominal + tolerance.High),
        // A part of a negative nominal value lies on its other side.
        _ => nominal < 0 ? (nominal * (1 + tolerance.High), nominal * (1 + tolerance.Low)) : (nominal * (1 + tolerance.Low), nominal * (1 + tolerance.High)),
    };

    // Null where the case has nothing that could differ.
    private static IReadOnlyList<double>? NominalsOf(CaseDesign designed, CaseKey key)
    {
        CaseFile file = designed.File;
        if (key == CaseKeys.StarterSections) return designed.SectionOhms();
        if (key == CaseKeys.MotorConstant) return [designed.Plate.MachineConstant!.Value];
        if (key == CaseKeys.MotorWindingTemperature) return [MachineReader.WindingCelsius(file)];
        if (!file.Has(key) && key.DefaultText is null) return null;
        if (PlantKeys.IsScaled(key)) return [1];
        return PlantKeys.IsByItem(key) ? file.Numbers(key) : [file.Number(key)];
    }

    private static IEnumerable<CaseProblem> Problems(CaseDesign designed, CaseTolerance tolerance)
    {
        CaseKey key = tolerance.Key;
        if (NominalsOf(designed, key) is not IReadOnlyList<double> nominals)
        {
            yield return Problem(designed, tolerance, $"a tolerance of {key.Path}, which the case does not have", $"{key.Path} in the file, or no such tolerance");
            yield break;
        }

        foreach (CaseProblem useless in Useless(designed, tolerance)) yield return useless;
        foreach (double nominal in nominals)
        {
            (double low, double high) = Limits(tolerance, nominal);
            string quoted = $"\"{tolerance.Written}\"";
            if (tolerance.Basis == ToleranceBasis.Ratio && nominal == 0)
            {
                yield return Problem(designed, tolerance, $"{quoted} of a nominal value of 0, which is nothing", "limits with their unit");
            }
            else if (Outside(key, low) is string tooLow) yield return Problem(designed, tolerance, $"{quoted}, which reaches {tooLow}", Range(key));
            else if (Outside(key, high) is string tooHigh) yield return Problem(designed, tolerance, $"{quoted}, which reaches {tooHigh}", Range(key));
            else if (tolerance.Shape == ToleranceShape.Triangular && (nominal < low || nominal > high))
            {
                yield return Problem(designed, tolerance, $"{quoted}, without the nominal {Amount(key, nominal)} at which it is most likely", "limits around the nominal value, or no triangular tolerance");
            }
            else continue;
            yield break;
        }
    }

    private static string? Outside(CaseKey key, double value) =>
        PlantKeys.IsScaled(key) ? (value > 0 ? null : "a factor of 0 or below") : key.Range!.Contains(value) ? null : Amount(key, value);

    private static string Range(CaseKey key) => PlantKeys.IsScaled(key) ? "a tolerance that leaves every value above 0" : $"a tolerance that stays in {key.Range!.Text}";

    private static string Amount(CaseKey key, double value) =>
        key.Dimension is Dimension dimension ? $"{Text.Number(value)} {Units.SiName(dimension)}" : Text.Number(value);

    // A tolerance is as good as the key itself: what refuses a key that nothing asks for refuses its tolerance.
    private static IEnumerable<CaseProblem> Useless(CaseDesign designed, CaseTolerance tolerance)
    {
        CaseKey key = tolerance.Key;
        if (designed.File.Has(key) || key.DefaultText is null) return [];
        CaseValue value = new(tolerance.Written, tolerance.Line) { File = designed.File.FileName, Number = tolerance.Basis == ToleranceBasis.Value ? tolerance.High : 1 };
        CaseFile with = designed.File.With([new(key, value)]);
        return MachineReader.Problems(with, isRun: true).Concat(CaseSensors.Problems(with)).Concat(CaseHeat.Problems(with, designed.Design.StageCount, designed.Machine.Field))
            .Select(problem => Problem(designed, tolerance, $"a tolerance of {key.Path} where it is of no use: found {problem.Found} at {problem.Key}", problem.Allowed));
    }

    // Two quantities, each of which is fine by itself.
    private static IEnumerable<CaseProblem> Contradictions(CaseDesign designed, List<PlantVariable> variables)
    {
        CaseFile file = designed.File;
        (double _, double dropOut) = Span(file, variables, CaseKeys.ContactorsDropOutVoltage);
        (double pickUp, double _) = Span(file, variables, CaseKeys.ContactorsPickUpVoltage);
        if (dropOut > pickUp && Blamed(file, CaseKeys.ContactorsDropOutVoltage, CaseKeys.ContactorsPickUpVoltage) is CaseTolerance coil)
        {
            yield return Problem(designed, coil, $"a coil that may let go below {Text.Number(dropOut)} and close from {Text.Number(pickUp)}", $"{CaseKeys.ContactorsDropOutVoltage.Path} up to {CaseKeys.ContactorsPickUpVoltage.Path} for all their values");
        }

        (double period, double _) = Span(file, variables, CaseKeys.ControlPeriod);
        (double _, double jitter) = Span(file, variables, CaseKeys.ControlJitter);
        if (jitter >= period && Blamed(file, CaseKeys.ControlJitter, CaseKeys.ControlPeriod) is CaseTolerance loop)
        {
            yield return Problem(designed, loop, $"ticks up to {Text.Number(jitter * 1e6)} us late in a period of {Text.Number(period * 1e6)} us", "jitter below the period for all their values");
        }

        if (designed.Machine.Kind != Machines.MachineKind.PermanentMagnet) yield break;
        (double cold, double hot) = Span(file, variables, CaseKeys.MotorWindingTemperature, MachineReader.WindingCelsius(file));
        (double least, double most) = Span(file, variables, CaseKeys.MotorMagnetTemperatureCoefficient);
        double held = file.Number(CaseKeys.MotorResistanceTemperature);
        double left = 1 + new[] { least * (hot - held), least * (cold - held), most * (hot - held), most * (cold - held) }.Min();
        if (left <= 0 && Blamed(file, CaseKeys.MotorWindingTemperature, CaseKeys.MotorMagnetTemperatureCoefficient) is CaseTolerance magnet)
        {
            yield return Problem(designed, magnet, $"\"{magnet.Written}\", which leaves the magnets {Text.Number(100 * left)} % of their flux", "limits that leave flux");
        }
    }

    private static (double Low, double High) Span(CaseFile file, List<PlantVariable> variables, CaseKey key, double? nominal = null)
    {
        if (variables.Find(variable => variable.Key == key) is PlantVariable variable) return (variable.Low, variable.High);
        double number = nominal ?? file.Number(key);
        return (number, number);
    }

    private static CaseTolerance? Blamed(CaseFile file, params CaseKey[] keys) =>
        keys.Select(key => file.Tolerances.FirstOrDefault(tolerance => tolerance.Key == key)).FirstOrDefault(tolerance => tolerance != null);

    private static CaseProblem Problem(CaseDesign designed, CaseTolerance tolerance, string found, string allowed) =>
        new(designed.File.FileName, tolerance.Line, tolerance.Path, found, allowed);
}
