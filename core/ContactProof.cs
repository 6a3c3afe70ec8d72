namespace StarterCtl.Core;

/// <summary>Times how long each contact disagrees with its coil.</summary>
public sealed class ContactProof
{
    // Bits of the feedback. Those behind the stage count belong to no coil and must say open like any other.
    private const int FeedbackBits = 32;

    private readonly Settings _settings;
    private bool _lineCommanded;
    private int _stagesCommanded;
    private int _lineMicroseconds;
    private int _stagesMicroseconds;

    /// <summary>Builds the timers on checked settings.</summary>
    public ContactProof(Settings settings)
    {
        _settings = settings;
    }

    /// <summary>Time left until the line contact's disagreement counts as a fault, microseconds.</summary>
    public int LineMicrosecondsLeft => _settings.ContactMicroseconds - _lineMicroseconds;

    /// <summary>Time left until a stage contact's disagreement counts as a fault, microseconds.</summary>
    public int StagesMicrosecondsLeft => _settings.ContactMicroseconds - _stagesMicroseconds;

    /// <summary>True once the line contact has disagreed with its coil for the contact time.</summary>
    public bool LineFailed => _lineMicroseconds >= _settings.ContactMicroseconds;

    /// <summary>True once a stage contact has disagreed with its coil for the contact time.</summary>
    public bool StagesFailed => _stagesMicroseconds >= _settings.ContactMicroseconds;

    /// <summary>True if the line coil was on when its contact was compared last.</summary>
    public bool LineCommanded => _lineCommanded;

    /// <summary>Compares contacts with the coils as the last tick left them.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="coils">The interlock, with the coils as the last tick left them.</param>
    public void Update(int elapsedMicroseconds, Readings readings, Interlock coils)
    {
        bool lineAgrees = coils.LineCommanded == readings.LineClosed;
        if (lineAgrees || coils.LineCommanded != _lineCommanded) _lineMicroseconds = 0;
        _lineCommanded = coils.LineCommanded;
        if (!lineAgrees) _lineMicroseconds = Elapsed.Add(_lineMicroseconds, elapsedMicroseconds);

        bool stagesAgree = coils.StagesCommanded == readings.StagesClosed;
        if (stagesAgree || coils.StagesCommanded != _stagesCommanded) _stagesMicroseconds = 0;
        _stagesCommanded = coils.StagesCommanded;
        if (!stagesAgree) _stagesMicroseconds = Elapsed.Add(_stagesMicroseconds, elapsedMicroseconds);
    }

    /// <summary>Lowest stage whose contact disagrees with its coil, counted from 1; 0 when all agree.</summary>
    public int FirstDisagreeingStage(Readings readings) => FirstStage(_stagesCommanded ^ readings.StagesClosed);

    /// <summary>Lowest stage whose contact is closed against its coil, counted from 1; 0 when there is none.</summary>
    public int FirstStrayStage(Readings readings) => FirstStage(readings.StagesClosed & ~_stagesCommanded);

    /// <summary>True if the coil of a stage was on when the contacts were compared last.</summary>
    public bool IsStageCommanded(int stage) => (_stagesCommanded & (1 << (stage - 1))) != 0;

    private static int FirstStage(int bits)
    {
        for (int stage = 1; stage <= FeedbackBits; stage++)
        {
            if ((bits & (1 << (stage - 1))) != 0) return stage;
        }

        return 0;
    }
}
