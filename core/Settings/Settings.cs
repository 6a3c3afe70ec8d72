namespace StarterCtl.Core;

/// <summary>
/// All limits of the controller, flat. Filled once, checked by the controller's constructor, not changed afterwards.
/// </summary>
public sealed class Settings
{
    /// <summary>Most stages that a starter can have.</summary>
    public const int MostStages = 16;

    /// <summary>Most points of the magnetisation curve.</summary>
    public const int MostCurvePoints = 12;

    /// <summary>Most starts in an hour that can be counted.</summary>
    public const int MostStartsPerHour = 60;

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

    /// <summary>What the flux follows.</summary>
    public FluxSource FluxSource;

    /// <summary>Points of the magnetisation curve, 0 or 2 to <see cref="MostCurvePoints"/>.</summary>
    public int CurvePoints;

    /// <summary>Exciting current of each point of the magnetisation curve, A; the first 0, rising strictly.</summary>
    public float[] CurveAmps = new float[MostCurvePoints];

    /// <summary>Machine constant times flux at each point, V s/rad; above 0, not falling. Behind the last point it stays.</summary>
    public float[] CurveConstants = new float[MostCurvePoints];

    /// <summary>Field current that a unit of armature current takes away, A/A; negative for a series winding that adds to the field.</summary>
    public float ReactionRatio;

    /// <summary>Permitted peak armature current I1, A; above 0, below the instantaneous trip.</summary>
    public float PeakAmps;

    /// <summary>True when the line contactor has an auxiliary contact.</summary>
    public bool LineContactFitted = true;

    /// <summary>True when every stage contactor has an auxiliary contact.</summary>
    public bool StageContactsFitted = true;

    /// <summary>Part of a resistance by which the current may contradict it, 0 to 1; 0 switches the proof by current off.</summary>
    public float StepToleranceRatio;

    /// <summary>Time from the step of the current until it is judged, microseconds.</summary>
    public int StepSettleMicroseconds = 20000;

    /// <summary>Magnitude up to which a current reading counts as none, A; 0 switches off what needs it.</summary>
    public float ZeroAmps;

    /// <summary>True when the shaft has a speed sensor.</summary>
    public bool SpeedSensorFitted = true;

    /// <summary>What happens when the speed is lost.</summary>
    public SpeedLossAction SpeedLoss;

    /// <summary>Time for which the speed may be unknown before it counts as lost, microseconds; no stage is cut out meanwhile.</summary>
    public int SpeedLossMicroseconds;

    /// <summary>Confirm time of a cutout by the resistive estimate, microseconds; the confirm time or more.</summary>
    public int ResistiveConfirmMicroseconds = 500000;

    /// <summary>Magnitude up to which the shaft counts as standing, rad/s.</summary>
    public float StandstillRadPerSec;

    /// <summary>True when a turning shaft may be started, with the stages that its back-EMF permits.</summary>
    public bool SpinningStart = true;

    /// <summary>True when the controller switches the field.</summary>
    public bool FieldContactorFitted;

    /// <summary>True when the field contactor has an auxiliary contact.</summary>
    public bool FieldContactFitted;

    /// <summary>True when the field current is measured.</summary>
    public bool FieldSensorFitted;

    /// <summary>Least field current with which the armature may be live, A; 0 switches the watch off.</summary>
    public float MinimumFieldAmps;

    /// <summary>Time for which the field must stand before the line closes, microseconds.</summary>
    public int FieldBuildMicroseconds;

    /// <summary>Time within which the field must stand, microseconds; above its build time.</summary>
    public int MaximumFieldMicroseconds = 5000000;

    /// <summary>Time for which overspeed, reverse rotation, a lost field or a lost permissive must last to trip, microseconds.</summary>
    public int TripConfirmMicroseconds;

    /// <summary>Supply below which no start and no cutout happens, V; 0 switches the watch off.</summary>
    public float SupplyLowVolts;

