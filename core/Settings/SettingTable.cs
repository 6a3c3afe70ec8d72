namespace StarterCtl.Core;

/// <summary>The one table of settings. Text form, check, checksum and catalogue all go by it; append only.</summary>
public static class SettingTable
{
    /// <summary>Version of the set; changes with every row.</summary>
    public const int Version = 2;

    /// <summary>Every setting, in the order of its id.</summary>
    public static readonly SettingRow[] Rows =
    {
        Whole(SettingId.StageCount, "stage-count", "", 1, Settings.MostStages, "", "Number of stages. One contactor and one section each; more than 16 do not fit the coil bits."),
        Above(SettingId.StageOhms, "stage-ohms", "ohm", 0f, "", "Armature-circuit total while each stage is in effect, and last of the armature alone. Falls from stage to stage; used for the resistive estimate."),
        Above(SettingId.VoltsLeft, "volts-left", "V", 0f, "", "Voltage that may be left across the next stage at a cutout: the permitted peak times the next total. Falls from stage to stage."),
        Above(SettingId.MachineConstant, "machine-constant", "V s/rad", 0f, "", "Back-EMF per speed. An error in it is the same error in every threshold."),
        From(SettingId.BrushDropVolts, "brush-drop", "V", 0f, "0", "Drop of both brushes. Left at 0 the peaks come out lower than designed."),
        Above(SettingId.LockoutAmps, "lockout-current", "A", 0f, "1000000 (off)", "No stage is cut out above this magnitude. Off unless wanted: the threshold alone keeps the peak."),
        Above(SettingId.InstantTripAmps, "instant-trip", "A", 0f, "", "Magnitude that trips at once. Above the permitted peak, below what the hardware's own device lets through."),
        Above(SettingId.HighestSupplyVolts, "highest-supply", "V", 0f, "", "A reading above it, or below 0 by more than a tenth of it, is not believed."),
        Above(SettingId.HighestSpeedRadPerSec, "highest-speed", "rad/s", 0f, "", "A reading of larger magnitude is not believed."),
        Above(SettingId.SteadyAmpsPerSec, "steady-slope", "A/s", 0f, "1000000 (always)", "Current slope up to which the resistive estimate leaves the inductance out."),
        Whole(SettingId.ConfirmMicroseconds, "confirm-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which all conditions of a cutout must hold. 0 decides on the first control period."),
        Whole(SettingId.MinimumDwellMicroseconds, "minimum-dwell", "us", 0, Settings.LongestMicroseconds, "0", "Shortest time in a stage. 0.1 to 0.5 s is common practice."),
        Whole(SettingId.MaximumStageMicroseconds, "maximum-stage-time", "us", 1, Settings.LongestMicroseconds, "1000000000", "Longest time in a stage, above the minimum dwell. Three to four times the expected time is common practice; the resistors' heat sets the end."),
        Whole(SettingId.ContactMicroseconds, "contact-time", "us", 1, Settings.LongestMicroseconds, "500000", "Time within which a contact must follow its coil. Twice the contactor's own time is common practice."),
        Whole(SettingId.FluxSource, "flux-source", "", 0, 2, "0", "What the flux follows: 0 nothing (constant, permanent magnet), 1 the field current by the curve, 2 the armature current by the curve (series machine)."),
        Whole(SettingId.CurvePoints, "curve-points", "", 0, Settings.MostCurvePoints, "0", "Points of the magnetisation curve; 2 or more where the flux follows a current."),
        From(SettingId.CurveAmps, "curve-amps", "A", 0f, "", "Exciting current of each point of the curve: field current, or a series machine's own. The first is 0, the others rise."),
        Above(SettingId.CurveConstants, "curve-constants", "V s/rad", 0f, "", "Back-EMF per speed at each point: a measured open-circuit voltage over its speed. Does not fall; stays at the last behind it."),
        From(SettingId.ReactionRatio, "armature-reaction", "", -Settings.Largest, "0", "Field current that each ampere of armature current takes away; negative for a series winding that adds to the field. Left at 0 where there is reaction, the flux at the peak is taken too high and the peak passes its limit."),
        Above(SettingId.PeakAmps, "peak-current", "A", 0f, "", "Permitted peak. The flux that decides is taken at it, and a brake or a turning shaft may not pass it."),
        Whole(SettingId.LineContactFitted, "line-contact-fitted", "", 0, 1, "1", "1: the line contactor has an auxiliary contact. 0: it is proven by the current, and needs zero-current."),
        Whole(SettingId.StageContactsFitted, "stage-contacts-fitted", "", 0, 1, "1", "1: every stage contactor has an auxiliary contact. 0: it is proven by the step of the current, and needs step-tolerance."),
        From(SettingId.StepToleranceRatio, "step-tolerance", "", 0f, 1f, "0 (off)", "Part by which the resistance that the current shows after a closing may differ from the designed one. 0.15 to 0.3 leaves room for hot resistors and sensors; 0 switches the proof by current off."),
        Whole(SettingId.StepSettleMicroseconds, "step-settle-time", "us", 0, Settings.LongestMicroseconds, "20000", "Time from the step of the current until it is judged: contact bounce and five times La/R."),
        From(SettingId.ZeroAmps, "zero-current", "A", 0f, "0 (off)", "Magnitude that counts as no current: offset and noise of the sensor. Needed to prove an opening by current; 0 switches off."),
        Whole(SettingId.SpeedSensorFitted, "speed-sensor-fitted", "", 0, 1, "1", "1: the shaft has a speed sensor. 0: the start goes by the resistive estimate, which speed-loss must allow and step-tolerance must watch."),
        Whole(SettingId.SpeedLoss, "speed-loss", "", 0, 2, "0", "When the speed is lost: 0 trips, 1 keeps running once running, 2 also finishes a start by the resistive estimate, and needs zero-current."),
        Whole(SettingId.SpeedLossMicroseconds, "speed-loss-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which the speed may be unknown before it counts as lost: that to the first pulse after standstill. No stage is cut out meanwhile."),
        Whole(SettingId.ResistiveConfirmMicroseconds, "resistive-confirm-time", "us", 0, Settings.LongestMicroseconds, "500000", "Confirm time where the resistive estimate decides; not below confirm-time. Longer, because it rests on resistances that heat up."),
        From(SettingId.StandstillRadPerSec, "standstill-speed", "rad/s", 0f, "0", "Magnitude up to which the shaft counts as standing. 1 % of the rated speed is common practice."),
        Whole(SettingId.SpinningStart, "spinning-start", "", 0, 1, "1", "1: a turning shaft is started with as much resistance as its back-EMF leaves needed. 0: start is refused until it stands."),
        Whole(SettingId.FieldContactorFitted, "field-contactor-fitted", "", 0, 1, "0", "1: the controller switches the field."),
        Whole(SettingId.FieldContactFitted, "field-contact-fitted", "", 0, 1, "0", "1: the field contactor has an auxiliary contact."),
        Whole(SettingId.FieldSensorFitted, "field-sensor-fitted", "", 0, 1, "0", "1: the field current is measured."),
        From(SettingId.MinimumFieldAmps, "minimum-field-current", "A", 0f, "0 (off)", "Least field current with which the armature may be live. Half the rated one is common practice; a lost field runs an unloaded motor away."),
        Whole(SettingId.FieldBuildMicroseconds, "field-build-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which the field must stand before the line closes; three field time constants where it is not measured."),
        Whole(SettingId.MaximumFieldMicroseconds, "maximum-field-time", "us", 1, Settings.LongestMicroseconds, "5000000", "Time within which the field must stand, above field-build-time."),
        Whole(SettingId.TripConfirmMicroseconds, "trip-confirm-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which overspeed, reverse rotation, a lost field or a lost permissive must last to trip. 0 trips on the first control period."),
        From(SettingId.SupplyLowVolts, "supply-low", "V", 0f, "0 (off)", "Supply below which no start and no cutout happens and a dip begins. Below what the start itself pulls the supply down to."),
        From(SettingId.NominalSupplyVolts, "nominal-supply", "V", 0f, "0", "Supply that a dip is expected to return to; above supply-low where that is used."),
        Whole(SettingId.DipAction, "dip-action", "", 0, 1, "0", "In a dip: 0 leaves the stages in, 1 puts back the resistance that the return of the supply would need."),
        Whole(SettingId.DipMicroseconds, "dip-time", "us", 0, Settings.LongestMicroseconds, "0", "Longest dip that is ridden through; then the line opens. 0 opens it at once."),
        Above(SettingId.SupplyHighVolts, "supply-high", "V", 0f, "1000000 (off)", "Supply above which no start happens and which trips after its time. The first peak grows with the supply."),
        Whole(SettingId.SupplyHighMicroseconds, "supply-high-time", "us", 0, Settings.LongestMicroseconds, "0", "Time for which the supply may be high."),
        From(SettingId.OverloadAmps, "overload-current", "A", 0f, "0 (off)", "Current setting of the overload: the rated current. The image trips where 1.12 times it would end."),
        Above(SettingId.OverloadSeconds, "overload-time-constant", "s", 0f, "290", "Time constant of the thermal image. 125, 290, 580 and 870 s meet classes 10A, 10, 20 and 30."),
        Above(SettingId.OverloadResetRatio, "overload-reset", "", 0f, 1f, "0.8", "Level of the image, 1 at the trip, below which an overload may be reset and a start is permitted."),
        From(SettingId.ResistorJoules, "resistor-energy", "J", 0f, 1000000000f, "0 (off)", "Energy that the whole starting resistor may hold above its surroundings: heat capacity times permitted rise."),
        Above(SettingId.ResistorSeconds, "resistor-time-constant", "s", 0f, "600", "Cooling time constant of the starting resistor."),
        Above(SettingId.ResistorStartRatio, "resistor-start-level", "", 0f, 1f, "0.5", "Part of resistor-energy up to which a start is permitted: one less what a start takes."),
        Whole(SettingId.ResistorSensorFitted, "resistor-sensor-fitted", "", 0, 1, "0", "1: the resistor's temperature is measured."),
        Above(SettingId.ResistorCelsius, "highest-resistor-temperature", "degC", 0f, 2000f, "350", "Resistor temperature that trips, and above which start is refused."),
        Whole(SettingId.StartsPerHour, "starts-per-hour", "", 0, Settings.MostStartsPerHour, "0 (off)", "Starts permitted in any hour."),
        Above(SettingId.StallAmps, "stall-current", "A", 0f, "1000000 (off)", "Current above which a standing shaft is stalled: above what breaking away takes."),
        Whole(SettingId.StallMicroseconds, "stall-time", "us", 1, Settings.LongestMicroseconds, "1000000", "Time for which the shaft may stand with it; what commutator and first section bear."),
        Whole(SettingId.MaximumStartMicroseconds, "maximum-start-time", "us", 1, Settings.LongestMicroseconds, "1000000000", "Longest time from the line's command until all resistance is out."),
        Above(SettingId.OverspeedRadPerSec, "overspeed", "rad/s", 0f, "1000000 (off)", "Speed of either direction that trips, with the line closed or open. 110 to 125 % of the rated speed is common practice."),
        Above(SettingId.ReverseRadPerSec, "reverse-speed", "rad/s", 0f, "1000000 (off)", "Speed against the start's direction that trips while the line is closed."),
        Above(SettingId.DisagreementVolts, "disagreement", "V", 0f, "1000000 (off)", "Difference between the back-EMF from speed and the one from the voltage equation that trips. 10 to 20 % of the supply leaves room for hot windings."),
        Whole(SettingId.DisagreementMicroseconds, "disagreement-time", "us", 0, Settings.LongestMicroseconds, "500000", "Time for which they may differ; counted while the current is steady."),
        Whole(SettingId.MaximumTickMicroseconds, "maximum-tick", "us", 1, Settings.LongestMicroseconds, "1000000000 (off)", "Longest time between two control periods while a coil is on; two or three periods."),
        Whole(SettingId.RequiredPermissives, "required-permissives", "", 0, 65535, "0", "Permissive inputs that must be given, as a sum: 1 for the first, 2 for the second, 4 for the third."),
        Whole(SettingId.BrakeFitted, "brake-fitted", "", 0, 1, "0", "1: a dynamic brake is fitted: its own resistor across the armature."),
        Whole(SettingId.BrakeContactFitted, "brake-contact-fitted", "", 0, 1, "1", "1: the brake contactor has an auxiliary contact. 0: its opening is proven by time and current, and needs zero-current."),
        From(SettingId.BrakeOhms, "brake-ohms", "ohm", 0f, "0", "Armature circuit's total while braking, armature included. Braking waits until the back-EMF over it is within peak-current."),
        From(SettingId.BrakeReleaseRadPerSec, "brake-release-speed", "rad/s", 0f, "0", "Speed at which the brake is released. Its torque fades with the speed; it does not hold a standing shaft."),
        Whole(SettingId.BrakeDelayMicroseconds, "brake-delay", "us", 0, Settings.LongestMicroseconds, "0", "Time between the line's contact proven open and the brake: until its arc is out."),
        Whole(SettingId.MaximumBrakeMicroseconds, "maximum-brake-time", "us", 1, Settings.LongestMicroseconds, "10000000", "Longest braking, and longest wait for it."),
    };

    private static SettingRow Above(SettingId id, string name, string unit, float lowest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, false, Settings.Largest, false, defaultText, reason);

    private static SettingRow From(SettingId id, string name, string unit, float lowest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, true, Settings.Largest, false, defaultText, reason);

    private static SettingRow Whole(SettingId id, string name, string unit, int lowest, int highest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, true, highest, true, defaultText, reason);

    private static SettingRow Above(SettingId id, string name, string unit, float lowest, float highest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, false, highest, false, defaultText, reason);

    private static SettingRow From(SettingId id, string name, string unit, float lowest, float highest, string defaultText, string reason) =>
        new SettingRow(id, name, unit, lowest, true, highest, false, defaultText, reason);
}
