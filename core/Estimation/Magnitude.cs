namespace StarterCtl.Core;

/// <summary>A number without its sign; the board's library has no such function for single precision.</summary>
public static class Magnitude
{
    /// <summary>The number, or its negative below 0. NaN stays NaN.</summary>
    public static float Of(float number) => number < 0f ? -number : number;
}
