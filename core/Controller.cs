namespace StarterCtl.Core;

/// <summary>
/// The starter's control core. One call of <see cref="Tick"/> per control period: readings in, outputs out, and the
/// reason why. Allocates nothing and throws nothing after construction; the same readings give the same outputs, bit for
/// bit, on the board and on the desk.
/// </summary>
public sealed class Controller
{
    private readonly Estimator _estimator;
    private readonly ContactProof _contacts;
    private readonly Protector _protector;
    private readonly FaultLatch _faults = new FaultLatch();
    private readonly Explanation _why = new Explanation();
    private readonly Estimate _estimate = new Estimate();
    private readonly Sequencer _sequencer;
    private readonly Interlock _interlock = new Interlock();
    private readonly SettingId _settingsProblem;

    /// <summary>Builds a controller. Settings that fail their check give one that stays <see cref="Phase.NotSetUp"/>.</summary>
    /// <param name="settings">Settings; must not change afterwards.</param>
    public Controller(Settings settings)
    {
        _settingsProblem = settings.FirstProblem();
        _estimator = new Estimator(settings);
        _contacts = new ContactProof(settings);
        _protector = new Protector(settings, _contacts);
        _sequencer = new Sequencer(settings, _contacts, _faults, _why);
        if (_settingsProblem != SettingId.None) _sequencer.Phase = Phase.NotSetUp;
    }

    /// <summary>Present phase.</summary>
    public Phase Phase => _sequencer.Phase;

    /// <summary>Stage in effect, 1 to the stage count; stage count + 1 once all resistance is out.</summary>
    public int Stage => _sequencer.Stage;

    /// <summary>Why a press of start would be refused, while ready.</summary>
    public Refusal Refusals => _sequencer.Refusals;

    /// <summary>The reason of the last tick, with its numbers.</summary>
    public Explanation Why => _why;

    /// <summary>The estimates of the last tick.</summary>
    public Estimate Estimate => _estimate;

    /// <summary>The first fault, if one is latched.</summary>
    public FaultLatch Fault => _faults;

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
        _estimator.Update(elapsedMicroseconds, readings, _sequencer.Stage - 1, _estimate);
        _contacts.Update(elapsedMicroseconds, readings, _interlock);
        _protector.Check(readings);
        if (_protector.Present != FaultId.None)
        {
            _faults.Raise(_protector.Present, _protector.PresentValue, _protector.PresentLimit, _sequencer.Phase, _sequencer.Stage);
        }

        _sequencer.Decide(elapsedMicroseconds, readings, _estimate, _protector.Present != FaultId.None);
        _interlock.Apply(_sequencer, _faults.IsLatched, readings, outputs);
    }

    private void StayOff(Outputs outputs)
    {
        _why.Set(Reason.SettingsInvalid, (int)_settingsProblem, 0f, 0);
        outputs.AllOff();
        outputs.TrippedLamp = true;
    }
}
