namespace StarterCtl.Core;

/// <summary>One fault in words. Everything that shows a fault goes by these.</summary>
public sealed class FaultRow
{
    /// <summary>Which fault.</summary>
    public readonly FaultId Id;

    /// <summary>Short name.</summary>
    public readonly string Name;

    /// <summary>Unit of the measured value and its limit; empty where they have none.</summary>
    public readonly string Unit;

    /// <summary>How bad it is.</summary>
    public readonly FaultSeverity Severity;

    /// <summary>What the controller saw.</summary>
    public readonly string Cause;

    /// <summary>What the starter did about it.</summary>
    public readonly string Done;

    /// <summary>What to check before a reset.</summary>
    public readonly string Check;

    /// <summary>Fills a row.</summary>
    public FaultRow(FaultId id, string name, string unit, FaultSeverity severity, string cause, string done, string check)
    {
        Id = id;
        Name = name;
        Unit = unit;
        Severity = severity;
        Cause = cause;
        Done = done;
        Check = check;
    }
}
