using System;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>What must trip.</summary>
internal sealed partial class InvariantChecker
{
    private const double LowestCelsius = -100;
    private const double HighestCelsius = 2000;

    private readonly Held _brakeWrong = new();
    private readonly Held _fieldWrong = new();
    private readonly Held _speedUnknown = new();
    private readonly Held _tooFast = new();
    private readonly Held _backwards = new();
    private readonly Held _stalled = new();
    private readonly Held _weakField = new();
    private readonly Held _lowSupply = new();
    private readonly Held _highSupply = new();
    private readonly Held _unpermitted = new();
    private readonly Held _openCurrent = new();
    private long _lineWrongMicroseconds;
    private long _stagesWrongMicroseconds;
    private long _inPhaseMicroseconds;
    private bool _hasTicked;

    private string? Believed(Readings readings, Outputs outputs)
    {
        if (outputs.TrippedLamp) return null;
        if (readings.EmergencyStop) return "emergency stop trips";
        if (!AreBelievable(readings)) return "a bad reading trips";
        if (!(Magnitude(readings.ArmatureAmps) <= _settings.InstantTripAmps)) return "overcurrent trips";
        if (_settings.ResistorSensorFitted && !(readings.ResistorCelsius <= _settings.ResistorCelsius)) return "a hot resistor trips";
        return null;
    }

    private string? Contacts(long elapsed, Readings readings, Outputs outputs)
    {
        long limit = _settings.ContactMicroseconds;
        bool isAllOpen = !readings.LineClosed && readings.StagesClosed == 0 && !readings.BrakeClosed && !_lineWas && !_brakeWas;
        bool isSeen = _settings.ZeroAmps > 0 && _settings.LineContactFitted && _settings.StageContactsFitted && _settings.BrakeContactFitted;
        bool flows = !(Magnitude(readings.ArmatureAmps) <= _settings.ZeroAmps);
        _lineWrongMicroseconds = !_settings.LineContactFitted || readings.LineClosed == _lineWas ? 0 : Math.Min(_lineWrongMicroseconds + elapsed, limit);
        _stagesWrongMicroseconds = !_settings.StageContactsFitted || readings.StagesClosed == _stagesWere ? 0 : Math.Min(_stagesWrongMicroseconds + elapsed, limit);
        bool isBrakeWrong = _brakeWrong.Lasts(_settings.BrakeFitted && _settings.BrakeContactFitted && readings.BrakeClosed != _brakeWas, elapsed, limit);
        bool isFieldWrong = _fieldWrong.Lasts(_settings.FieldContactFitted && readings.FieldClosed != _fieldWas, elapsed, limit);
        bool isCurrentWrong = _openCurrent.Lasts(isSeen && isAllOpen && flows, elapsed, limit);
        if (outputs.TrippedLamp) return null;
        if (_lineWrongMicroseconds >= limit) return "a wrong line contact trips";
        if (_stagesWrongMicroseconds >= limit) return "a wrong stage contact trips";
        if (isBrakeWrong) return "a wrong brake contact trips";
        if (isFieldWrong) return "a wrong field contact trips";
        if (isCurrentWrong) return "a current while everything is open trips";
        return null;
    }

    private string? Limits(long elapsed, Readings readings, Outputs outputs)
    {
        bool isKnown = _settings.SpeedSensorFitted && readings.SpeedValid;
        bool isClosed = _settings.LineContactFitted && readings.LineClosed;
        double speed = readings.SpeedRadPerSec;
        bool isStanding = isKnown && isClosed && Magnitude(speed) <= _settings.StandstillRadPerSec;
        bool isWeak = _lineWas && _settings.MinimumFieldAmps > 0 && !(Magnitude(readings.FieldAmps) >= _settings.MinimumFieldAmps);
        long confirm = _settings.TripConfirmMicroseconds;
        bool isTooFast = _tooFast.Lasts(isKnown && Magnitude(speed) > _settings.OverspeedRadPerSec, elapsed, confirm);
        bool isBackwards = _backwards.Lasts(isKnown && isClosed && speed < -_settings.ReverseRadPerSec, elapsed, confirm);
        bool isStalled = _stalled.Lasts(isStanding && Magnitude(readings.ArmatureAmps) > _settings.StallAmps, elapsed, _settings.StallMicroseconds);
        bool isFieldLost = _weakField.Lasts(isWeak, elapsed, confirm);
        bool isLow = _lowSupply.Lasts(_lineWas && IsLow(readings), elapsed, _settings.DipMicroseconds);
        bool isHigh = _highSupply.Lasts(_lineWas && readings.SupplyVolts > _settings.SupplyHighVolts, elapsed, _settings.SupplyHighMicroseconds);
        if (outputs.TrippedLamp) return null;
        if (isTooFast) return "overspeed trips";
        if (isBackwards) return "turning backwards under the line trips";
        if (isStalled) return "a stall trips";
        if (isFieldLost) return "a lost field trips";
        if (isLow) return "a long dip trips";
        if (isHigh) return "a high supply trips";
        return null;
    }

