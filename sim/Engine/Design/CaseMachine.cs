using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Design;

/// <summary>The machine of a case, its windings at the temperature that they have in it.</summary>
/// <param name="Kind">How it gets its flux.</param>
/// <param name="ArmatureOhms">Armature circuit, ohm, with a series winding that carries the armature current alone.</param>
/// <param name="ArmatureHenries">Armature circuit, H, with a series winding.</param>
/// <param name="Flux">Machine constant times flux over the currents; null: it is constant.</param>
/// <param name="Field">Field circuit; null where there is none, and where nothing that is done with the case needs it.</param>
public sealed record CaseMachine(MachineKind Kind, double ArmatureOhms, double ArmatureHenries, FluxLaw? Flux, FieldCircuit? Field)
{
    /// <summary>Field current at which the machine constant holds, A; 0 without a field circuit.</summary>
    public double RatedFieldAmps { get; init; }

    /// <summary>Field current that the supply drives in the end, A; 0 without a field circuit.</summary>
    public double StandingFieldAmps => Field is null ? 0 : Field.SupplyVolts / (Field.Ohms + Field.SharedOhms);

    /// <summary>What the armature current meets without the starter, ohm: the series winding of a short shunt included.</summary>
    public double CircuitOhms => ArmatureOhms + (Field?.SharedOhms ?? 0);

    /// <summary>Machine constant times flux over the armature current, at the standing field current; null: it does not follow it.</summary>
    public ArmatureFlux? ArmatureFlux => Flux is { FollowsArmature: true } ? new ArmatureFlux(Flux, StandingFieldAmps) : null;
}
