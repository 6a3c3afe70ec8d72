namespace StarterCtl.Firmware;

/// <summary>What went on while a sample was taken. Numbers are published and never reused.</summary>
public enum NoiseSituation
{
    /// <summary>Every coil off and every contact open.</summary>
    Rest = 0,

    /// <summary>At least one coil on, and no coil switched lately.</summary>
    CoilsOn = 1,

    /// <summary>A coil was just released.</summary>
    Release = 2,

    /// <summary>Anything else; not recorded.</summary>
    None = 3,
}
