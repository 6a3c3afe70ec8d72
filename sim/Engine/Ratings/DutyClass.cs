using System;

namespace StarterCtl.Engine.Ratings;

/// <summary>The duty of the motor as IEC 60034-1 names it.</summary>
/// <param name="Name">"S2", "S3", "S4" or "S5".</param>
/// <param name="Designation">The whole designation: "S4 25 % JM = 0.45 kg m2 Jext = 11 kg m2".</param>
/// <param name="Why">Why this one.</param>
public sealed record DutyClass(string Name, string Designation, string Why)
{
    // IEC 60034-1: at rest to within 2 K of the coolant.
    private const double ColdKelvin = 2;

    // Where starting "affects the temperature rise" begins is not in the standard: common practice, no source.
    private const double StartShare = 0.1;

    /// <summary>Names a duty.</summary>
    /// <param name="times">Its cycle.</param>
    /// <param name="motorKgM2">Moment of inertia of the armature, kg m2.</param>
    /// <param name="loadKgM2">That of the load at the motor shaft, kg m2.</param>
    /// <param name="hasBrake">True where a dynamic brake stops the motor.</param>
    /// <param name="startAbove">How far above its surroundings the armature winding is when start is pressed, K; null: it does not warm up.</param>
    /// <param name="startShare">The start's part of the cycle's armature heat.</param>
    /// <remarks>IEC 60034-1, duty types; tests/published/SOURCES.md, CHK-41.</remarks>
    public static DutyClass Of(CycleTimes times, double motorKgM2, double loadKgM2, bool hasBrake, double? startAbove, double startShare)
    {
        string percent = $"{Text.Number(Math.Round(100 * times.DurationFactor, 1))} %", inertias = $"JM = {Text.Number(motorKgM2)} kg m2 Jext = {Text.Number(loadKgM2)} kg m2";
        if (startAbove is double kelvin && kelvin < ColdKelvin)
            return new DutyClass("S2", $"S2 {Text.Number(times.RunSeconds / 60)} min", $"short-time: before each start the winding is within {ColdKelvin} K of its surroundings");
        if (hasBrake) return new DutyClass("S5", $"S5 {percent} {inertias}", "intermittent with starting and electric braking: the brake's current warms the armature too");
        string share = $"the start makes {Text.Number(Math.Round(100 * startShare, 1))} % of the armature's heat";
        return startShare < StartShare
            ? new DutyClass("S3", $"S3 {percent}", $"intermittent: {share}, too little to count")
            : new DutyClass("S4", $"S4 {percent} {inertias}", $"intermittent with starting: {share}");
    }
}
