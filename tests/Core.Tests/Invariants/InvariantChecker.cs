using System.Numerics;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>
/// What must hold on every tick whatever the inputs, told from readings and outputs alone and without a line of the
/// core's own logic. Remembers the last tick; a long keeps every time, so that nothing here wraps or saturates.
/// </summary>
internal sealed class InvariantChecker(Settings settings)
{
    private bool _startWasPressed = true;
    private bool _resetWasPressed = true;
    private bool _lineWas;
    private int _stagesWere;
    private int _stagesProven;
    private bool _trippedWas;
    private long _lineWrongMicroseconds;
    private long _stagesWrongMicroseconds;
    private long _sinceClosingMicroseconds;

    /// <summary>The first invariant that this tick breaks, or null.</summary>
    internal string? Violation(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        long elapsed = elapsedMicroseconds > 0 ? elapsedMicroseconds : 0;
        Time(elapsed, readings);
        string? violation = Interlocks(readings, outputs)
            ?? Sequence(readings, outputs)
            ?? Protection(readings, outputs)
            ?? Cutout(readings, outputs)
            ?? Reclosing(readings, outputs)
            ?? Lamps(readings, outputs);
        Remember(readings, outputs);
        return violation;
    }

    /// <summary>The part that the interlock alone answers for, whatever was decided before it.</summary>
    internal string? InterlockViolation(Readings readings, Outputs outputs)
    {
        string? violation = Interlocks(readings, outputs);
        Remember(readings, outputs);
        return violation;
    }

    private string? Interlocks(Readings readings, Outputs outputs)
    {
        int stages = outputs.CloseStages;
        int added = stages & ~_stagesWere;
        if ((stages & (stages + 1)) != 0 || stages >> settings.StageCount != 0) return "stages close in order";
        if (stages != 0 && !outputs.CloseLine) return "no stage without the line";
        if (BitOperations.PopCount((uint)added) > 1) return "one stage per decision";
        if (added != 0 && readings.StagesClosed != _stagesWere) return "next stage only when the last is proven closed";
        if (added != 0 && !readings.LineClosed) return "no stage before the line is proven closed";
        bool energised = outputs.CloseLine || stages != 0;
        if ((readings.StopPressed || readings.EmergencyStop) && energised) return "stop wins in the same tick";
        if (outputs.TrippedLamp && energised) return "tripped is all off";
        if (outputs.CloseLine && !_lineWas && readings.StagesClosed != 0) return "line only when every stage is proven open";
        return null;
    }

    private string? Sequence(Readings readings, Outputs outputs)
    {
        if (outputs.CloseStages != 0 && !_lineWas) return "no stage on the tick that closes the line";
        if (outputs.CloseLine && (_stagesWere & ~outputs.CloseStages) != 0) return "no stage opens under the line";
        if (outputs.CloseLine && !readings.LineClosed && (readings.StagesClosed & ~outputs.CloseStages) != 0) return "line coil off when a stage that nobody asked for closes before the line is in";
        if (outputs.CloseLine && !_lineWas && readings.LineClosed) return "line only when its own contact is proven open";
        if (outputs.CloseLine && !_lineWas && !(readings.StartPressed && !_startWasPressed)) return "line only on a press of start";
        if (outputs.CloseLine && !_lineWas && _trippedWas) return "no start straight out of a trip";
        if (_trippedWas && !outputs.TrippedLamp && !(readings.ResetPressed && !_resetWasPressed)) return "a trip stays until a reset";
        if (_trippedWas && !outputs.TrippedLamp && readings.StartPressed) return "no reset while start is held";
        return null;
    }

    private string? Protection(Readings readings, Outputs outputs)
    {
        if (readings.EmergencyStop && !outputs.TrippedLamp) return "emergency stop trips";
        if (!AreBelievable(readings) && !outputs.TrippedLamp) return "a bad reading trips";
        if (!(Magnitude(readings.ArmatureAmps) <= settings.InstantTripAmps) && !outputs.TrippedLamp) return "overcurrent trips";
        if (_lineWrongMicroseconds >= settings.ContactMicroseconds && !outputs.TrippedLamp) return "a wrong line contact trips";
        if (_stagesWrongMicroseconds >= settings.ContactMicroseconds && !outputs.TrippedLamp) return "a wrong stage contact trips";
        return null;
    }

