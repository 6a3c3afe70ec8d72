using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.App.Reporting;

/// <summary>The machine of a study as the sections of the report look at it.</summary>
internal static class StudyMachine
{
    /// <summary>How the machine gets its flux.</summary>
    public static MachineKind Kind(StartStudy study)
    {
        FluxLaw? flux = study.Setup.Machine.Flux;
        FieldCircuit? field = study.Setup.Field;
        if (flux is { FieldShare: 0 }) return MachineKind.Series;
        if (flux is { ArmatureShare: not 0 }) return field is { SharedOhms: > 0 } ? MachineKind.ShortShuntCompound : MachineKind.LongShuntCompound;
        if (field is { IsShunt: true }) return MachineKind.Shunt;
        return field == null && study.Plate.Kind == "permanent magnet" ? MachineKind.PermanentMagnet : MachineKind.SeparatelyExcited;
    }

    /// <summary>True when the flux moves with the armature current.</summary>
    public static bool FollowsArmature(StartStudy study) => study.Setup.Machine.Flux is { FollowsArmature: true };

    /// <summary>Field current that the supply drives in the end, A; 0 without a field winding.</summary>
    public static double StandingFieldAmps(StartStudy study) =>
        study.Setup.Field is FieldCircuit field ? field.SupplyVolts / (field.Ohms + field.SharedOhms) : 0;

    /// <summary>The characteristic on the full supply, every section out.</summary>
    public static Characteristic OnFullSupply(StartStudy study) => Characteristic.Of(study.Setup.OnFullSupply(study.Setup.Load));

    /// <summary>The characteristic on a stage, the supply's resistance included.</summary>
    /// <param name="study">The study.</param>
    /// <param name="index">Stage, counted from 0; the number of stages is the armature alone.</param>
    public static Characteristic OnStage(StartStudy study, int index)
    {
        PlantConditions full = study.Setup.OnFullSupply(study.Setup.Load);
        return Characteristic.Of(full with { SectionOhms = study.Setup.SectionOhms, StagesClosed = (1 << index) - 1 });
    }

    /// <summary>Machine constant times flux at an armature current and the standing field, V s/rad.</summary>
    public static double ConstantAt(StartStudy study, double amps) =>
        study.Setup.Machine.Flux?.ConstantAt(StandingFieldAmps(study), amps) ?? study.Setup.Machine.Constant;

    /// <summary>Current at which the machine is looked at as fully loaded, A: the rated one, or else the switching current.</summary>
    public static double FullLoadAmps(StartStudy study) => study.Plate.RatedAmps ?? study.Design.SwitchingAmps;

    /// <summary>What that current is called.</summary>
    public static string FullLoadName(StartStudy study) => study.Plate.RatedAmps == null ? "the switching current" : "the rated current";
}
