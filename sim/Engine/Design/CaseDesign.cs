using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>A case read as far as a design needs it.</summary>
/// <param name="File">The case.</param>
/// <param name="Plate">The plate.</param>
/// <param name="Input">What was designed from.</param>
/// <param name="Design">The starter.</param>
/// <param name="Warnings">Warnings of plate and design.</param>
public sealed record CaseDesign(CaseFile File, Plate Plate, DesignInput Input, StarterDesign Design, IReadOnlyList<string> Warnings)
{
    /// <summary>The machine.</summary>
    public required CaseMachine Machine { get; init; }

    /// <summary>Designs the starter of a case.</summary>
    /// <param name="file">The case.</param>
    /// <exception cref="CaseException">A key is missing, or no starter meets the case; names file, line and key.</exception>
    public static CaseDesign Of(CaseFile file) => Of(file, [], isRun: false);

    /// <summary>Designs the starter of a case that is to be run: its machine constant and inertia must be there too.</summary>
    /// <param name="file">The case.</param>
    /// <exception cref="CaseException">A key is missing, or no starter meets the case; names file, line and key.</exception>
    public static CaseDesign ForRun(CaseFile file) =>
        Of(file, [.. file.MissingOf(CaseKeys.MotorInertia), .. PlateReader.MissingConstant(file)], isRun: true);

    private static CaseDesign Of(CaseFile file, IEnumerable<CaseProblem> alsoMissing, bool isRun)
    {
        CaseProblem[] problems =
        [
            .. file.MissingOf(CaseKeys.SupplyVoltage, CaseKeys.MotorArmatureResistance),
            .. MissingLimits(file),
            .. alsoMissing,
            .. MachineReader.Problems(file, isRun),
            .. LoadReader.Problems(file),
            .. SupplyReader.Problems(file),
        ];
        if (problems.Length > 0) throw new CaseException(problems);

        List<string> warnings = [];
        (CaseMachine machine, Plate plate) = MachineReader.Read(file, PlateReader.Read(file, warnings), isRun, warnings);
        DesignInput input = new()
        {
            SupplyVolts = file.Number(CaseKeys.SupplyVoltage),
            ArmatureOhms = machine.CircuitOhms,
            BrushDropVolts = file.Number(CaseKeys.MotorBrushDrop),
            MachineConstant = plate.MachineConstant,
            Flux = machine.ArmatureFlux,
            InertiaKgM2 = file.Has(CaseKeys.MotorInertia) ? file.Number(CaseKeys.MotorInertia) + file.Number(CaseKeys.LoadInertia) : null,
            Load = LoadReader.Read(file),
            RatedAmps = plate.RatedAmps,
            PeakAmps = file.Has(CaseKeys.StarterPeakCurrent) ? file.Number(CaseKeys.StarterPeakCurrent) : null,
            SwitchingAmps = file.Has(CaseKeys.StarterSwitchingCurrent) ? file.Number(CaseKeys.StarterSwitchingCurrent) : null,
            LockoutAmps = file.Number(CaseKeys.ControlLockoutCurrent),
            StageCount = file.Has(CaseKeys.StarterStages) ? file.Count(CaseKeys.StarterStages) : null,
            Slack = file.Has(CaseKeys.StarterSlack) ? SlackOf(file.Text(CaseKeys.StarterSlack)) : null,
            BrakeOhms = file.Has(CaseKeys.BrakeResistance) ? file.Number(CaseKeys.BrakeResistance) : null,
            SectionOhms = file.Has(CaseKeys.StarterSections) ? file.Numbers(CaseKeys.StarterSections) : null,
            CutoutVolts = file.Has(CaseKeys.StarterCutoutVoltages) ? file.Numbers(CaseKeys.StarterCutoutVoltages) : null,
        };
        StarterDesign design = DesignAt(file, input);
        return new CaseDesign(file, plate, input, design, [.. warnings, .. design.Warnings, .. ReachWarnings(machine, design)]) { Machine = machine };
    }

    /// <summary>The designed sections, ohm, first cut out first.</summary>
    public double[] SectionOhms() => [.. Design.Stages.Select(stage => stage.SectionOhms)];

    // The rated point lies on the curve, so only what the armature adds can leave it.
    private static IEnumerable<string> ReachWarnings(CaseMachine machine, StarterDesign design)
    {
        if (machine.ArmatureFlux is not ArmatureFlux flux) yield break;
        double most = flux.Law.ExcitingAmps(flux.FieldAmps, design.PeakAmps), last = flux.Law.Curve.LastAmps;
        if (most <= last) yield break;
        yield return $"At the peak current of {Text.Number(design.PeakAmps)} A the exciting current is {Text.Number(most)} A, behind the last point of the magnetisation curve at {Text.Number(last)} A: the flux is taken as no larger there.";
    }

    private static StarterDesign DesignAt(CaseFile file, DesignInput input)
    {
        try
        {
            return StarterDesigner.Design(input);
        }
        catch (DesignException error)
        {
            throw new CaseException([file.Problem(KeyOf(error.Quantity), error.Found, error.Allowed)]);
        }
    }

    // Real parts or thresholds need one current or none; computed sections need both currents, or one and a count.
    private static IEnumerable<CaseProblem> MissingLimits(CaseFile file)
    {
        if (file.Has(CaseKeys.StarterSections)) yield break;
        bool hasPeak = file.Has(CaseKeys.StarterPeakCurrent), hasSwitching = file.Has(CaseKeys.StarterSwitchingCurrent);
        bool hasCount = file.Has(CaseKeys.StarterStages) || file.Has(CaseKeys.StarterCutoutVoltages);
        if (!hasPeak && !hasSwitching) yield return file.MissingOf(CaseKeys.StarterPeakCurrent).First();
        if (hasCount || (hasPeak && hasSwitching)) yield break;
        CaseKey key = hasSwitching ? CaseKeys.StarterPeakCurrent : CaseKeys.StarterSwitchingCurrent;
        yield return file.Problem(key, "nothing", $"{key.AllowedInFull}; or starter.stages, from which this current is computed");
    }

    private static Slack SlackOf(string written) =>
        Enum.GetValues<Slack>().First(slack => StageCurrents.Name(slack) == written);

    private static CaseKey KeyOf(DesignQuantity quantity) => quantity switch
    {
        DesignQuantity.PeakCurrent => CaseKeys.StarterPeakCurrent,
        DesignQuantity.SwitchingCurrent => CaseKeys.StarterSwitchingCurrent,
        DesignQuantity.Stages => CaseKeys.StarterStages,
        DesignQuantity.Slack => CaseKeys.StarterSlack,
        DesignQuantity.Sections => CaseKeys.StarterSections,
        DesignQuantity.CutoutVoltages => CaseKeys.StarterCutoutVoltages,
        DesignQuantity.BrushDrop => CaseKeys.MotorBrushDrop,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, null),
    };
}
