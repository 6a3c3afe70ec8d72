namespace StarterCtl.Core;

/// <summary>What the machine's flux follows. Numbers are published and never reused.</summary>
public enum FluxSource
{
    /// <summary>Nothing: constant flux, as of a permanent magnet or a field on its own steady supply.</summary>
    Constant = 0,

    /// <summary>The measured field current, by the magnetisation curve, less armature reaction.</summary>
    FieldCurrent = 1,

    /// <summary>The armature current, by the magnetisation curve: a series machine.</summary>
    ArmatureCurrent = 2,
}
