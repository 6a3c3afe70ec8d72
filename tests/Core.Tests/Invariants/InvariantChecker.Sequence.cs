using System;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>What must hold for starts, for the field and for the brake.</summary>
internal sealed partial class InvariantChecker
{
    private readonly Held _fieldStands = new();
    private readonly Held _lineIsOpen = new();
    private long _fieldCoilMicroseconds;
    private bool _fieldHasStood = true;

    private string? Start(Readings readings, Outputs outputs, Phase phase)
    {
        bool startEdge = readings.StartPressed && !_startWasPressed;
        bool isNew = IsLive(phase) && !IsLive(_phaseWas);
        if (isNew && !(startEdge && _phaseWas == Phase.Ready)) return "start only on a press in ready";
        if (isNew && IsRefused(readings)) return "no start against a refusal";
        if (_trippedWas && !outputs.TrippedLamp && !(readings.ResetPressed && !_resetWasPressed)) return "a trip stays until a reset";
        if (_trippedWas && !outputs.TrippedLamp && readings.StartPressed) return "no reset while start is held";
        return null;
    }

    // What the operator's page says against a start, as far as readings show it on one tick.
    private bool IsRefused(Readings readings)
    {
        bool isKnown = _settings.SpeedSensorFitted && readings.SpeedValid;
        bool isUnknown = _settings.SpeedSensorFitted && !readings.SpeedValid && _settings.SpeedLossMicroseconds == 0;
        bool turns = isKnown && (readings.SpeedRadPerSec < -_settings.StandstillRadPerSec
            || (!_settings.SpinningStart && readings.SpeedRadPerSec > _settings.StandstillRadPerSec));
        bool isClosed = !_contacts.LineFoundOpen || (_settings.StageContactsFitted && readings.StagesClosed != 0)
            || (_settings.BrakeFitted && _settings.BrakeContactFitted && readings.BrakeClosed);
        bool isOff = IsLow(readings) || readings.SupplyVolts > _settings.SupplyHighVolts;
        bool isForbidden = (readings.Permissives & _settings.RequiredPermissives) != _settings.RequiredPermissives;
        return readings.StopPressed || readings.EmergencyStop || isUnknown || turns || isClosed || isOff || isForbidden;
    }

    private string? Field(Readings readings, Outputs outputs, Phase phase)
    {
        bool isOver = phase is Phase.Ready or Phase.Tripped or Phase.NotSetUp;
        if (outputs.CloseField && !_settings.FieldContactorFitted) return "no coil that is not fitted";
        if (outputs.CloseField && isOver && !_lineWas && _contacts.LineOpen) return "field goes when the line is proven open";
        if (outputs.CloseField && !_fieldWas && !IsLive(phase)) return "field comes with a start";
        bool isWeak = _settings.MinimumFieldAmps > 0 && !(Magnitude(readings.FieldAmps) >= _settings.MinimumFieldAmps);
        bool isMissing = isWeak || (_settings.FieldContactFitted && !readings.FieldClosed);
        if (outputs.CloseLine && !_lineWas && (isMissing || !_fieldHasStood)) return "line closes only on a field that stands";
        return null;
    }

    // With something that shows the field, from the tick that shows it; without, from when its coil went on.
    private void TimeField(long elapsed, Readings readings)
    {
        _fieldHasStood = true;
        if (_settings.FieldBuildMicroseconds == 0) return;
        bool isShown = _settings.MinimumFieldAmps > 0 || _settings.FieldContactFitted;
        bool isWeak = _settings.MinimumFieldAmps > 0 && !(Magnitude(readings.FieldAmps) >= _settings.MinimumFieldAmps);
        bool stands = !isWeak && (!_settings.FieldContactFitted || readings.FieldClosed);
        _fieldCoilMicroseconds = !isShown && _fieldWas ? Math.Min(_fieldCoilMicroseconds + elapsed, _settings.FieldBuildMicroseconds) : 0;
        _fieldHasStood = isShown
            ? _fieldStands.Lasts(stands, elapsed, _settings.FieldBuildMicroseconds)
            : !_settings.FieldContactorFitted || _fieldCoilMicroseconds >= _settings.FieldBuildMicroseconds;
    }

    private string? Brake(long elapsed, Readings readings, Outputs outputs, Phase phase)
    {
        bool hasDelayed = !_settings.BrakeFitted || _lineIsOpen.Lasts(!_lineWas && _contacts.LineFoundOpen, elapsed, _settings.BrakeDelayMicroseconds);
        bool isKnown = _settings.SpeedSensorFitted && readings.SpeedValid;
        if (outputs.CloseBrake && !_settings.BrakeFitted) return "no coil that is not fitted";
        if (outputs.CloseBrake && phase != Phase.Braking) return "brake only while braking";
        if (outputs.CloseBrake && isKnown && Magnitude(readings.SpeedRadPerSec) <= _settings.BrakeReleaseRadPerSec) return "brake opens at its release speed";
        if (!outputs.CloseBrake || _brakeWas) return null;
        if (!hasDelayed) return "brake only after its delay";
        double volts = Magnitude(_backEmf.Now(readings)) * (1 - 1e-6) - _settings.BrushDropVolts;
        bool isOver = !isKnown || volts > (double)_settings.PeakAmps * _settings.BrakeOhms;
        if (isOver) return "no brake current above the permitted peak";
        return null;
    }
}
