namespace StarterCtl.Core;

/// <summary>Stages as bits, bit 0 = stage 1. Stages close in order, so that a sound set is a run of ones from bit 0.</summary>
public static class StageBits
{
    // Bits of the feedback. Those behind the stage count belong to no coil and must say open like any other.
    private const int FeedbackBits = 32;

    /// <summary>The bit of a stage.</summary>
    /// <param name="stage">From 1.</param>
    public static int Of(int stage) => 1 << (stage - 1);

    /// <summary>Every stage up to one, that one included; none for 0.</summary>
    public static int UpTo(int stage) => (1 << stage) - 1;

    /// <summary>Length of the run of ones that begins with stage 1; what lies behind a gap does not count.</summary>
    public static int Run(int bits)
    {
        int stages = 0;
        for (int bit = 1; (bits & bit) != 0; bit <<= 1) stages++;
        return stages;
    }

    /// <summary>The stages of that run; what lies behind a gap is left out.</summary>
    public static int InOrder(int bits) => bits & ~(bits + 1);

    /// <summary>Lowest stage of a set, from 1; 0 of an empty one.</summary>
    public static int Lowest(int bits)
    {
        for (int stage = 1; stage <= FeedbackBits; stage++)
        {
            if ((bits & Of(stage)) != 0) return stage;
        }

        return 0;
    }
}
