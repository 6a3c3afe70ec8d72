using System;
using System.Numerics;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>
/// Where the contacts are proven to be, from auxiliary contacts, or where none is fitted from how long a coil has been off and
/// from the current.
/// </summary>
internal sealed class SeenContacts
{
    private readonly Settings _settings;
    private readonly BackEmf _backEmf;
    private long _lineOffMicroseconds;
    private long _stagesOffMicroseconds;
    private long _brakeOffMicroseconds;
    private long _lineOnMicroseconds;
    private bool _lineFlowed;
    private bool _lineFoundOpen;
    private long _stepMicroseconds;
    private bool _stepSeen = true;
    private float _beforeStepAmps;

    internal SeenContacts(Settings settings, BackEmf backEmf)
    {
        _settings = settings;
        _backEmf = backEmf;
    }

    /// <summary>Line contact proven open on this tick.</summary>
    internal bool LineOpen { get; private set; }

    /// <summary>Line contact proven open on this tick or on one before it, with its coil off all the time.</summary>
    internal bool LineFoundOpen => _settings.LineContactFitted ? LineOpen : _lineFoundOpen;

    /// <summary>Line contact proven closed.</summary>
    internal bool LineIn { get; private set; }

    /// <summary>Every stage contact proven where its coil was told to.</summary>
    internal bool StagesFollowed { get; private set; }

    /// <summary>Brake contact proven open.</summary>
    internal bool BrakeOpen { get; private set; }

    /// <summary>Stage contacts that are in, as far as anything shows it.</summary>
    internal int StagesIn { get; private set; }

    /// <summary>Looks at a tick, with the coils as they have been since the last one.</summary>
    internal void Look(long elapsed, Readings readings, bool lineWas, int stagesWere, bool brakeWas)
    {
        bool flows = !(Math.Abs(readings.ArmatureAmps) <= _settings.ZeroAmps);
        _lineOffMicroseconds = !_settings.LineContactFitted && !lineWas ? Upto(_lineOffMicroseconds + elapsed) : 0;
        _lineOnMicroseconds = !_settings.LineContactFitted && lineWas ? Upto(_lineOnMicroseconds + elapsed) : 0;
        _brakeOffMicroseconds = !_settings.BrakeContactFitted && !brakeWas ? Upto(_brakeOffMicroseconds + elapsed) : 0;
        _stagesOffMicroseconds = _settings.StageContactsFitted ? 0 : Upto(_stagesOffMicroseconds + elapsed);
        _lineFlowed = !_settings.LineContactFitted && lineWas && (_lineFlowed || flows);

        LineOpen = _settings.LineContactFitted ? !readings.LineClosed : _lineOffMicroseconds >= _settings.ContactMicroseconds && !flows;
        _lineFoundOpen = !_settings.LineContactFitted && !lineWas && (_lineFoundOpen || LineOpen);
        LineIn = _settings.LineContactFitted
            ? readings.LineClosed : lineWas && (_lineFlowed || _lineOnMicroseconds >= _settings.ContactMicroseconds);
        BrakeOpen = !_settings.BrakeFitted
            || (_settings.BrakeContactFitted ? !readings.BrakeClosed : _brakeOffMicroseconds >= _settings.ContactMicroseconds && !flows);
        StagesIn = _settings.StageContactsFitted ? readings.StagesClosed : stagesWere;
        if (_settings.StageContactsFitted)
        {
            StagesFollowed = readings.StagesClosed == stagesWere;
            return;
        }

        LookForStep(elapsed, readings, lineWas, stagesWere);
        StagesFollowed = _stagesOffMicroseconds >= _settings.ContactMicroseconds && _stepSeen;
    }

    /// <summary>What the coils are told from now on.</summary>
    internal void Told(Readings readings, int stagesWere, Outputs outputs)
    {
        if (_settings.StageContactsFitted) return;
        int stages = outputs.CloseStages;
        if ((stagesWere & ~stages) != 0) _stagesOffMicroseconds = 0;
        if (outputs.CloseLine && (stages & ~stagesWere) == 0) return;
        _stepSeen = !outputs.CloseLine;
        _stepMicroseconds = 0;
        _beforeStepAmps = outputs.CloseLine ? Math.Abs(readings.ArmatureAmps) : 0f;
    }

    // The next stage may come once the current was what the last one should make of it, within the tolerance; or where the step is
    // too small to be seen. Without the speed nothing here knows what it should be: then its time must have passed.
    private void LookForStep(long elapsed, Readings readings, bool lineWas, int stagesWere)
    {
        if (_stepSeen) return;
        _stepMicroseconds = Math.Min(_stepMicroseconds + elapsed, _settings.StepSettleMicroseconds);
        double amps = readings.ArmatureAmps;
        _beforeStepAmps = Math.Min(_beforeStepAmps, Math.Abs(readings.ArmatureAmps));
        if (!lineWas || _stepMicroseconds < _settings.StepSettleMicroseconds) return;
        double volts = readings.SupplyVolts - _backEmf.Now(readings);
        double expected = Math.CopySign(Math.Max(Math.Abs(volts) - _settings.BrushDropVolts, 0), volts) / _backEmf.Ohms(stagesWere);
        bool isNear = Math.Abs(amps - expected) <= 1e-3 + _settings.ZeroAmps + _settings.StepToleranceRatio * Math.Abs(expected) * 1.0001;
        bool isSmall = Math.Abs(expected) <= 2.001 * _settings.ZeroAmps
            || Math.Abs(Math.Abs(expected) - _beforeStepAmps) <= 4.001 * _settings.ZeroAmps;
        _stepSeen = isNear || isSmall || !_settings.SpeedSensorFitted || !readings.SpeedValid || BitOperations.PopCount((uint)stagesWere) == 0;
        if (!_stepSeen) return;
        _stepMicroseconds = 0;
        _beforeStepAmps = 0f;
    }

    // Beyond the contact time nothing is held against them.
    private long Upto(long microseconds) => Math.Min(microseconds, _settings.ContactMicroseconds);
}
