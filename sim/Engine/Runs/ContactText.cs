using StarterCtl.Core;

namespace StarterCtl.Engine.Runs;

/// <summary>Contactors by the names that people give them.</summary>
public static class ContactText
{
    /// <summary>The contactor that a <see cref="ContactNumber"/> stands for: "line contactor", "contactor of stage 2".</summary>
    public static string Name(double number) => (int)number switch
    {
        ContactNumber.Line => "line contactor",
        ContactNumber.Field => "field contactor",
        ContactNumber.Brake => "brake contactor",
        int stage => $"contactor of stage {stage}",
    };
}
