namespace StarterCtl.Core;

/// <summary>
/// Looks on every tick for every fault that readings, contacts and heat show, in the order of <see cref="FaultTable"/>: the
/// first one found is the one that is latched, and each that was not there on the tick before is logged.
/// </summary>
public sealed class Protector
{
    // A sensor's zero may sit a little below 0 V; a tenth of the range is no zero error any more.
    private const float LowestSupplyFraction = -0.1f;
    private const float LowestCelsius = -100f;
    private const float HighestCelsius = 2000f;

    private readonly Settings _settings;
    private readonly ContactProof _contacts;
    private readonly CurrentProof _current;
    private readonly EventLog _log;
    private readonly float _lowestSupplyVolts;
    private readonly Persistence _weakField = new Persistence();
    private readonly Persistence _openCurrent = new Persistence();
    private readonly Persistence _unpermitted = new Persistence();
    // What is not asked for costs a look at one of these.
    private readonly bool _watchesField;
    private readonly bool _watchesOpenCurrent;
    private readonly bool _watchesHeat;
    private readonly bool _hasMoreSensors;
    private bool _hasTicked;
    private int _foundBits;
    private int _lastFoundBits;

    /// <summary>Supply, low and high.</summary>
    public readonly SupplyWatch Supply;

    /// <summary>Speed and current together.</summary>
    public readonly MotionWatch Motion;

    /// <summary>Heat of motor and resistor.</summary>
    public readonly HeatWatch Heat;

    /// <summary>The most important fault whose cause is there on this tick, or <see cref="FaultId.None"/>.</summary>
    public FaultId Present;

    /// <summary>What was measured for <see cref="Present"/>.</summary>
    public float PresentValue;

    /// <summary>The limit that it broke.</summary>
    public float PresentLimit;

    /// <summary>Which reading it speaks of.</summary>
    public Channel PresentChannel;

    /// <summary>Builds the checks on checked settings.</summary>
    public Protector(Settings settings, ContactProof contacts, CurrentProof current, EventLog log)
    {
        _settings = settings;
        _contacts = contacts;
        _current = current;
        _log = log;
        _lowestSupplyVolts = LowestSupplyFraction * settings.HighestSupplyVolts;
        Supply = new SupplyWatch(settings);
        Motion = new MotionWatch(settings);
        Heat = new HeatWatch(settings);
        _hasMoreSensors = settings.FieldSensorFitted || settings.ResistorSensorFitted;
        _watchesField = settings.MinimumFieldAmps > 0f;
        _watchesOpenCurrent = settings.ZeroAmps > 0f;
        _watchesHeat = Heat.IsMotorWatched || Heat.IsResistorWatched || settings.ResistorSensorFitted;
    }

    /// <summary>Finds every fault that is present.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick, of any value.</param>
    /// <param name="estimate">Estimates of this tick.</param>
    /// <param name="sequence">Phase and stage up to now.</param>
    public void Check(int elapsedMicroseconds, Readings readings, Estimate estimate, Sequence sequence)
    {
        bool lineClosed = _contacts.LineClosed;
        bool lineCommanded = _contacts.LineCommanded;
        if (Supply.IsUsed) Supply.Update(elapsedMicroseconds, readings, lineCommanded || sequence.Phase == Phase.Accelerating);
        bool looksAtMotion = Motion.IsToLook(readings);
        if (looksAtMotion) Motion.Update(elapsedMicroseconds, readings, estimate, lineClosed, sequence.Phase);
        if (_watchesHeat) Heat.Update(elapsedMicroseconds, readings, sequence.Stage - 1, lineClosed);

        Present = FaultId.None;
        _lastFoundBits = _foundBits;
        _foundBits = 0;
        CheckReadings(readings);
        if (_watchesField) CheckField(elapsedMicroseconds, readings, lineCommanded);
        if (looksAtMotion && Motion.IsTooFast) Find(FaultId.Overspeed, readings.SpeedRadPerSec, _settings.OverspeedRadPerSec);
        if (_watchesOpenCurrent) CheckOpenCurrent(elapsedMicroseconds, readings);
        if (_contacts.HasFailed || _current.Fault != FaultId.None) CheckContacts();
        if (looksAtMotion && Motion.IsSpeedLost) Find(FaultId.SpeedSignalLost, 0f, 0f);
        if (looksAtMotion && Motion.WatchesLimits) CheckMotion(readings);
        if (_watchesHeat) CheckHeat(readings);
        CheckSurroundings(elapsedMicroseconds, readings, sequence.Phase);
        _hasTicked = true;
    }

