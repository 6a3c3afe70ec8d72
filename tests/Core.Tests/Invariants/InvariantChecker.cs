using System;
using System.Numerics;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>
/// What must hold on every tick whatever the inputs, told from readings, outputs and the phase that is published, and
/// without a line of the core's own logic. Remembers the last tick; a long keeps every time, so that nothing here wraps or
/// saturates.
/// </summary>
internal sealed partial class InvariantChecker
{
    private readonly Settings _settings;
    private readonly BackEmf _backEmf;
    private readonly SeenContacts _contacts;
    private bool _startWasPressed = true;
    private bool _resetWasPressed = true;
    private bool _lineWas;
    private int _stagesWere;
    private bool _brakeWas;
    private bool _fieldWas;
    private bool _trippedWas;
    private Phase _phaseWas;
    private bool _lineProven;
    private int _stagesProven;
    private long _sinceClosingMicroseconds;

    internal InvariantChecker(Settings settings)
    {
        _settings = settings;
        _backEmf = new BackEmf(settings);
        _contacts = new SeenContacts(settings, _backEmf);
        _phaseWas = Phase.Ready;
    }

    private int AllStages => (1 << _settings.StageCount) - 1;

    /// <summary>The first invariant that this tick breaks, or null.</summary>
    internal string? Violation(int elapsedMicroseconds, Readings readings, Outputs outputs, Phase phase)
    {
        long elapsed = elapsedMicroseconds > 0 ? elapsedMicroseconds : 0;
        Time(elapsed, readings, phase);
        string? violation = Interlocks(readings, outputs)
            ?? Coils(readings, outputs, phase)
            ?? Start(readings, outputs, phase)
            ?? Field(readings, outputs, phase)
            ?? Brake(elapsed, readings, outputs, phase)
            ?? Believed(readings, outputs)
            ?? Contacts(elapsed, readings, outputs)
            ?? Limits(elapsed, readings, outputs)
            ?? Times(elapsed, readings, outputs, phase)
            ?? Cutout(elapsed, readings, outputs)
            ?? Reclosing(readings, outputs)
            ?? Lamps(readings, outputs, phase);
        Remember(readings, outputs, phase);
        return violation;
    }

    /// <summary>The part that the interlock alone answers for, whatever was decided before it.</summary>
    internal string? InterlockViolation(int elapsedMicroseconds, Readings readings, Outputs outputs, Phase phase)
    {
        Time(elapsedMicroseconds, readings, phase);
        string? violation = Interlocks(readings, outputs);
        Remember(readings, outputs, phase);
        return violation;
    }

    private string? Interlocks(Readings readings, Outputs outputs)
    {
        int stages = outputs.CloseStages;
        int added = stages & ~_stagesWere;
        bool isStopped = readings.StopPressed || readings.EmergencyStop;
        if (outputs.CloseLine && outputs.CloseBrake) return "line and brake are never closed together";
        if ((stages & (stages + 1)) != 0 || stages >> _settings.StageCount != 0) return "stages close in order";
        if (BitOperations.PopCount((uint)added) > 1) return "one stage per decision";
        if (added != 0 && !_contacts.StagesFollowed) return "next stage only when the last is proven closed";
        if (added != 0 && _lineWas && !_contacts.LineIn) return "no stage before the line is proven closed";
        if (isStopped && (outputs.CloseLine || stages != 0)) return "stop wins in the same tick";
        if (readings.EmergencyStop && outputs.CloseBrake) return "emergency stop opens the brake";
        if (outputs.TrippedLamp && (outputs.CloseLine || stages != 0 || outputs.CloseBrake)) return "tripped is all off";
        if (stages != 0 && !outputs.CloseLine && !MayPreset(readings)) return "no stage without the line";
        if (stages != 0 && !(outputs.CloseLine && _lineWas) && !IsPermitted(stages, readings)) return "no preset that the back-EMF does not permit";
        if (outputs.CloseLine && !_lineWas && !(_contacts.StagesFollowed && _stagesWere == stages)) return "line only when every stage is proven where it should be";
        return Between(outputs);
    }

    // Line, field and brake against each other.
    private string? Between(Outputs outputs)
    {
        if (outputs.CloseLine && !_lineWas && (_brakeWas || !_contacts.BrakeOpen)) return "line only when the brake is proven open";
        if (outputs.CloseLine && _settings.BrakeContactFitted && !_contacts.BrakeOpen) return "line opens when the brake closes by itself";
        if (outputs.CloseBrake && !_brakeWas && (_lineWas || !_contacts.LineOpen)) return "brake only when the line is proven open";
        if (outputs.CloseBrake && _settings.LineContactFitted && !_contacts.LineOpen) return "brake opens when the line closes by itself";
        if (outputs.CloseBrake && _settings.StageContactsFitted && _contacts.StagesIn != 0) return "brake only when every stage is proven open";
        if (outputs.CloseLine && _settings.FieldContactorFitted && !(_fieldWas && outputs.CloseField)) return "line only with the field";
        bool fieldDrops = _fieldWas && !outputs.CloseField;
        if (fieldDrops && (_lineWas || !_contacts.LineFoundOpen)) return "field never drops under a closed line";
        return null;
    }

