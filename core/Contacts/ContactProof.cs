namespace StarterCtl.Core;

/// <summary>
/// Where every contact is, by its auxiliary contact or, where none is fitted, by the current; and for how long it disagrees
/// with its coil. The rest of the controller goes by what is proven here.
/// </summary>
public sealed class ContactProof
{
    private readonly Settings _settings;
    private readonly CurrentProof _current;
    private readonly bool _usesCurrent;
    private readonly bool _hasLineContact;
    private readonly bool _hasStageContacts;
    private readonly bool _needsCurrent;
    private readonly bool _hasOthers;
    private readonly Persistence _brakeDiffers = new Persistence();
    private readonly Persistence _fieldDiffers = new Persistence();
    private bool _lineCommanded;
    private int _stagesCommanded;
    private bool _brakeCommanded;
    private bool _fieldCommanded;
    private int _lineMicroseconds;
    private int _stagesMicroseconds;
    private int _stagesSeen;

    /// <summary>True while the line contact counts as closed. Without an auxiliary contact: until its opening is proven.</summary>
    public bool LineClosed;

    /// <summary>Stage contacts that count as closed, bit 0 = stage 1. A commanded one only once it is proven.</summary>
    public int StagesClosed;

    /// <summary>True while the brake contact counts as closed.</summary>
    public bool BrakeClosed;

    /// <summary>True once the brake contact has disagreed with its coil for the contact time.</summary>
    public bool BrakeFailed;

    /// <summary>True once the field contact has disagreed with its coil for the contact time.</summary>
    public bool FieldFailed;

    /// <summary>Builds the timers on checked settings.</summary>
    public ContactProof(Settings settings, CurrentProof current)
    {
        _settings = settings;
        _current = current;
        _usesCurrent = current.IsUsed;
        _hasLineContact = settings.LineContactFitted;
        _hasStageContacts = settings.StageContactsFitted;
        _needsCurrent = !settings.LineContactFitted || (settings.BrakeFitted && !settings.BrakeContactFitted);
        _hasOthers = settings.BrakeFitted || settings.FieldContactorFitted;
        // What nobody has looked at yet is not proven open.
        LineClosed = !settings.LineContactFitted;
        if (!settings.StageContactsFitted) StagesClosed = StageBits.UpTo(settings.StageCount);
        BrakeClosed = settings.BrakeFitted && !settings.BrakeContactFitted;
    }

    /// <summary>Time left until the line contact's disagreement counts as a fault, microseconds.</summary>
    public int LineMicrosecondsLeft => _settings.ContactMicroseconds - _lineMicroseconds;

    /// <summary>Time left until a stage contact's disagreement counts as a fault, microseconds.</summary>
    public int StagesMicrosecondsLeft => _settings.ContactMicroseconds - _stagesMicroseconds;

    /// <summary>Time left until the brake contact's disagreement counts as a fault, microseconds.</summary>
    public int BrakeMicrosecondsLeft => _brakeDiffers.MicrosecondsLeft(_settings.ContactMicroseconds);

    /// <summary>True once the line contact has disagreed with its coil for the contact time.</summary>
    public bool LineFailed => IsOver(_lineMicroseconds);

    /// <summary>True once a stage contact has disagreed with its coil for the contact time.</summary>
    public bool StagesFailed => _hasStageContacts && IsOver(_stagesMicroseconds);

    /// <summary>True once any contact has disagreed with its coil for the contact time.</summary>
    public bool HasFailed => LineFailed || StagesFailed || BrakeFailed || FieldFailed;

    /// <summary>True if the line coil was on when its contact was compared last.</summary>
    public bool LineCommanded => _lineCommanded;

    /// <summary>Stage coils that were on when their contacts were compared last, bit 0 = stage 1.</summary>
    public int StagesCommanded => _stagesCommanded;

    /// <summary>True if the brake coil was on when its contact was compared last.</summary>
    public bool BrakeCommanded => _brakeCommanded;

    /// <summary>True if the field coil was on when its contact was compared last.</summary>
    public bool FieldCommanded => _fieldCommanded;

    /// <summary>True if every contact counts as open.</summary>
    public bool AllOpen => !LineClosed && StagesClosed == 0 && !BrakeClosed;

    /// <summary>True if the line is seen closed, by its auxiliary contact on this tick or by what was proven up to the last.</summary>
    public bool IsLineSeen(Readings readings) => _hasLineContact ? readings.LineClosed : LineClosed;

    /// <summary>
    /// True unless current flows where only the current can show an open contact: on this tick, whatever was proven before.
    /// </summary>
    public bool IsDead(Readings readings) => !_needsCurrent || IsZero(readings.ArmatureAmps);

    /// <summary>Compares contacts with the coils as the last tick left them.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="estimate">Estimates of this tick.</param>
    /// <param name="coils">The interlock, with the coils as the last tick left them.</param>
    public void Update(int elapsedMicroseconds, Readings readings, Estimate estimate, Interlock coils)
    {
        if (_usesCurrent) _current.Update(elapsedMicroseconds, readings, estimate, coils);
        UpdateLine(elapsedMicroseconds, readings, coils.LineCommanded);
        UpdateStages(elapsedMicroseconds, readings, coils.StagesCommanded);
        if (_hasOthers) UpdateOthers(elapsedMicroseconds, readings, coils);
    }