    private void CheckReadings(Readings readings)
    {
        Settings settings = _settings;
        if (readings.EmergencyStop) Find(FaultId.EmergencyStop, 1f, 0f);
        if (readings.Stale && Find(FaultId.ReadingInvalid, 1f, 0f)) PresentChannel = Channel.All;
        CheckChannel(Channel.Supply, readings.SupplyVolts, _lowestSupplyVolts, settings.HighestSupplyVolts);
        if (settings.SpeedSensorFitted && readings.SpeedValid)
        {
            CheckChannel(Channel.Speed, readings.SpeedRadPerSec, -settings.HighestSpeedRadPerSec, settings.HighestSpeedRadPerSec);
        }

        if (_hasMoreSensors) CheckMoreChannels(readings);
        if (!IsWithin(readings.ArmatureAmps, -settings.InstantTripAmps, settings.InstantTripAmps)) FindCurrent(readings.ArmatureAmps);
    }

    private void CheckMoreChannels(Readings readings)
    {
        if (_settings.FieldSensorFitted) CheckChannel(Channel.FieldCurrent, readings.FieldAmps, -Settings.Largest, Settings.Largest);
        if (_settings.ResistorSensorFitted) CheckChannel(Channel.ResistorTemperature, readings.ResistorCelsius, LowestCelsius, HighestCelsius);
    }

    // A current that cannot be believed is above the trip as well.
    private void FindCurrent(float amps)
    {
        CheckChannel(Channel.ArmatureCurrent, amps, -Settings.Largest, Settings.Largest);
        Find(FaultId.Overcurrent, amps, _settings.InstantTripAmps);
    }

    private void CheckChannel(Channel channel, float number, float lowest, float highest)
    {
        if (IsWithin(number, lowest, highest)) return;
        if (Find(FaultId.ReadingInvalid, number, number < lowest ? lowest : highest)) PresentChannel = channel;
    }

    // The board's interpreter takes NaN for larger than any number, so it is the upper bound that rejects NaN there.
    private static bool IsWithin(float number, float lowest, float highest) => number >= lowest && number <= highest;

    private void CheckField(int elapsedMicroseconds, Readings readings, bool isLive)
    {
        bool isWeak = isLive && !(Magnitude.Of(readings.FieldAmps) >= _settings.MinimumFieldAmps);
        if (_weakField.Lasts(isWeak, elapsedMicroseconds, _settings.TripConfirmMicroseconds))
        {
            Find(FaultId.FieldLost, readings.FieldAmps, _settings.MinimumFieldAmps);
        }
    }

    private void CheckContacts()
    {
        // What may be live comes before what did not come in.
        FindContacts(FaultId.ContactDidNotOpen, false, _contacts.FirstStrayStage);
        int stage = _contacts.FirstDisagreeingStage;
        FindContacts(FaultId.ContactDidNotClose, true, stage > 0 && _contacts.IsStageCommanded(stage) ? stage : 0);
        if (_current.Fault == FaultId.SectionDrifted) Find(_current.Fault, _current.FaultValue, _current.FaultLimit);
    }

    private void CheckOpenCurrent(int elapsedMicroseconds, Readings readings)
    {
        bool isOpen = _contacts.AllOpen && !_contacts.LineCommanded && !_contacts.BrakeCommanded;
        bool flows = !(Magnitude.Of(readings.ArmatureAmps) <= _settings.ZeroAmps);
        if (_openCurrent.Lasts(isOpen && flows, elapsedMicroseconds, _settings.ContactMicroseconds))
        {
            Find(FaultId.CurrentWhileOpen, readings.ArmatureAmps, _settings.ZeroAmps);
        }
    }

