namespace StarterCtl.Core;

/// <summary>Names a setting, so that a refused set says which one was wrong. Numbers are published and never reused.</summary>
public enum SettingId
{
    /// <summary>No setting: the check passed.</summary>
    None = 0,

    /// <summary><see cref="Settings.StageCount"/>.</summary>
    StageCount = 1,

    /// <summary><see cref="Settings.StageOhms"/>.</summary>
    StageOhms = 2,

    /// <summary><see cref="Settings.VoltsLeft"/>.</summary>
    VoltsLeft = 3,

    /// <summary><see cref="Settings.MachineConstant"/>.</summary>
    MachineConstant = 4,

    /// <summary><see cref="Settings.BrushDropVolts"/>.</summary>
    BrushDropVolts = 5,

    /// <summary><see cref="Settings.LockoutAmps"/>.</summary>
    LockoutAmps = 6,

    /// <summary><see cref="Settings.InstantTripAmps"/>.</summary>
    InstantTripAmps = 7,

    /// <summary><see cref="Settings.HighestSupplyVolts"/>.</summary>
    HighestSupplyVolts = 8,

    /// <summary><see cref="Settings.HighestSpeedRadPerSec"/>.</summary>
    HighestSpeedRadPerSec = 9,

    /// <summary><see cref="Settings.SteadyAmpsPerSec"/>.</summary>
    SteadyAmpsPerSec = 10,

    /// <summary><see cref="Settings.ConfirmMicroseconds"/>.</summary>
    ConfirmMicroseconds = 11,

    /// <summary><see cref="Settings.MinimumDwellMicroseconds"/>.</summary>
    MinimumDwellMicroseconds = 12,

    /// <summary><see cref="Settings.MaximumStageMicroseconds"/>.</summary>
    MaximumStageMicroseconds = 13,

    /// <summary><see cref="Settings.ContactMicroseconds"/>.</summary>
    ContactMicroseconds = 14,

    /// <summary><see cref="Settings.FluxSource"/>.</summary>
    FluxSource = 15,

    /// <summary><see cref="Settings.CurvePoints"/>.</summary>
    CurvePoints = 16,

    /// <summary><see cref="Settings.CurveAmps"/>.</summary>
    CurveAmps = 17,

    /// <summary><see cref="Settings.CurveConstants"/>.</summary>
    CurveConstants = 18,

    /// <summary><see cref="Settings.ReactionRatio"/>.</summary>
    ReactionRatio = 19,

    /// <summary><see cref="Settings.PeakAmps"/>.</summary>
    PeakAmps = 20,

    /// <summary><see cref="Settings.LineContactFitted"/>.</summary>
    LineContactFitted = 21,

    /// <summary><see cref="Settings.StageContactsFitted"/>.</summary>
    StageContactsFitted = 22,

    /// <summary><see cref="Settings.StepToleranceRatio"/>.</summary>
    StepToleranceRatio = 23,

    /// <summary><see cref="Settings.StepSettleMicroseconds"/>.</summary>
    StepSettleMicroseconds = 24,

    /// <summary><see cref="Settings.ZeroAmps"/>.</summary>
    ZeroAmps = 25,

    /// <summary><see cref="Settings.SpeedSensorFitted"/>.</summary>
    SpeedSensorFitted = 26,

    /// <summary><see cref="Settings.SpeedLoss"/>.</summary>
    SpeedLoss = 27,

    /// <summary><see cref="Settings.SpeedLossMicroseconds"/>.</summary>
    SpeedLossMicroseconds = 28,

    /// <summary><see cref="Settings.ResistiveConfirmMicroseconds"/>.</summary>
    ResistiveConfirmMicroseconds = 29,

    /// <summary><see cref="Settings.StandstillRadPerSec"/>.</summary>
    StandstillRadPerSec = 30,

    /// <summary><see cref="Settings.SpinningStart"/>.</summary>
    SpinningStart = 31,

    /// <summary><see cref="Settings.FieldContactorFitted"/>.</summary>
    FieldContactorFitted = 32,

    /// <summary><see cref="Settings.FieldContactFitted"/>.</summary>
    FieldContactFitted = 33,

    /// <summary><see cref="Settings.FieldSensorFitted"/>.</summary>
    FieldSensorFitted = 34,