    private string? Cutout(Readings readings, Outputs outputs)
    {
        int added = outputs.CloseStages & ~_stagesWere;
        if (added == 0) return null;

        int stage = BitOperations.TrailingZeroCount(added);
        if (VoltsOver(stage, readings, 1) > 0) return "no peak above the permitted one";
        if (VoltsOver(stage, readings, -1) > 0) return "no current back above the permitted one";
        if (Magnitude(readings.ArmatureAmps) > settings.LockoutAmps) return "no cutout above the lockout";
        if (_sinceClosingMicroseconds < settings.MinimumDwellMicroseconds) return "no cutout before the dwell is over";
        return null;
    }

    // A contact that was in and has opened may close again: what flows then is what would flow with every coil's contact in.
    private string? Reclosing(Readings readings, Outputs outputs)
    {
        bool isLost = !readings.LineClosed || (readings.StagesClosed & _stagesProven) != _stagesProven;
        if (!isLost || !outputs.CloseLine || outputs.CloseStages == 0) return null;

        int stage = BitOperations.Log2((uint)outputs.CloseStages);
        bool isOver = VoltsOver(stage, readings, 1) > 0 || VoltsOver(stage, readings, -1) > 0;
        return isOver ? "no peak when a contact that opened closes again" : null;
    }

    // Volts across the armature circuit above those permitted behind a stage's cutout; direction -1 for a current back.
    private double VoltsOver(int stage, Readings readings, int direction)
    {
        double backEmf = (double)settings.MachineConstant * readings.SpeedRadPerSec;
        double rounding = 1e-6 * (Magnitude(readings.SupplyVolts) + settings.BrushDropVolts + Magnitude(backEmf));
        return direction * (readings.SupplyVolts - backEmf) - settings.BrushDropVolts - settings.VoltsLeft[stage] - rounding;
    }

    private string? Lamps(Readings readings, Outputs outputs)
    {
        int lit = (outputs.ReadyLamp ? 1 : 0) + (outputs.RunningLamp ? 1 : 0) + (outputs.TrippedLamp ? 1 : 0);
        bool refused = readings.StopPressed || readings.StartPressed || readings.LineClosed || readings.StagesClosed != 0;
        if (lit > 1) return "one lamp at most";
        if (outputs.ReadyLamp && (outputs.CloseLine || refused)) return "ready lamp only when a start is accepted";
        if (outputs.RunningLamp && !(outputs.CloseLine && outputs.CloseStages == (1 << settings.StageCount) - 1)) return "running lamp only with everything closed";
        return null;
    }

    private void Time(long elapsed, Readings readings)
    {
        _lineWrongMicroseconds = readings.LineClosed == _lineWas ? 0 : _lineWrongMicroseconds + elapsed;
        _stagesWrongMicroseconds = readings.StagesClosed == _stagesWere ? 0 : _stagesWrongMicroseconds + elapsed;
        _sinceClosingMicroseconds += elapsed;
        if (readings.LineClosed && readings.StagesClosed == _stagesWere) _stagesProven = _stagesWere;
    }

    private void Remember(Readings readings, Outputs outputs)
    {
        if (outputs.CloseLine != _lineWas) _lineWrongMicroseconds = 0;
        if (outputs.CloseStages != _stagesWere) _stagesWrongMicroseconds = 0;
        if (outputs.CloseLine != _lineWas || (outputs.CloseStages & ~_stagesWere) != 0) _sinceClosingMicroseconds = 0;
        if (!outputs.CloseLine) _stagesProven = 0;
        _startWasPressed = readings.StartPressed;
        _resetWasPressed = readings.ResetPressed;
        _lineWas = outputs.CloseLine;
        _stagesWere = outputs.CloseStages;
        _trippedWas = outputs.TrippedLamp;
    }

    private bool AreBelievable(Readings readings) =>
        float.IsFinite(readings.SupplyVolts) && float.IsFinite(readings.ArmatureAmps) && float.IsFinite(readings.SpeedRadPerSec)
        && readings.SpeedValid
        && readings.SupplyVolts <= settings.HighestSupplyVolts && readings.SupplyVolts >= -0.1000001 * settings.HighestSupplyVolts
        && Magnitude(readings.SpeedRadPerSec) <= settings.HighestSpeedRadPerSec;

    private static double Magnitude(double number) => number < 0 ? -number : number;
}
