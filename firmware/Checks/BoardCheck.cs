using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Whether a wiring fits the settings: every pin for one purpose, everything there that the settings rely on, ranges that show what
/// the protection must see, edges that can be counted. The same check on desk and board. Finds the first problem.
/// </summary>
public sealed class BoardCheck
{
    private const float SecondsPerMicrosecond = 0.000001f;

    private readonly PinMap _map;
    private readonly Settings _settings;

    /// <summary>The problem, or <see cref="BoardProblem.None"/>.</summary>
    public BoardProblem Problem;

    /// <summary>The role that it is about; meaningless where it is about none.</summary>
    public PinRole Role;

    /// <summary>The other role on the same pin.</summary>
    public PinRole OtherRole;

    /// <summary>
    /// False where the pins cannot even be opened: two roles on one pin, or nothing wired to what every board reads. Depends on the
    /// wiring alone.
    /// </summary>
    public bool CanOpen = true;

    /// <summary>What was found.</summary>
    public float Value;

    /// <summary>What it is held against.</summary>
    public float Limit;

    /// <summary>Checks a wiring.</summary>
    /// <param name="map">The wiring.</param>
    /// <param name="settings">Settings that have passed their own check.</param>
    public BoardCheck(PinMap map, Settings settings)
    {
        _map = map;
        _settings = settings;
        CheckPins();
        if (Problem != BoardProblem.None || !IsReadable()) CanOpen = false;
        CheckFitted();
        CheckChannels();
        CheckPulses();
        CheckStandstill();
        CheckTimes();
    }

    private void CheckPins()
    {
        for (int i = 1; i < PinMap.RoleCount; i++)
        {
            int pin = _map.Pin((PinRole)i);
            for (int j = 0; j < i; j++)
            {
                if (pin == PinMap.NotFitted || pin != _map.Pin((PinRole)j)) continue;
                if (Problem == BoardProblem.None) OtherRole = (PinRole)j;
                Find(BoardProblem.PinUsedTwice, (PinRole)i, pin, pin);
            }
        }
    }

    private bool IsReadable() =>
        _map.IsFitted(PinRole.SupplyVolts) && _map.IsFitted(PinRole.ArmatureAmps) && _map.IsFitted(PinRole.StopChain);

    private void CheckFitted()
    {
        Settings settings = _settings;
        Need(true, PinRole.SupplyVolts);
        Need(true, PinRole.ArmatureAmps);
        Need(settings.FieldSensorFitted, PinRole.FieldAmps);
        Need(settings.ResistorSensorFitted, PinRole.ResistorCelsius);
        Need(settings.SpeedSensorFitted && !_map.IsFitted(PinRole.TachoRadPerSec), PinRole.SpeedEdges);
        Need(true, PinRole.StopChain);
        Need(settings.LineContactFitted, PinRole.LineContact);
        Need(settings.BrakeFitted && settings.BrakeContactFitted, PinRole.BrakeContact);
        Need(settings.FieldContactFitted, PinRole.FieldContact);
        Need(true, PinRole.LineCoil);
        Need(settings.BrakeFitted, PinRole.BrakeCoil);
        Need(settings.FieldContactorFitted, PinRole.FieldCoil);
        for (int i = 0; i < settings.StageCount && i < Settings.MostStages; i++)
        {
            Need(settings.StageContactsFitted, PinRole.StageContact1 + i);
            Need(true, PinRole.StageCoil1 + i);
        }

        for (int i = 0; i < PinMap.MostPermissives; i++) Need((settings.RequiredPermissives & (1 << i)) != 0, PinRole.Permissive1 + i);
    }

    private void CheckChannels()
    {
        Settings settings = _settings;
        float volts = settings.NominalSupplyVolts;
        if (settings.SupplyHighVolts < Settings.Largest && settings.SupplyHighVolts > volts) volts = settings.SupplyHighVolts;
        CheckChannel(PinRole.SupplyVolts, _map.Supply, volts);
        CheckChannel(PinRole.ArmatureAmps, _map.Armature, settings.InstantTripAmps);
        if (!(_map.Armature.LowestUnits <= -settings.InstantTripAmps))
        {
            Find(BoardProblem.NegativeRangeTooSmall, PinRole.ArmatureAmps, _map.Armature.LowestUnits, -settings.InstantTripAmps);
        }

        CheckChannel(PinRole.FieldAmps, _map.Field, settings.MinimumFieldAmps);
        CheckChannel(PinRole.ResistorCelsius, _map.Resistor, settings.ResistorSensorFitted ? settings.ResistorCelsius : 0f);
        CheckChannel(PinRole.TachoRadPerSec, _map.Tacho, settings.OverspeedRadPerSec < Settings.Largest ? settings.OverspeedRadPerSec : 0f);
    }