    private string? Coils(Readings readings, Outputs outputs, Phase phase)
    {
        bool isDip = _settings.DipAction == DipAction.PutResistanceBack && IsLow(readings);
        bool isStray = _settings.StageContactsFitted && (readings.StagesClosed & ~outputs.CloseStages) != 0;
        if (_trippedWas && (outputs.CloseLine || IsLive(phase))) return "no start straight out of a trip";
        if (outputs.CloseLine && !isDip && (_stagesWere & ~outputs.CloseStages) != 0) return "no stage opens under the line";
        if (outputs.CloseLine && isStray && !_contacts.LineIn) return "line coil off when a stage that nobody asked for closes before the line is in";
        if (outputs.CloseLine && !_lineWas && !_contacts.LineOpen) return "line only when its own contact is proven open";
        if (outputs.CloseLine && !_lineWas && _lineProven) return "a line that was in and opened needs a new start";
        if ((outputs.CloseLine || outputs.CloseStages != 0) && phase is not (Phase.Accelerating or Phase.Running)) return "line and stages only while starting or running";
        return null;
    }

    private string? Lamps(Readings readings, Outputs outputs, Phase phase)
    {
        int lit = (outputs.ReadyLamp ? 1 : 0) + (outputs.RunningLamp ? 1 : 0) + (outputs.TrippedLamp ? 1 : 0);
        bool coils = outputs.CloseLine || outputs.CloseStages != 0 || outputs.CloseBrake;
        bool isRunning = outputs.CloseLine && outputs.CloseStages == AllStages && _contacts.LineIn && _contacts.StagesIn == AllStages;
        if (lit > 1) return "one lamp at most";
        if (outputs.ReadyLamp && (phase != Phase.Ready || coils || readings.StartPressed || IsRefused(readings))) return "ready lamp only when a start is accepted";
        if (outputs.RunningLamp && !(isRunning && phase == Phase.Running)) return "running lamp only with everything closed";
        if (outputs.TrippedLamp != phase is Phase.Tripped or Phase.NotSetUp) return "tripped lamp exactly while tripped";
        return null;
    }

    private void Time(long elapsed, Readings readings, Phase phase)
    {
        _contacts.Look(elapsed, readings, _lineWas, _stagesWere, _brakeWas);
        int longest = Math.Max(_settings.MinimumDwellMicroseconds, _settings.SpeedLoss == SpeedLossAction.FinishStart ? _settings.ResistiveConfirmMicroseconds : 0);
        _sinceClosingMicroseconds = Math.Min(_sinceClosingMicroseconds + elapsed, longest);
        _lineProven |= _lineWas && _contacts.LineIn;
        if (_contacts.LineIn && _contacts.StagesIn == _stagesWere) _stagesProven = _stagesWere;
        _inPhaseMicroseconds = phase == _phaseWas && LongestIn(phase) < long.MaxValue ? Math.Min(_inPhaseMicroseconds + elapsed, LongestIn(phase)) : 0;
        TimeField(elapsed, readings);
    }

    private void Remember(Readings readings, Outputs outputs, Phase phase)
    {
        _contacts.Told(readings, _stagesWere, outputs);
        if (outputs.CloseLine != _lineWas) _lineWrongMicroseconds = 0;
        if (outputs.CloseStages != _stagesWere) _stagesWrongMicroseconds = 0;
        if (outputs.CloseBrake != _brakeWas) _brakeWrong.Forget();
        if (outputs.CloseField != _fieldWas) _fieldWrong.Forget();
        if (outputs.CloseLine != _lineWas || outputs.CloseStages != _stagesWere) _sinceClosingMicroseconds = 0;
        _stagesProven &= outputs.CloseLine ? outputs.CloseStages : 0;
        _lineProven &= IsLive(phase);
        _startWasPressed = readings.StartPressed;
        _resetWasPressed = readings.ResetPressed;
        _lineWas = outputs.CloseLine;
        _stagesWere = outputs.CloseStages;
        _brakeWas = outputs.CloseBrake;
        _fieldWas = outputs.CloseField;
        _trippedWas = outputs.TrippedLamp;
        _phaseWas = phase;
        _lastAmps = _settings.SpeedLoss == SpeedLossAction.FinishStart ? readings.ArmatureAmps : 0f;
    }

    // Start pressed, and not stopped or tripped since.
    private static bool IsLive(Phase phase) => phase is Phase.FieldBuilding or Phase.Accelerating or Phase.Running;
}