    /// <summary>Supply that a dip is expected to return to, V; above the low limit where that is used.</summary>
    public float NominalSupplyVolts;

    /// <summary>What a supply dip does to the stages.</summary>
    public DipAction DipAction;

    /// <summary>Longest dip that is ridden through, microseconds; then the line opens.</summary>
    public int DipMicroseconds;

    /// <summary>Supply above which no start happens and which trips after its time, V.</summary>
    public float SupplyHighVolts = Largest;

    /// <summary>Time for which the supply may be high, microseconds.</summary>
    public int SupplyHighMicroseconds;

    /// <summary>Current setting of the overload, A; 0 switches it off.</summary>
    public float OverloadAmps;

    /// <summary>Time constant of the thermal image, s; above 0.</summary>
    public float OverloadSeconds = 290f;

    /// <summary>Level of the image below which an overload may be reset and a start is permitted, above 0 to 1.</summary>
    public float OverloadResetRatio = 0.8f;

    /// <summary>Energy that the starting resistor may hold above its surroundings, J; 0 switches the watch off.</summary>
    public float ResistorJoules;

    /// <summary>Cooling time constant of the starting resistor, s; above 0.</summary>
    public float ResistorSeconds = 600f;

    /// <summary>Part of the resistor's energy up to which a start is permitted, above 0 to 1.</summary>
    public float ResistorStartRatio = 0.5f;

    /// <summary>True when the resistor's temperature is measured.</summary>
    public bool ResistorSensorFitted;

    /// <summary>Resistor temperature that trips, degC; start is refused above the same.</summary>
    public float ResistorCelsius = 350f;

    /// <summary>Starts permitted in any hour; 0 switches the count off.</summary>
    public int StartsPerHour;

    /// <summary>Current above which a standing shaft is stalled, A.</summary>
    public float StallAmps = Largest;

    /// <summary>Time for which the shaft may stand with it, microseconds.</summary>
    public int StallMicroseconds = 1000000;

    /// <summary>Longest time from the line's command until running, microseconds.</summary>
    public int MaximumStartMicroseconds = LongestMicroseconds;

    /// <summary>Speed of either direction that trips, rad/s.</summary>
    public float OverspeedRadPerSec = Largest;

    /// <summary>Speed against the direction of the start that trips while the line is closed, rad/s.</summary>
    public float ReverseRadPerSec = Largest;

    /// <summary>Difference of the two back-EMF estimates that trips, V.</summary>
    public float DisagreementVolts = Largest;

    /// <summary>Time for which they may differ, microseconds.</summary>
    public int DisagreementMicroseconds = 500000;

    /// <summary>Longest time between two ticks, microseconds.</summary>
    public int MaximumTickMicroseconds = LongestMicroseconds;

    /// <summary>Permissive inputs that must be given, bit 0 = input 1.</summary>
    public int RequiredPermissives;

    /// <summary>True when a dynamic brake is fitted.</summary>
    public bool BrakeFitted;

    /// <summary>True when the brake contactor has an auxiliary contact.</summary>
    public bool BrakeContactFitted = true;

    /// <summary>Armature circuit's total while braking, ohm; above 0 where a brake is fitted.</summary>
    public float BrakeOhms;

    /// <summary>Speed at which the brake is released, rad/s; above 0 where a brake is fitted.</summary>
    public float BrakeReleaseRadPerSec;

    /// <summary>Time between the line's contact proven open and the brake, microseconds.</summary>
    public int BrakeDelayMicroseconds;

    /// <summary>Longest braking, and longest wait for it, microseconds.</summary>
    public int MaximumBrakeMicroseconds = 10000000;

    /// <summary>Checks every setting.</summary>
    /// <returns>The first setting that is not usable, or <see cref="SettingId.None"/>.</returns>
    public SettingId FirstProblem()
    {
        SettingsCheck check = new SettingsCheck();
        check.Run(this);
        return check.Count == 0 ? SettingId.None : check.Found[0];
    }
}
