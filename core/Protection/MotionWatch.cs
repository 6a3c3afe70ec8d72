namespace StarterCtl.Core;

/// <summary>What speed and current together show: lost signal, overspeed, reverse rotation, stall, estimates that disagree.</summary>
public sealed class MotionWatch
{
    private readonly Settings _settings;
    private readonly Persistence _unknown = new Persistence();
    private readonly Persistence _fast = new Persistence();
    private readonly Persistence _backwards = new Persistence();
    private readonly Persistence _standing = new Persistence();
    private readonly Persistence _apart = new Persistence();

    /// <summary>True if the settings ask for anything beyond the speed's being known.</summary>
    public readonly bool WatchesLimits;

    /// <summary>True once the speed has been unknown for longer than it may, and the phase does not go on without it.</summary>
    public bool IsSpeedLost;

    /// <summary>True once the shaft has turned too fast for the confirm time.</summary>
    public bool IsTooFast;

    /// <summary>True once the shaft has turned backwards under the line for the confirm time.</summary>
    public bool IsBackwards;

    /// <summary>True once current has flowed into a standing shaft for the stall time.</summary>
    public bool IsStalled;

    /// <summary>True once the two back-EMFs have differed for their time.</summary>
    public bool IsApart;

    /// <summary>Difference of the two back-EMFs, V.</summary>
    public float ApartVolts;

    /// <summary>Builds the watch on checked settings.</summary>
    public MotionWatch(Settings settings)
    {
        _settings = settings;
        WatchesLimits = settings.OverspeedRadPerSec < Settings.Largest || settings.ReverseRadPerSec < Settings.Largest
            || settings.StallAmps < Settings.Largest || settings.DisagreementVolts < Settings.Largest;
    }

    /// <summary>Time left until an unknown speed counts as lost, microseconds.</summary>
    public int SpeedMicrosecondsLeft => _unknown.MicrosecondsLeft(_settings.SpeedLossMicroseconds);

    /// <summary>False while the speed is and was known and nothing else is asked for.</summary>
    public bool IsToLook(Readings readings) => WatchesLimits || !readings.SpeedValid || _unknown.IsHeld;

    /// <summary>Looks at this tick's speed and current.</summary>
    public void Update(int elapsedMicroseconds, Readings readings, Estimate estimate, bool lineClosed, Phase phase)
    {
        bool isUnknown = _settings.SpeedSensorFitted && !readings.SpeedValid && !MayStand(phase);
        IsSpeedLost = _unknown.Lasts(isUnknown, elapsedMicroseconds, _settings.SpeedLossMicroseconds) && !GoesOnWithoutSpeed(phase, lineClosed);
        if (WatchesLimits) WatchLimits(elapsedMicroseconds, readings, estimate, lineClosed);
    }

    // A pick-up gives no pulse while the shaft stands. Where the settings leave time for the first one, it runs while the shaft is driven.
    private bool MayStand(Phase phase) =>
        _settings.SpeedLossMicroseconds > 0 && phase != Phase.Accelerating && phase != Phase.Running && phase != Phase.Braking;

    // A line that is not in yet must not close onto a shaft of which nothing is known.
    private bool GoesOnWithoutSpeed(Phase phase, bool lineClosed)
    {
        if (phase == Phase.Running) return _settings.SpeedLoss != SpeedLossAction.Trip;
        return phase == Phase.Accelerating && lineClosed && _settings.SpeedLoss == SpeedLossAction.FinishStart;
    }

    private void WatchLimits(int elapsedMicroseconds, Readings readings, Estimate estimate, bool lineClosed)
    {
        float speed = readings.SpeedRadPerSec;
        float magnitude = Magnitude.Of(speed);
        bool isKnown = estimate.SpeedKnown;
        int confirm = _settings.TripConfirmMicroseconds;
        bool isDriven = isKnown && lineClosed;
        IsTooFast = _fast.Lasts(isKnown && magnitude > _settings.OverspeedRadPerSec, elapsedMicroseconds, confirm);
        IsBackwards = _backwards.Lasts(isDriven && speed < -_settings.ReverseRadPerSec, elapsedMicroseconds, confirm);

        bool isStanding = isDriven && magnitude <= _settings.StandstillRadPerSec;
        bool isLoaded = isStanding && Magnitude.Of(readings.ArmatureAmps) > _settings.StallAmps;
        IsStalled = _standing.Lasts(isLoaded, elapsedMicroseconds, _settings.StallMicroseconds);

        ApartVolts = Magnitude.Of(estimate.BackEmfVolts - estimate.ResistiveBackEmfVolts);
        IsApart = false;
        // While the current moves the two cannot be compared: the time stands still.
        if (lineClosed && !estimate.ResistiveValid) return;
        bool isApart = isDriven && ApartVolts > _settings.DisagreementVolts;
        IsApart = _apart.Lasts(isApart, elapsedMicroseconds, _settings.DisagreementMicroseconds);
    }
}
