namespace StarterCtl.Engine.Solving;

/// <summary>A current of the circuit as a sum: a constant, a part of the armature's, a part of the field's.</summary>
/// <param name="Alone">What flows without either, A.</param>
/// <param name="Armature">Part of the armature current.</param>
/// <param name="Field">Part of the field current.</param>
public readonly record struct Share(double Alone, double Armature, double Field)
{
    /// <summary>The current, A.</summary>
    public double Amps(double armatureAmps, double fieldAmps) => Alone + Armature * armatureAmps + Field * fieldAmps;

    /// <summary>Its integral over a span, A s.</summary>
    public double AmpSeconds(in StepIntegrals span, double seconds) =>
        Alone * seconds + Armature * span.AmpSeconds + Field * span.FieldAmpSeconds;

    /// <summary>The integral of its square over a span, A2 s.</summary>
    public double SquareAmpSeconds(in StepIntegrals span, double seconds)
    {
        double square = Alone * Alone * seconds + Armature * Armature * span.SquareAmpSeconds + Field * Field * span.SquareFieldAmpSeconds
            + 2 * (Alone * Armature * span.AmpSeconds + Alone * Field * span.FieldAmpSeconds + Armature * Field * span.BothAmpSeconds);
        // Rounding can leave the sum for no current at all a little below zero.
        return square > 0 ? square : 0;
    }
}
