namespace StarterCtl.Core;

/// <summary>
/// All limits of the controller, flat. Filled once, checked by the controller's constructor, not changed afterwards.
/// </summary>
public sealed class Settings
{
    /// <summary>Most stages that a starter can have.</summary>
    public const int MostStages = 16;

    /// <summary>Longest time that a timer setting may ask for, microseconds (1000 s).</summary>
    public const int LongestMicroseconds = 1000000000;

    /// <summary>Largest magnitude of any volt, ampere or rad/s setting; keeps every product finite in single precision.</summary>
    public const float Largest = 1000000f;

    /// <summary>Number of stages, 1 to <see cref="MostStages"/>.</summary>
    public int StageCount;

    /// <summary>
    /// Armature-circuit total while each stage is in effect, ohm, index 0 = stage 1; falls strictly.
    /// One entry more than stages: the last is the armature alone.
    /// </summary>
    public float[] StageOhms = new float[MostStages + 1];

    /// <summary>
    /// Volts that may be left across the armature circuit when a stage is cut out, V, index 0 = stage 1; positive, falls.
    /// The stage's threshold on the back-EMF is the measured supply less brush drop less this; it is the permitted peak
    /// times the next stage's total, so the peak stays where it was designed on a low or a high supply.
    /// </summary>
    public float[] VoltsLeft = new float[MostStages];

    /// <summary>Machine constant times flux, V s/rad = N m/A; above 0.</summary>
    public float MachineConstant;

    /// <summary>Drop of both brushes together, V; 0 or more.</summary>
    public float BrushDropVolts;

    /// <summary>No stage is cut out above this current, A; above 0. <see cref="Largest"/> switches the lockout off.</summary>
    public float LockoutAmps = Largest;

    /// <summary>Current of either sign that trips at once, A; above 0.</summary>
    public float InstantTripAmps;

    /// <summary>A supply reading outside 0 less 10 % of this and this is not believed, V; above 0.</summary>
    public float HighestSupplyVolts;

    /// <summary>A speed reading of larger magnitude is not believed, rad/s; above 0.</summary>
    public float HighestSpeedRadPerSec;

    /// <summary>Current slope below which the resistive back-EMF estimate counts as valid, A/s; above 0.</summary>
    public float SteadyAmpsPerSec = Largest;

    /// <summary>Time for which every condition of a cutout must hold, microseconds; 0 decides on the first tick.</summary>
    public int ConfirmMicroseconds;

    /// <summary>Least time for which a stage stays in effect, microseconds.</summary>
    public int MinimumDwellMicroseconds;

    /// <summary>Longest time for which a stage may stay in effect, microseconds; above the minimum dwell.</summary>
    public int MaximumStageMicroseconds = LongestMicroseconds;

    /// <summary>Time within which a contact must follow its coil, microseconds; above 0.</summary>
    public int ContactMicroseconds = 500000;

    /// <summary>Checks every setting.</summary>
    /// <returns>The first setting that is not usable, or <see cref="SettingId.None"/>.</returns>
    public SettingId FirstProblem()
    {
        SettingsCheck check = new SettingsCheck();
        check.Run(this);
        return check.Count == 0 ? SettingId.None : check.Found[0];
    }
}
