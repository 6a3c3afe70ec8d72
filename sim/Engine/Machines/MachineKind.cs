namespace StarterCtl.Engine.Machines;

/// <summary>How a machine gets its flux.</summary>
public enum MachineKind
{
    /// <summary>A field winding on its own supply.</summary>
    SeparatelyExcited,

    /// <summary>A field winding across the machine's own supply.</summary>
    Shunt,

    /// <summary>A field winding that carries the armature current.</summary>
    Series,

    /// <summary>Shunt and series winding; the shunt winding lies across armature, starter and series winding together.</summary>
    LongShuntCompound,

    /// <summary>Shunt and series winding; the series winding carries the shunt winding's current too.</summary>
    ShortShuntCompound,

    /// <summary>Permanent magnets.</summary>
    PermanentMagnet,
}