    private string? Times(long elapsed, Readings readings, Outputs outputs, Phase phase)
    {
        bool isMissing = (readings.Permissives & _settings.RequiredPermissives) != _settings.RequiredPermissives;
        bool isForbidden = _unpermitted.Lasts(IsLive(_phaseWas) && isMissing, elapsed, _settings.TripConfirmMicroseconds);
        bool isUnknown = _speedUnknown.Lasts(_settings.SpeedSensorFitted && !readings.SpeedValid && !MayStand, elapsed, _settings.SpeedLossMicroseconds);
        bool isLate = _hasTicked && elapsed > _settings.MaximumTickMicroseconds && _settings.MaximumTickMicroseconds < Settings.LongestMicroseconds
            && (_lineWas || _stagesWere != 0 || _brakeWas || _fieldWas);
        _hasTicked = true;
        if (outputs.TrippedLamp) return null;
        if (isForbidden) return "a lost permissive trips";
        if (isUnknown && !GoesOnWithoutSpeed) return "a lost speed trips";
        if (isLate) return "a late tick trips";
        if (phase == _phaseWas && _inPhaseMicroseconds >= LongestIn(phase)) return "no phase lasts for ever";
        return null;
    }

    private bool IsLow(Readings readings) => _settings.SupplyLowVolts > 0 && readings.SupplyVolts < _settings.SupplyLowVolts;

    // A pick-up shows nothing while the shaft stands; where time is left for its first pulse, it runs while the shaft is driven.
    private bool MayStand => _settings.SpeedLossMicroseconds > 0 && _phaseWas is not (Phase.Accelerating or Phase.Running or Phase.Braking);

    // Nothing is known of a shaft onto which the line has yet to close.
    private bool GoesOnWithoutSpeed =>
        (_phaseWas == Phase.Running && _settings.SpeedLoss != SpeedLossAction.Trip)
        || (_phaseWas == Phase.Accelerating && _contacts.LineIn && _settings.SpeedLoss == SpeedLossAction.FinishStart);

    private long LongestIn(Phase phase) => phase switch
    {
        Phase.FieldBuilding => _settings.MaximumFieldMicroseconds,
        Phase.Accelerating => _settings.MaximumStartMicroseconds,
        Phase.Braking => _settings.MaximumBrakeMicroseconds,
        _ => long.MaxValue,
    };

    private bool AreBelievable(Readings readings)
    {
        bool speedCounts = _settings.SpeedSensorFitted && readings.SpeedValid;
        bool fieldCounts = _settings.FieldSensorFitted;
        bool heatCounts = _settings.ResistorSensorFitted;
        return !readings.Stale && readings.SupplyVolts <= _settings.HighestSupplyVolts && readings.SupplyVolts >= -0.1000001 * _settings.HighestSupplyVolts
            && Magnitude(readings.ArmatureAmps) <= Settings.Largest
            && (!speedCounts || Magnitude(readings.SpeedRadPerSec) <= _settings.HighestSpeedRadPerSec)
            && (!fieldCounts || Magnitude(readings.FieldAmps) <= Settings.Largest)
            && (!heatCounts || (readings.ResistorCelsius >= LowestCelsius && readings.ResistorCelsius <= HighestCelsius));
    }

    private static double Magnitude(double number) => number < 0 ? -number : number;
}