    private void FindContacts(FaultId id, bool commanded, int stage)
    {
        if (_contacts.LineFailed && _contacts.LineCommanded == commanded) Find(id, ContactNumber.Line, 0f);
        if (_contacts.StagesFailed && stage > 0) Find(id, stage, 0f);
        if (_contacts.BrakeFailed && _contacts.BrakeCommanded == commanded) Find(id, ContactNumber.Brake, 0f);
        if (_contacts.FieldFailed && _contacts.FieldCommanded == commanded) Find(id, ContactNumber.Field, 0f);
        if (_current.Fault == id) Find(id, _current.FaultValue, _current.FaultLimit);
    }

    private void CheckMotion(Readings readings)
    {
        if (Motion.IsApart) Find(FaultId.BackEmfDisagreement, Motion.ApartVolts, _settings.DisagreementVolts);
        if (Motion.IsBackwards) Find(FaultId.ReverseRotation, readings.SpeedRadPerSec, -_settings.ReverseRadPerSec);
        if (Motion.IsStalled) Find(FaultId.Stalled, readings.ArmatureAmps, _settings.StallAmps);
    }

    private void CheckHeat(Readings readings)
    {
        if (Heat.IsMotorTripped) Find(FaultId.Overload, readings.ArmatureAmps, _settings.OverloadAmps);
        if (_settings.ResistorSensorFitted && !(readings.ResistorCelsius <= _settings.ResistorCelsius))
        {
            if (Find(FaultId.ResistorTooHot, readings.ResistorCelsius, _settings.ResistorCelsius)) PresentChannel = Channel.ResistorTemperature;
        }

        if (Heat.IsResistorTripped) Find(FaultId.ResistorTooHot, Heat.Resistor.Level * _settings.ResistorJoules, _settings.ResistorJoules);
    }

    private void CheckSurroundings(int elapsedMicroseconds, Readings readings, Phase phase)
    {
        if (Supply.IsUsed) CheckSupply(readings);
        int required = _settings.RequiredPermissives;
        if (required != 0) CheckPermissives(elapsedMicroseconds, readings, required, phase);

        // The first period begins with power-up and says nothing.
        if (elapsedMicroseconds > _settings.MaximumTickMicroseconds && _hasTicked && IsAnyCommanded)
        {
            Find(FaultId.LoopLate, elapsedMicroseconds * 0.000001f, _settings.MaximumTickMicroseconds * 0.000001f);
        }
    }

    private void CheckSupply(Readings readings)
    {
        if (Supply.IsHighTooLong) Find(FaultId.SupplyHigh, readings.SupplyVolts, _settings.SupplyHighVolts);
        if (Supply.IsLowTooLong) Find(FaultId.SupplyLow, readings.SupplyVolts, _settings.SupplyLowVolts);
    }

    private bool IsAnyCommanded => _contacts.LineCommanded || _contacts.StagesCommanded != 0 || _contacts.BrakeCommanded || _contacts.FieldCommanded;

    private void CheckPermissives(int elapsedMicroseconds, Readings readings, int required, Phase phase)
    {
        bool isNeeded = phase == Phase.FieldBuilding || phase == Phase.Accelerating || phase == Phase.Running;
        bool isMissing = isNeeded && (readings.Permissives & required) != required;
        if (_unpermitted.Lasts(isMissing, elapsedMicroseconds, _settings.TripConfirmMicroseconds))
        {
            Find(FaultId.PermissiveLost, readings.Permissives & required, required);
        }
    }

    // True if it is the first, and so the most important one of this tick.
    private bool Find(FaultId id, float measured, float limit)
    {
        int bit = 1 << (int)id;
        _foundBits |= bit;
        if (Present != FaultId.None)
        {
            if ((_lastFoundBits & bit) == 0) _log.Add(EventKind.Fault, (int)id, measured);
            return false;
        }

        Present = id;
        PresentValue = measured;
        PresentLimit = limit;
        PresentChannel = Channel.None;
        return true;
    }

    /// <summary>True if <see cref="Present"/> was not there on the tick before.</summary>
    public bool IsPresentNew => (_lastFoundBits & (1 << (int)Present)) == 0;
}
