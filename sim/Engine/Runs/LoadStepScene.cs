using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// The machine runs on the full supply, every section out, and takes a step of its load. No controller acts: the machine
/// finds its new speed by itself. The same step is then put on a machine with more armature resistance.
/// </summary>
public sealed record LoadStepScene
{
    /// <summary>How many times the armature resistance the weaker machine has.</summary>
    public const double WeakerTimes = 10;

    private const double UsualStepRatio = 0.5;

    /// <summary>Load before the step.</summary>
    public required Load LoadBefore { get; init; }

    /// <summary>Load after the step.</summary>
    public required Load LoadAfter { get; init; }

    /// <summary>When the case steps its load, s; null when the case has no such event and a usual step is taken.</summary>
    public required double? EventSeconds { get; init; }

    /// <summary>Over which time the case does so, s; the scene takes the whole change at once.</summary>
    public required double EventOverSeconds { get; init; }

    /// <summary>The machine of the case.</summary>
    public required LoadStepResponse Machine { get; init; }

    /// <summary>The same machine with <see cref="WeakerTimes"/> times its armature resistance, from its own steady state.</summary>
    public required LoadStepResponse WeakerMachine { get; init; }

    /// <summary>Plays the scene of a study.</summary>
    public static LoadStepScene Of(StartStudy study)
    {
        RunSetup setup = study.Setup;
        (Load before, Load after, double? eventSeconds, double overSeconds) = FindStep(study);
        PlantConditions full = setup.OnFullSupply(before);
        Machine weaker = setup.Machine with { ArmatureOhms = WeakerTimes * setup.Machine.ArmatureOhms };
        return new LoadStepScene
        {
            LoadBefore = before,
            LoadAfter = after,
            EventSeconds = eventSeconds,
            EventOverSeconds = overSeconds,
            Machine = LoadStepResponse.Of(full, after),
            WeakerMachine = LoadStepResponse.Of(full with { Machine = weaker }, after),
        };
    }

    private static (Load Before, Load After, double? EventSeconds, double OverSeconds) FindStep(StartStudy study)
    {
        Load load = study.Setup.Load;
        foreach (RunEvent happening in study.Setup.Events)
        {
            if (happening.LoadTorqueNewtonMetres is not double torque) continue;
            Load next = load with { ConstantNewtonMetres = torque };
            if (torque > load.ConstantNewtonMetres) return (load, next, happening.AtSeconds, happening.OverSeconds);
            load = next;
        }

        Plate plate = study.Plate;
        double ratedTorque = plate.RatedWatts / plate.RatedRadPerSec ?? Characteristic.Of(study.Setup.OnFullSupply(study.Setup.Load)).AtAmps(study.Design.SwitchingAmps).TorqueNewtonMetres;
        load = study.Setup.Load;
        return (load, load with { ConstantNewtonMetres = load.ConstantNewtonMetres + UsualStepRatio * ratedTorque }, null, 0);
    }
}
