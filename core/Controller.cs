namespace StarterCtl.Core;

/// <summary>
/// The starter's control core. One call of <see cref="Tick"/> per control period: readings in, outputs out, and the
/// reason why. Allocates nothing and throws nothing after construction; the same readings give the same outputs, bit for
/// bit, on the board and on the desk.
/// </summary>
public sealed class Controller
{
    private readonly Uptime _uptime = new Uptime();
    private readonly EventLog _log;
    private readonly FaultLatch _faults;
    private readonly Explanation _why = new Explanation();
    private readonly Estimate _estimate = new Estimate();
    private readonly Sequence _sequence;
    private readonly CurrentProof _current;
    private readonly ContactProof _contacts;
    private readonly Estimator _estimator;
    private readonly PeakLaw _law;
    private readonly Protector _protector;
    private readonly Sequencer _sequencer;
    private readonly Interlock _interlock;
    private readonly SettingId _settingsProblem;

    /// <summary>Builds a controller. Settings that fail their check give one that stays <see cref="Phase.NotSetUp"/>.</summary>
    /// <param name="settings">Settings; must not change afterwards.</param>
    public Controller(Settings settings)
    {
        _settingsProblem = settings.FirstProblem();
        // What is built below must not touch values that failed their check.
        if (_settingsProblem != SettingId.None) settings = new Settings();
        _log = new EventLog(_uptime);
        _faults = new FaultLatch(_log);
        _sequence = new Sequence(_faults, _log, _why);
        _current = new CurrentProof(settings);
        _contacts = new ContactProof(settings, _current);
        _estimator = new Estimator(settings, _contacts);
        _law = new PeakLaw(settings, _estimate);
        _protector = new Protector(settings, _contacts, _current, _log);
        StartCounter starts = new StartCounter(settings.StartsPerHour, _uptime);
        _sequencer = new Sequencer(settings, _sequence, _contacts, _current, _law, _protector, starts, _faults, _log, _why);
        _interlock = new Interlock(settings);
        if (_settingsProblem == SettingId.None) return;
        _sequence.GoTo(Phase.NotSetUp);
        _faults.Raise(FaultId.SettingsInvalid, (int)_settingsProblem, 0f, Phase.NotSetUp, 0);
    }

    /// <summary>Present phase.</summary>
    public Phase Phase => _sequence.Phase;

    /// <summary>Stage in effect, 1 to the stage count; stage count + 1 once all resistance is out.</summary>
    public int Stage => _sequence.Stage;

    /// <summary>Why a press of start would be refused, while ready.</summary>
    public Refusal Refusals => _sequence.Refusals;

    /// <summary>The reason of the last tick, with its numbers.</summary>
    public Explanation Why => _why;

    /// <summary>The estimates of the last tick.</summary>
    public Estimate Estimate => _estimate;

    /// <summary>The first fault, if one is latched.</summary>
    public FaultLatch Fault => _faults;

    /// <summary>The last events.</summary>
    public EventLog Log => _log;

    /// <summary>Heat of motor and starting resistor. A board that kept the levels over a power loss writes them back here once.</summary>
    public HeatWatch Heat => _protector.Heat;

    /// <summary>Runs one control period.</summary>
    /// <param name="elapsedMicroseconds">Time since the last tick; any value is handled, negative counts as 0.</param>
    /// <param name="readings">Readings of this tick, of any value.</param>
    /// <param name="outputs">Receives this tick's commands.</param>
    public void Tick(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        if (_settingsProblem != SettingId.None)
        {
            StayOff(outputs);
            return;
        }

        elapsedMicroseconds = Elapsed.Clamp(elapsedMicroseconds);
        _uptime.Advance(elapsedMicroseconds);
        _estimator.Update(elapsedMicroseconds, readings, _sequence.Stage - 1, _estimate);
        _law.Update(readings);
        _contacts.Update(elapsedMicroseconds, readings, _estimate, _interlock);
        _protector.Check(elapsedMicroseconds, readings, _estimate, _sequence);

        bool wasLatched = _faults.IsLatched;
        bool isPresent = _protector.Present != FaultId.None;
        if (isPresent) LatchPresent(wasLatched);
        _sequencer.Decide(elapsedMicroseconds, readings, _estimate, isPresent);
        if (_faults.IsLatched && !wasLatched) _faults.Snapshot.Take(_uptime.Seconds, readings, _estimate, _interlock);
        _interlock.Apply(_sequence, _faults.IsLatched, readings, _contacts, _law, outputs);
    }

    private void LatchPresent(bool wasLatched)
    {
        if (wasLatched && !_protector.IsPresentNew) return;
        _faults.Raise(_protector.Present, _protector.PresentValue, _protector.PresentLimit, _sequence.Phase, _sequence.Stage);
        if (!wasLatched) _faults.Channel = _protector.PresentChannel;
    }

    private void StayOff(Outputs outputs)
    {
        _why.Set(Reason.SettingsInvalid, (int)_settingsProblem, 0f, 0);
        outputs.StayOff(true);
    }
}
