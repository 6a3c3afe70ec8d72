using System.Numerics;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>What must hold for every stage that closes.</summary>
internal sealed partial class InvariantChecker
{
    private float _lastAmps;

    private string? Cutout(long elapsed, Readings readings, Outputs outputs)
    {
        int added = outputs.CloseStages & ~_stagesWere;
        if (added == 0) return null;

        if (IsLow(readings)) return "no cutout in a dip";
        // Before the line is in no current flows and no time runs: what is permitted there is the interlock's.
        if (!outputs.CloseLine) return null;
        int stage = BitOperations.TrailingZeroCount(added);
        bool isKnown = _settings.SpeedSensorFitted && readings.SpeedValid;
        bool isUnsteady = Magnitude((double)readings.ArmatureAmps - _lastAmps) > _settings.SteadyAmpsPerSec * elapsed * 1.00001e-6;
        if (!isKnown && Magnitude(readings.ArmatureAmps) <= _settings.ZeroAmps) return "no cutout by a current that does not flow";
        if (!isKnown && isUnsteady) return "no cutout by a current that moves";
        if (!isKnown && _sinceClosingMicroseconds < _settings.ResistiveConfirmMicroseconds) return "no cutout by the current before its confirm time";
        if (IsOver(stage, readings, 1)) return "no peak above the permitted one";
        if (IsOver(stage, readings, -1)) return "no current back above the permitted one";
        if (Magnitude(readings.ArmatureAmps) > _settings.LockoutAmps) return "no cutout above the lockout";
        if (_sinceClosingMicroseconds < _settings.MinimumDwellMicroseconds) return "no cutout before the dwell is over";
        return null;
    }

    // A contact that was in and has opened may close again: what flows then is what would flow with every coil's contact in.
    private string? Reclosing(Readings readings, Outputs outputs)
    {
        bool isLost = !_contacts.LineIn || (_contacts.StagesIn & _stagesProven) != _stagesProven;
        if (!isLost || !outputs.CloseLine || outputs.CloseStages == 0) return null;

        int stage = BitOperations.Log2((uint)outputs.CloseStages);
        if (IsOver(stage, readings, 1) || IsOver(stage, readings, -1)) return "no peak when a contact that opened closes again";
        return null;
    }

    private bool MayPreset(Readings readings) =>
        _settings.SpinningStart && !_lineWas && !_brakeWas && _contacts.LineOpen && _contacts.BrakeOpen
        && readings.SpeedRadPerSec > _settings.StandstillRadPerSec;

    // Into a turning shaft, by its speed and by nothing else.
    private bool IsPermitted(int stages, Readings readings)
    {
        int stage = BitOperations.Log2((uint)stages);
        bool isKnown = _settings.SpeedSensorFitted && readings.SpeedValid;
        return isKnown && !IsOver(stage, readings, 1) && !IsOver(stage, readings, -1);
    }

    // True if the volts across the armature circuit pass those permitted behind a stage's cutout; direction -1 for a current
    // back. What nothing tells is over.
    private bool IsOver(int stage, Readings readings, int direction)
    {
        double backEmf = _backEmf.AtPeak(readings, _contacts.StagesIn & AllStages);
        double rounding = 2e-6 * (Magnitude(readings.SupplyVolts) + _settings.BrushDropVolts + Magnitude(backEmf));
        return !(direction * (readings.SupplyVolts - backEmf) - _settings.BrushDropVolts - _settings.VoltsLeft[stage] <= rounding);
    }
}