    private void CheckChannel(PinRole role, AnalogSetup setup, float highest)
    {
        if (!_map.IsFitted(role)) return;
        float gain = setup.Calibration.UnitsPerCount;
        if (gain == 0f || !IsNumber(gain) || !IsNumber(setup.Calibration.OffsetCounts)) Find(BoardProblem.GainUnusable, role, gain, 0f);
        if (setup.LowestCounts >= setup.HighestCounts) Find(BoardProblem.CountsCrossed, role, setup.LowestCounts, setup.HighestCounts);
        int samples = setup.MedianSamples;
        if (samples != 1 && samples != 3 && samples != 5) Find(BoardProblem.MedianUnknown, role, samples, 5f);
        if (setup.FilterMicroseconds < 0) Find(BoardProblem.NegativeTime, role, setup.FilterMicroseconds * SecondsPerMicrosecond, 0f);
        if (!(setup.HighestUnits >= highest)) Find(BoardProblem.RangeTooSmall, role, setup.HighestUnits, highest);
    }

    private void CheckPulses()
    {
        if (!_map.IsFitted(PinRole.SpeedEdges)) return;
        PulseSetup pulses = _map.Pulses;
        NeedAboveZero(PinRole.SpeedEdges, pulses.EdgesPerTurn);
        NeedAboveZero(PinRole.SpeedEdges, pulses.ShortestSpanMicroseconds);
        NeedAboveZero(PinRole.SpeedEdges, pulses.HighestRadPerSecSquared);
        NeedAboveZero(PinRole.SpeedEdges, pulses.MostEdgesPerSecond);
        if (Problem != BoardProblem.None) return;
        float fastest = _settings.OverspeedRadPerSec < Settings.Largest ? _settings.OverspeedRadPerSec : _settings.HighestSpeedRadPerSec;
        float edges = fastest / pulses.RadPerEdge;
        if (!(edges <= pulses.MostEdgesPerSecond)) Find(BoardProblem.TooManyEdges, PinRole.SpeedEdges, edges, pulses.MostEdgesPerSecond);
    }

    private void CheckStandstill()
    {
        bool isTacho = _map.IsFitted(PinRole.TachoRadPerSec);
        PinRole role = isTacho ? PinRole.TachoRadPerSec : PinRole.SpeedEdges;
        if (!_map.IsFitted(role)) return;
        StandstillSetup standstill = _map.Standstill;
        NeedAboveZero(role, standstill.TimeOutMicroseconds);
        NeedAboveZero(role, standstill.StandstillMicroseconds);
        if (!(standstill.ZeroAmps > 0f)) Find(BoardProblem.NoZeroCurrent, role, standstill.ZeroAmps, 0f);
        float count = Magnitude.Of(_map.Tacho.Calibration.UnitsPerCount);
        if (isTacho && !(standstill.LeastRadPerSec >= count)) Find(BoardProblem.LeastSpeedTooSmall, role, standstill.LeastRadPerSec, count);
    }

    private void CheckTimes()
    {
        float contact = _map.ContactDebounceMicroseconds * SecondsPerMicrosecond;
        float wait = _settings.ContactMicroseconds * SecondsPerMicrosecond;
        if (contact < 0f) Find(BoardProblem.NegativeTime, PinRole.LineContact, contact, 0f);
        if (_map.ButtonDebounceMicroseconds < 0) Find(BoardProblem.NegativeTime, PinRole.StartButton, _map.ButtonDebounceMicroseconds * SecondsPerMicrosecond, 0f);
        if (_map.LateMicroseconds < 0) Find(BoardProblem.NegativeTime, PinRole.Watchdog, _map.LateMicroseconds * SecondsPerMicrosecond, 0f);
        if (contact >= wait) Find(BoardProblem.DebounceTooLong, PinRole.LineContact, contact, wait);
        float period = _map.PeriodMicroseconds * SecondsPerMicrosecond;
        float latest = period + _map.LateMicroseconds * SecondsPerMicrosecond;
        float longest = _settings.MaximumTickMicroseconds * SecondsPerMicrosecond;
        if (!(period > 0f) || !(latest <= longest)) Find(BoardProblem.PeriodTooLong, PinRole.Watchdog, latest, longest);
    }

    private void Need(bool isNeeded, PinRole role)
    {
        if (isNeeded && !_map.IsFitted(role)) Find(BoardProblem.PinMissing, role, PinMap.NotFitted, 0f);
    }

    private void NeedAboveZero(PinRole role, float number)
    {
        if (!(number > 0f)) Find(BoardProblem.PulsesUnusable, role, number, 0f);
    }

    private static bool IsNumber(float number) => number >= -float.MaxValue && number <= float.MaxValue;

    private void Find(BoardProblem problem, PinRole role, float value, float limit)
    {
        if (Problem != BoardProblem.None) return;
        Problem = problem;
        Role = role;
        Value = value;
        Limit = limit;
    }
}
