namespace StarterCtl.Engine.Runs;

/// <summary>A contactor of the panel.</summary>
public enum ContactName
{
    /// <summary>Line contactor.</summary>
    Line,

    /// <summary>A stage contactor; which one is said beside.</summary>
    Stage,

    /// <summary>Brake contactor.</summary>
    Brake,

    /// <summary>Field contactor.</summary>
    Field,
}
