// Written by: starterctl export settings bench-rig.toml
// Do not edit: the board compares the values with the checksum. Change the case and write this file anew.
using StarterCtl.Core;

namespace StarterCtl.Board;

/// <summary>Bench rig, 48 V, 500 W</summary>
public static class CaseSettings
{
    /// <summary>Beginning of the SHA-256 of the case file, f9ccc9e79a6425c275b385b52076456cd068b03c62f78887b260287bdae0869e.</summary>
    public const int CaseHash = unchecked((int)0xf9ccc9e7);

    /// <summary>Checksum of the settings.</summary>
    public const int Checksum = unchecked((int)0x0B84BB81);

    /// <summary>Version of the table of settings.</summary>
    public const int Version = 2;

    /// <summary>Time between two decisions of the controller, microseconds.</summary>
    public const int PeriodMicroseconds = 1000;

    /// <summary>The settings of the case.</summary>
    public static Settings Build()
    {
        Settings settings = new Settings();
        settings.StageCount = 2;
        settings.StageOhms[0] = 1.46875f; // ohm
        settings.StageOhms[1] = 0.64128774f; // ohm
        settings.StageOhms[2] = 0.28f; // ohm
        settings.VoltsLeft[0] = 20.521208f; // V
        settings.VoltsLeft[1] = 8.96f; // V
        settings.MachineConstant = 0.138f; // V s/rad
        settings.BrushDropVolts = 1f; // V
        settings.LockoutAmps = 1000000f; // A
        settings.InstantTripAmps = 48f; // A
        settings.HighestSupplyVolts = 96f; // V
        settings.HighestSpeedRadPerSec = 695.65216f; // rad/s
        settings.SteadyAmpsPerSec = 1371.4286f; // A/s
        settings.ConfirmMicroseconds = 3000; // us
        settings.MinimumDwellMicroseconds = 50000; // us
        settings.MaximumStageMicroseconds = 5000000; // us
        settings.ContactMicroseconds = 100000; // us
        settings.FluxSource = FluxSource.Constant;
        settings.CurvePoints = 0;
        settings.ReactionRatio = 0f;
        settings.PeakAmps = 32f; // A
        settings.LineContactFitted = true;
        settings.StageContactsFitted = true;
        settings.StepToleranceRatio = 0f;
        settings.StepSettleMicroseconds = 20000; // us
        settings.ZeroAmps = 0f; // A
        settings.SpeedSensorFitted = true;
        settings.SpeedLoss = SpeedLossAction.Trip;
        settings.SpeedLossMicroseconds = 0; // us
        settings.ResistiveConfirmMicroseconds = 500000; // us
        settings.StandstillRadPerSec = 3.4782608f; // rad/s
        settings.SpinningStart = true;
        settings.FieldContactorFitted = false;
        settings.FieldContactFitted = false;
        settings.FieldSensorFitted = false;
        settings.MinimumFieldAmps = 0f; // A
        settings.FieldBuildMicroseconds = 0; // us
        settings.MaximumFieldMicroseconds = 5000000; // us
        settings.TripConfirmMicroseconds = 0; // us
        settings.SupplyLowVolts = 0f; // V
        settings.NominalSupplyVolts = 48f; // V
        settings.DipAction = DipAction.LeaveStages;
        settings.DipMicroseconds = 0; // us
        settings.SupplyHighVolts = 1000000f; // V
        settings.SupplyHighMicroseconds = 0; // us
        settings.OverloadAmps = 0f; // A
        settings.OverloadSeconds = 290f; // s
        settings.OverloadResetRatio = 0.8f;
        settings.ResistorJoules = 0f; // J
        settings.ResistorSeconds = 600f; // s
        settings.ResistorStartRatio = 0.5f;
        settings.ResistorSensorFitted = false;
        settings.ResistorCelsius = 350f; // degC
        settings.StartsPerHour = 0;
        settings.StallAmps = 1000000f; // A
        settings.StallMicroseconds = 1000000; // us
        settings.MaximumStartMicroseconds = 1000000000; // us
        settings.OverspeedRadPerSec = 1000000f; // rad/s
        settings.ReverseRadPerSec = 1000000f; // rad/s
        settings.DisagreementVolts = 1000000f; // V
        settings.DisagreementMicroseconds = 500000; // us
        settings.MaximumTickMicroseconds = 1000000000; // us
        settings.RequiredPermissives = 0;
        settings.BrakeFitted = false;
        settings.BrakeContactFitted = true;
        settings.BrakeOhms = 0f; // ohm
        settings.BrakeReleaseRadPerSec = 0f; // rad/s
        settings.BrakeDelayMicroseconds = 0; // us
        settings.MaximumBrakeMicroseconds = 10000000; // us
        return settings;
    }
}
