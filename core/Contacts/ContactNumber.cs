namespace StarterCtl.Core;

/// <summary>How a fault names a contactor. A stage contactor is its stage, from 1. Numbers are published and never reused.</summary>
public static class ContactNumber
{
    /// <summary>The line contactor.</summary>
    public const int Line = 0;

    /// <summary>The field contactor.</summary>
    public const int Field = 101;

    /// <summary>The brake contactor.</summary>
    public const int Brake = 102;
}