    private void UpdateOthers(int elapsedMicroseconds, Readings readings, Interlock coils)
    {
        if (_settings.BrakeFitted) UpdateBrake(elapsedMicroseconds, readings, coils.BrakeCommanded);
        if (_settings.FieldContactFitted) UpdateField(elapsedMicroseconds, readings, coils.FieldCommanded);
        _brakeCommanded = coils.BrakeCommanded;
        _fieldCommanded = coils.FieldCommanded;
    }

    /// <summary>Lowest stage whose contact disagrees with its coil, counted from 1; 0 when all agree.</summary>
    public int FirstDisagreeingStage => StageBits.Lowest(_stagesCommanded ^ StagesClosed);

    /// <summary>Lowest stage whose contact is closed against its coil, counted from 1; 0 when there is none.</summary>
    public int FirstStrayStage => StageBits.Lowest(StagesClosed & ~_stagesCommanded);

    /// <summary>Lowest stage that is not where it is wanted from now on, counted from 1; 0 when all are.</summary>
    public int FirstStageBeside(int wantedStages) => StageBits.Lowest(wantedStages ^ StagesClosed);

    /// <summary>True if the contact that the current is to prove was seen closed and is open again.</summary>
    public bool HasUnprovenStageOpened => _current.HasSeenStage && (_current.UnprovenStage & ~_stagesSeen) != 0;

    /// <summary>True if the coil of a stage was on when the contacts were compared last.</summary>
    public bool IsStageCommanded(int stage) => (_stagesCommanded & StageBits.Of(stage)) != 0;

    private void UpdateLine(int elapsedMicroseconds, Readings readings, bool commanded)
    {
        if (commanded != _lineCommanded)
        {
            _lineMicroseconds = 0;
            LineClosed = true;
        }

        _lineCommanded = commanded;
        if (_hasLineContact)
        {
            LineClosed = readings.LineClosed;
            _lineMicroseconds = LineClosed == commanded ? 0 : Elapsed.Add(_lineMicroseconds, elapsedMicroseconds);
        }
        else if (commanded)
        {
            // The proof by current raises its own fault when nothing flows.
            LineClosed = _current.IsLineSeen;
            _lineMicroseconds = 0;
        }
        else if (LineClosed)
        {
            _lineMicroseconds = Elapsed.Add(_lineMicroseconds, elapsedMicroseconds);
            if (!LineFailed || !IsZero(readings.ArmatureAmps)) return;
            LineClosed = false;
            _lineMicroseconds = 0;
        }
    }

    private void UpdateStages(int elapsedMicroseconds, Readings readings, int commanded)
    {
        if (commanded != _stagesCommanded) _stagesMicroseconds = 0;
        int seen = _hasStageContacts ? readings.StagesClosed : SeenStages(elapsedMicroseconds, commanded);
        _stagesCommanded = commanded;
        _stagesSeen = seen;
        StagesClosed = _usesCurrent ? seen & ~_current.UnprovenStage : seen;
        if (_hasStageContacts) _stagesMicroseconds = seen == commanded ? 0 : Elapsed.Add(_stagesMicroseconds, elapsedMicroseconds);
    }

    private bool IsOver(int microseconds) => microseconds >= _settings.ContactMicroseconds;

    // Without auxiliary contacts a released one counts as open when its time is over: a weld shows at the next closing.
    private int SeenStages(int elapsedMicroseconds, int commanded)
    {
        if ((StagesClosed & ~commanded) == 0) return commanded;
        _stagesMicroseconds = Elapsed.Add(_stagesMicroseconds, elapsedMicroseconds);
        return !IsOver(_stagesMicroseconds) ? commanded | StagesClosed : commanded;
    }

    private void UpdateBrake(int elapsedMicroseconds, Readings readings, bool commanded)
    {
        if (commanded != _brakeCommanded) _brakeDiffers.Lasts(false, 0, 0);
        bool seen = _settings.BrakeContactFitted ? readings.BrakeClosed : BrakeClosed;
        bool isOver = _brakeDiffers.Lasts(seen != commanded, elapsedMicroseconds, _settings.ContactMicroseconds);
        // Without an auxiliary contact it counts as closed at once when commanded, and as open when time and current say so.
        if (!_settings.BrakeContactFitted && (commanded || (isOver && IsZero(readings.ArmatureAmps)))) seen = commanded;
        BrakeClosed = seen;
        BrakeFailed = isOver && seen != commanded;
    }

    private void UpdateField(int elapsedMicroseconds, Readings readings, bool commanded)
    {
        if (commanded != _fieldCommanded) _fieldDiffers.Lasts(false, 0, 0);
        FieldFailed = _fieldDiffers.Lasts(readings.FieldClosed != commanded, elapsedMicroseconds, _settings.ContactMicroseconds);
    }

    private bool IsZero(float amps) => Magnitude.Of(amps) <= _settings.ZeroAmps;
}