    /// <summary><see cref="Settings.MinimumFieldAmps"/>.</summary>
    MinimumFieldAmps = 35,

    /// <summary><see cref="Settings.FieldBuildMicroseconds"/>.</summary>
    FieldBuildMicroseconds = 36,

    /// <summary><see cref="Settings.MaximumFieldMicroseconds"/>.</summary>
    MaximumFieldMicroseconds = 37,

    /// <summary><see cref="Settings.TripConfirmMicroseconds"/>.</summary>
    TripConfirmMicroseconds = 38,

    /// <summary><see cref="Settings.SupplyLowVolts"/>.</summary>
    SupplyLowVolts = 39,

    /// <summary><see cref="Settings.NominalSupplyVolts"/>.</summary>
    NominalSupplyVolts = 40,

    /// <summary><see cref="Settings.DipAction"/>.</summary>
    DipAction = 41,

    /// <summary><see cref="Settings.DipMicroseconds"/>.</summary>
    DipMicroseconds = 42,

    /// <summary><see cref="Settings.SupplyHighVolts"/>.</summary>
    SupplyHighVolts = 43,

    /// <summary><see cref="Settings.SupplyHighMicroseconds"/>.</summary>
    SupplyHighMicroseconds = 44,

    /// <summary><see cref="Settings.OverloadAmps"/>.</summary>
    OverloadAmps = 45,

    /// <summary><see cref="Settings.OverloadSeconds"/>.</summary>
    OverloadSeconds = 46,

    /// <summary><see cref="Settings.OverloadResetRatio"/>.</summary>
    OverloadResetRatio = 47,

    /// <summary><see cref="Settings.ResistorJoules"/>.</summary>
    ResistorJoules = 48,

    /// <summary><see cref="Settings.ResistorSeconds"/>.</summary>
    ResistorSeconds = 49,

    /// <summary><see cref="Settings.ResistorStartRatio"/>.</summary>
    ResistorStartRatio = 50,

    /// <summary><see cref="Settings.ResistorSensorFitted"/>.</summary>
    ResistorSensorFitted = 51,

    /// <summary><see cref="Settings.ResistorCelsius"/>.</summary>
    ResistorCelsius = 52,

    /// <summary><see cref="Settings.StartsPerHour"/>.</summary>
    StartsPerHour = 53,

    /// <summary><see cref="Settings.StallAmps"/>.</summary>
    StallAmps = 54,

    /// <summary><see cref="Settings.StallMicroseconds"/>.</summary>
    StallMicroseconds = 55,

    /// <summary><see cref="Settings.MaximumStartMicroseconds"/>.</summary>
    MaximumStartMicroseconds = 56,

    /// <summary><see cref="Settings.OverspeedRadPerSec"/>.</summary>
    OverspeedRadPerSec = 57,

    /// <summary><see cref="Settings.ReverseRadPerSec"/>.</summary>
    ReverseRadPerSec = 58,

    /// <summary><see cref="Settings.DisagreementVolts"/>.</summary>
    DisagreementVolts = 59,

    /// <summary><see cref="Settings.DisagreementMicroseconds"/>.</summary>
    DisagreementMicroseconds = 60,

    /// <summary><see cref="Settings.MaximumTickMicroseconds"/>.</summary>
    MaximumTickMicroseconds = 61,

    /// <summary><see cref="Settings.RequiredPermissives"/>.</summary>
    RequiredPermissives = 62,

    /// <summary><see cref="Settings.BrakeFitted"/>.</summary>
    BrakeFitted = 63,

    /// <summary><see cref="Settings.BrakeContactFitted"/>.</summary>
    BrakeContactFitted = 64,

    /// <summary><see cref="Settings.BrakeOhms"/>.</summary>
    BrakeOhms = 65,

    /// <summary><see cref="Settings.BrakeReleaseRadPerSec"/>.</summary>
    BrakeReleaseRadPerSec = 66,

    /// <summary><see cref="Settings.BrakeDelayMicroseconds"/>.</summary>
    BrakeDelayMicroseconds = 67,

    /// <summary><see cref="Settings.MaximumBrakeMicroseconds"/>.</summary>
    MaximumBrakeMicroseconds = 68,
}
