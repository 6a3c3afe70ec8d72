namespace StarterCtl.Core;

/// <summary>The field is switched on and must stand before the line may close.</summary>
public sealed class FieldBuildingPhase
{
    private readonly Settings _settings;
    private readonly Sequence _sequence;
    private readonly Explanation _why;

    /// <summary>Builds the phase.</summary>
    public FieldBuildingPhase(Settings settings, Sequence sequence, Explanation why)
    {
        _settings = settings;
        _sequence = sequence;
        _why = why;
        IsNeeded = settings.FieldContactorFitted || settings.MinimumFieldAmps > 0f || settings.FieldBuildMicroseconds > 0;
    }

    /// <summary>True if the settings ask for the phase.</summary>
    public readonly bool IsNeeded;

    /// <summary>Waits for the field.</summary>
    /// <returns>True once it has stood for its time.</returns>
    public bool Step(int elapsedMicroseconds, Readings readings)
    {
        _sequence.WantField = _settings.FieldContactorFitted;
        _sequence.InPhaseMicroseconds = Elapsed.Add(_sequence.InPhaseMicroseconds, elapsedMicroseconds);
        int microsecondsLeft = _settings.MaximumFieldMicroseconds - _sequence.InPhaseMicroseconds;

        bool held = _sequence.ConfirmedMicroseconds >= 0;
        _sequence.ConfirmedMicroseconds =
            !Stands(readings) ? -1 : held ? Elapsed.Add(_sequence.ConfirmedMicroseconds, elapsedMicroseconds) : 0;
        if (_sequence.ConfirmedMicroseconds >= _settings.FieldBuildMicroseconds) return true;

        if (microsecondsLeft <= 0) _sequence.Trip(FaultId.NoField, readings.FieldAmps, _settings.MinimumFieldAmps);
        else if (_sequence.ConfirmedMicroseconds >= 0) _why.Set(Reason.FieldBuilding, readings.FieldAmps, _settings.MinimumFieldAmps, _settings.FieldBuildMicroseconds - _sequence.ConfirmedMicroseconds);
        else _why.Set(Reason.FieldBelowMinimum, readings.FieldAmps, _settings.MinimumFieldAmps, microsecondsLeft);
        return false;
    }

    /// <summary>Trips if a field that stood is gone before the line is commanded: stages may have been preset meanwhile.</summary>
    /// <returns>True if it tripped.</returns>
    public bool TripIfLost(Readings readings)
    {
        if (!IsNeeded || Stands(readings)) return false;
        _sequence.Trip(FaultId.NoField, readings.FieldAmps, _settings.MinimumFieldAmps);
        return true;
    }

    private bool Stands(Readings readings)
    {
        float fieldAmps = Magnitude.Of(readings.FieldAmps);
        bool isStrong = _settings.MinimumFieldAmps <= 0f || fieldAmps >= _settings.MinimumFieldAmps;
        return isStrong && (!_settings.FieldContactFitted || readings.FieldClosed);
    }
}
