namespace StarterCtl.Engine.Runs;

/// <summary>What is wrong with a contactor.</summary>
public enum ContactFaultKind
{
    /// <summary>Nothing: main contact and auxiliary contact are sound again and follow the coil.</summary>
    Sound,

    /// <summary>The main contact stays closed when the coil lets go; an open one welds when it closes next.</summary>
    Welds,

    /// <summary>The main contact does not close when the coil pulls; a closed one opens with its coil for the last time.</summary>
    RefusesToClose,

    /// <summary>The main contact opens at once although the coil is on, and does not close again.</summary>
    DropsOut,

    /// <summary>The auxiliary contact says open whatever the main contact does.</summary>
    AuxiliaryStuckOpen,

    /// <summary>The auxiliary contact says closed whatever the main contact does.</summary>
    AuxiliaryStuckClosed,
}
