using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// The lock at power-up: the controller begins only once the board runs it as the desk does, settings and wiring are right, and
/// everything around has been off and sound without a break for <see cref="ProvingMicroseconds"/>. Opens once and for all.
/// </summary>
/// <remarks>
/// No current is looked for up to the settings' zero current, where they have one. Whether the shaft may turn is theirs too: where a
/// turning shaft may be started it may be there at power-up.
/// </remarks>
public sealed class PowerUpCheck
{
    /// <summary>Time for which everything must be in order, microseconds.</summary>
    public const int ProvingMicroseconds = 500000;

    private const float SecondsPerMicrosecond = 0.000001f;

    private readonly Settings _settings;
    private readonly OutputPanel _outputs;
    private readonly Persistence _sound = new Persistence();
    private readonly bool _isRefused;

    /// <summary>Why it is locked; <see cref="PowerUpProblem.None"/> once it is open.</summary>
    public PowerUpProblem Problem = PowerUpProblem.Proving;

    /// <summary>What was found, in the problem's unit.</summary>
    public float Value;

    /// <summary>Does what needs no readings. Allocates and takes a while: for power-up, not for the loop.</summary>
    /// <param name="settings">Settings that the controller will run on.</param>
    /// <param name="checksum">The checksum that was kept with them.</param>
    /// <param name="wiring">The check of the wiring with these settings.</param>
    /// <param name="outputs">The board's outputs.</param>
    public PowerUpCheck(Settings settings, int checksum, BoardCheck wiring, OutputPanel outputs)
        : this(settings, checksum, wiring, outputs, BootCheck.Run())
    {
    }

    /// <summary>The same with the number that the boot check's course has come to.</summary>
    public PowerUpCheck(Settings settings, int checksum, BoardCheck wiring, OutputPanel outputs, int bootNumber)
    {
        _settings = settings;
        _outputs = outputs;
        SettingId unsound = settings.FirstProblem();
        int found = SettingsChecksum.Of(settings);
        if (bootNumber != BootCheck.Expected) Find(PowerUpProblem.BootCheckFailed, bootNumber);
        else if (unsound != SettingId.None) Find(PowerUpProblem.SettingsUnsound, (int)unsound);
        else if (found != checksum) Find(PowerUpProblem.ChecksumWrong, found);
        else if (wiring.Problem != BoardProblem.None) Find(PowerUpProblem.WiringRefused, (int)wiring.Problem);
        _isRefused = Problem != PowerUpProblem.Proving;
    }

    /// <summary>True once the controller may run.</summary>
    public bool IsOpen => Problem == PowerUpProblem.None;

    /// <summary>Looks at the readings while it is locked.</summary>
    /// <param name="elapsedMicroseconds">Time since the last period.</param>
    /// <param name="readings">Readings of this one.</param>
    public void Update(int elapsedMicroseconds, Readings readings)
    {
        if (IsOpen || _isRefused) return;
        Problem = PowerUpProblem.None;
        Value = 0f;
        if (readings.Stale) Find(PowerUpProblem.NotRead, 0f);
        else Look(readings);

        bool isProven = _sound.Lasts(Problem == PowerUpProblem.None, Elapsed.Clamp(elapsedMicroseconds), ProvingMicroseconds);
        if (Problem == PowerUpProblem.None && !isProven) Find(PowerUpProblem.Proving, _sound.MicrosecondsLeft(ProvingMicroseconds) * SecondsPerMicrosecond);
    }

    private void Look(Readings readings)
    {
        int coil = _outputs.FirstCoilOn();
        Channel channel = FirstUnusable(readings);
        if (coil >= 0) Find(PowerUpProblem.CoilOn, coil);
        else if (channel != Channel.None) Find(PowerUpProblem.ReadingUnusable, (int)channel);
        else if (readings.LineClosed) Find(PowerUpProblem.LineNotOpen, 0f);
        else if (readings.StagesClosed != 0) Find(PowerUpProblem.StageNotOpen, FirstStage(readings.StagesClosed));
        else if (readings.BrakeClosed) Find(PowerUpProblem.BrakeNotOpen, 0f);
        else if (readings.FieldClosed) Find(PowerUpProblem.FieldNotOpen, 0f);
        else LookAtShaft(readings);
    }

    private void LookAtShaft(Readings readings)
    {
        bool flows = _settings.ZeroAmps > 0f && !(Magnitude.Of(readings.ArmatureAmps) <= _settings.ZeroAmps);
        bool turns = !_settings.SpinningStart && !(Magnitude.Of(readings.SpeedRadPerSec) <= _settings.StandstillRadPerSec);
        if (flows) Find(PowerUpProblem.CurrentFlows, readings.ArmatureAmps);
        else if (_settings.SpeedSensorFitted && !readings.SpeedValid) Find(PowerUpProblem.SpeedUnknown, 0f);
        else if (_settings.SpeedSensorFitted && turns) Find(PowerUpProblem.ShaftTurns, readings.SpeedRadPerSec);
    }

    private Channel FirstUnusable(Readings readings)
    {
        if (float.IsNaN(readings.SupplyVolts)) return Channel.Supply;
        if (float.IsNaN(readings.ArmatureAmps)) return Channel.ArmatureCurrent;
        if (_settings.FieldSensorFitted && float.IsNaN(readings.FieldAmps)) return Channel.FieldCurrent;
        return _settings.ResistorSensorFitted && float.IsNaN(readings.ResistorCelsius) ? Channel.ResistorTemperature : Channel.None;
    }

    private static int FirstStage(int stages)
    {
        int stage = 1;
        while ((stages & 1) == 0)
        {
            stages >>= 1;
            stage++;
        }

        return stage;
    }

    private void Find(PowerUpProblem problem, float value)
    {
        Problem = problem;
        Value = value;
    }
}
