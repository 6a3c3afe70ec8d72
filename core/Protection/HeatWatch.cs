namespace StarterCtl.Core;

/// <summary>Heat of motor and starting resistor, both with a memory that no reset clears.</summary>
public sealed class HeatWatch
{
    /// <summary>Current over the setting at which the image just reaches its limit: between 1.05, which must never trip, and 1.2, which must.</summary>
    public const float UltimateRatio = 1.12f;

    private readonly Settings _settings;
    private readonly float _perUltimateSquareAmps;
    private readonly float _perWatt;

    /// <summary>Image of the motor; 1 trips.</summary>
    public readonly ThermalImage Motor;

    /// <summary>Image of the starting resistor; 1 trips.</summary>
    public readonly ThermalImage Resistor;

    /// <summary>True from the motor's trip until it has cooled down to the reset level.</summary>
    public bool IsMotorTripped;

    /// <summary>True from the resistor's trip until it has cooled down to where a start is permitted.</summary>
    public bool IsResistorTripped;

    /// <summary>Builds cold images on checked settings.</summary>
    public HeatWatch(Settings settings)
    {
        _settings = settings;
        Motor = new ThermalImage(settings.OverloadSeconds);
        Resistor = new ThermalImage(settings.ResistorSeconds);
        float ultimateSquareAmps = UltimateRatio * UltimateRatio * settings.OverloadAmps * settings.OverloadAmps;
        IsMotorWatched = ultimateSquareAmps > 0f;
        IsResistorWatched = settings.ResistorJoules > 0f;
        if (IsMotorWatched) _perUltimateSquareAmps = 1f / ultimateSquareAmps;
        if (IsResistorWatched) _perWatt = settings.ResistorSeconds / settings.ResistorJoules;
    }

    /// <summary>True if the motor's heat is watched.</summary>
    public readonly bool IsMotorWatched;

    /// <summary>True if the resistor's heat is watched.</summary>
    public readonly bool IsResistorWatched;

    /// <summary>True while the motor is too hot to be started.</summary>
    public bool IsMotorTooHot => IsMotorWatched && Motor.Level >= _settings.OverloadResetRatio;

    /// <summary>True while the resistor is too hot to bear a start.</summary>
    public bool IsResistorTooHot => IsResistorWatched && Resistor.Level > _settings.ResistorStartRatio;

    /// <summary>Takes this tick's current over.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick; a current that is no number heats nothing and trips elsewhere.</param>
    /// <param name="stageIndex">Index of the stage in effect, 0 to the stage count.</param>
    /// <param name="lineClosed">True while the line counts as closed.</param>
    public void Update(int elapsedMicroseconds, Readings readings, int stageIndex, bool lineClosed)
    {
        float amps = readings.ArmatureAmps;
        float squareAmps = amps >= -Settings.Largest && amps <= Settings.Largest ? amps * amps : 0f;
        if (IsMotorWatched)
        {
            Motor.Advance(elapsedMicroseconds, squareAmps * _perUltimateSquareAmps);
            IsMotorTripped = Motor.Level >= (IsMotorTripped ? _settings.OverloadResetRatio : 1f);
        }

        if (IsResistorWatched)
        {
            float ohms = lineClosed ? _settings.StageOhms[stageIndex] - _settings.StageOhms[_settings.StageCount] : 0f;
            Resistor.Advance(elapsedMicroseconds, squareAmps * ohms * _perWatt);
            IsResistorTripped = Resistor.Level >= (IsResistorTripped ? _settings.ResistorStartRatio : 1f);
        }
    }
}
