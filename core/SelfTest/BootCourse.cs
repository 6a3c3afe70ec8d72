namespace StarterCtl.Core;

/// <summary>
/// Inputs of the boot check: a rough machine that obeys its coils, with an operator who starts, stops and resets, and now and
/// then something wrong. Made from whole numbers only, so that every runtime makes the same.
/// </summary>
public sealed class BootCourse
{
    private const int PeriodMicroseconds = 1000;
    private const float NominalVolts = 240f;

    private readonly Settings _settings;
    private int _number = 1;
    private int _stuckTicks;
    private float _speed;

    /// <summary>Builds the course.</summary>
    public BootCourse(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Settings of the course: everything that the controller can do is switched on.</summary>
    public static Settings Settings()
    {
        Settings settings = new Settings();
        settings.StageCount = 3;
        for (int i = 0; i <= 3; i++) settings.StageOhms[i] = i == 0 ? 2f : i == 1 ? 1f : i == 2 ? 0.5f : 0.25f;
        for (int i = 0; i < 3; i++) settings.VoltsLeft[i] = 120f * settings.StageOhms[i + 1];
        settings.MachineConstant = 2f;
        settings.BrushDropVolts = 2f;
        settings.FluxSource = FluxSource.FieldCurrent;
        settings.CurvePoints = 3;
        settings.CurveAmps[1] = 1f;
        settings.CurveAmps[2] = 2f;
        settings.CurveConstants[0] = 0.125f;
        settings.CurveConstants[1] = 1.5f;
        settings.CurveConstants[2] = 2f;
        settings.ReactionRatio = 0.0005f;
        settings.PeakAmps = 120f;
        settings.InstantTripAmps = 400f;
        settings.HighestSupplyVolts = 500f;
        settings.HighestSpeedRadPerSec = 400f;
        settings.ConfirmMicroseconds = 2000;
        settings.MinimumDwellMicroseconds = 5000;
        settings.MaximumStageMicroseconds = 900000;
        settings.ContactMicroseconds = 30000;
        SwitchOn(settings);
        return settings;
    }

    /// <summary>Makes the next inputs from the coils of the last tick.</summary>
    /// <returns>Time since then, microseconds.</returns>
    public int Next(Readings readings, Outputs coils)
    {
        Move(readings, coils);
        if (_stuckTicks > 0) _stuckTicks--;
        else FollowCoils(readings, coils);
        if (Pick(700) == 0) _stuckTicks = 40;
        readings.SupplyVolts = Pick(400) == 0 ? 150f : NominalVolts + Pick(8);
        readings.SpeedValid = Pick(300) != 0;
        readings.Permissives = Pick(900) == 0 ? 0 : 1;
        readings.ResistorCelsius = Pick(1500) == 0 ? 400f : 80f;
        if (Pick(600) == 0) readings.ArmatureAmps = 500f;
        if (Pick(700) == 0) readings.SupplyVolts = 600f;
        if (Pick(500) == 0) readings.StagesClosed = 2;
        if (Pick(500) == 0) readings.LineClosed = !readings.LineClosed;
        readings.StartPressed = Pick(6) == 0;
        readings.ResetPressed = Pick(6) == 0;
        readings.StopPressed = Pick(250) == 0;
        readings.EmergencyStop = Pick(900) == 0;
        return Pick(100) == 0 ? 0 : Pick(200) == 0 ? 50 * PeriodMicroseconds : PeriodMicroseconds;
    }

    private static void FollowCoils(Readings readings, Outputs coils)
    {
        readings.LineClosed = coils.CloseLine;
        readings.StagesClosed = coils.CloseStages;
        readings.BrakeClosed = coils.CloseBrake;
        readings.FieldClosed = coils.CloseField;
    }

    private static void SwitchOn(Settings settings)
    {
        settings.SpeedLoss = SpeedLossAction.FinishStart;
        settings.ResistiveConfirmMicroseconds = 4000;
        settings.StandstillRadPerSec = 1f;
        settings.FieldContactorFitted = true;
        settings.FieldContactFitted = true;
        settings.FieldSensorFitted = true;
        settings.MinimumFieldAmps = 0.5f;
        settings.FieldBuildMicroseconds = 5000;
        settings.ZeroAmps = 2f;
        settings.StepToleranceRatio = 0.5f;
        settings.StepSettleMicroseconds = 2000;
        settings.SupplyLowVolts = 200f;
        settings.NominalSupplyVolts = NominalVolts;
        settings.DipAction = DipAction.PutResistanceBack;
        settings.DipMicroseconds = 20000;
        settings.SupplyHighVolts = 300f;
        settings.OverloadAmps = 60f;
        settings.ResistorJoules = 100000f;
        settings.ResistorSensorFitted = true;
        settings.OverspeedRadPerSec = 150f;
        settings.ReverseRadPerSec = 10f;
        settings.StallAmps = 100f;
        settings.DisagreementVolts = 100f;
        settings.MaximumTickMicroseconds = 100000;
        settings.RequiredPermissives = 1;
        settings.BrakeFitted = true;
        settings.BrakeOhms = 2.5f;
        settings.BrakeReleaseRadPerSec = 5f;
        settings.BrakeDelayMicroseconds = 3000;
    }

    // No model of anything: it only has to come through every phase with currents of the right size.
    private void Move(Readings readings, Outputs coils)
    {
        float backEmfVolts = 1.875f * _speed;
        float volts = coils.CloseLine ? NominalVolts - backEmfVolts : coils.CloseBrake ? -backEmfVolts : 0f;
        float ohms = coils.CloseBrake ? _settings.BrakeOhms : Ohms(coils.CloseStages);
        readings.ArmatureAmps = volts * (1f / ohms);
        readings.FieldAmps = coils.CloseField ? 2f : 0f;
        _speed += readings.ArmatureAmps * 0.0078125f;
        if (!coils.CloseLine) _speed *= 0.9921875f;
        readings.SpeedRadPerSec = _speed;
    }

    private float Ohms(int stages)
    {
        int closed = 0;
        while (closed < _settings.StageCount && (stages & (1 << closed)) != 0) closed++;
        return _settings.StageOhms[closed];
    }

    // A linear congruential generator; its high bits are the good ones.
    private int Pick(int count)
    {
        _number = unchecked(_number * 1664525 + 1013904223);
        return ((_number >> 8) & 0xFFFFFF) % count;
    }
}
