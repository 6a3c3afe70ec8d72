namespace StarterCtl.Core;

/// <summary>The sequence: one step of the present phase per tick. Stop and a latched fault come before everything else.</summary>
public sealed class Sequencer
{
    private readonly Sequence _sequence;
    private readonly ContactProof _contacts;
    private readonly FaultLatch _faults;
    private readonly ReadyPhase _ready;
    private readonly FieldBuildingPhase _fieldBuilding;
    private readonly AcceleratingPhase _accelerating;
    private readonly RunningPhase _running;
    private readonly StoppingPhase _stopping;
    private readonly BrakingPhase _braking;
    private readonly TrippedPhase _tripped;
    // Held inputs count as pressed before the first tick: a button that is stuck at power-up starts and resets nothing.
    private bool _startWasPressed = true;
    private bool _resetWasPressed = true;

    /// <summary>Builds every phase on checked settings.</summary>
    public Sequencer(
        Settings settings, Sequence sequence, ContactProof contacts, CurrentProof current, PeakLaw law, Protector protector,
        StartCounter starts, FaultLatch faults, EventLog log, Explanation why)
    {
        _sequence = sequence;
        _contacts = contacts;
        _faults = faults;
        ContactWait waits = new ContactWait(sequence, contacts, law, why);
        SupplyDip dip = new SupplyDip(settings, sequence, law, protector.Supply, log, why);
        _ready = new ReadyPhase(settings, sequence, contacts, protector, starts, why);
        _fieldBuilding = new FieldBuildingPhase(settings, sequence, why);
        _running = new RunningPhase(settings, sequence, waits, dip, why);
        _accelerating = new AcceleratingPhase(settings, sequence, contacts, current, law, waits, dip, _running, protector.Motion, log, why);
        _stopping = new StoppingPhase(settings, sequence, contacts, why);
        _braking = new BrakingPhase(settings, sequence, contacts, why);
        _tripped = new TrippedPhase(sequence, contacts, faults, log, why);
    }

    /// <summary>One decision.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="readings">Readings of this tick.</param>
    /// <param name="estimate">Estimates of this tick.</param>
    /// <param name="causePresent">True while the cause of any fault is there.</param>
    public void Decide(int elapsedMicroseconds, Readings readings, Estimate estimate, bool causePresent)
    {
        bool startEdge = readings.StartPressed && !_startWasPressed;
        bool resetEdge = readings.ResetPressed && !_resetWasPressed;
        _startWasPressed = readings.StartPressed;
        _resetWasPressed = readings.ResetPressed;
        _sequence.Refusals = Refusal.None;

        if (_faults.IsLatched && _sequence.Phase != Phase.Tripped) _sequence.Enter(Phase.Tripped);
        switch (_sequence.Phase)
        {
            case Phase.Ready:
                if (_ready.Step(readings, estimate, startEdge)) BeginStart(readings, estimate);
                break;
            case Phase.FieldBuilding:
                if (readings.StopPressed) _stopping.Begin();
                else if (_fieldBuilding.Step(elapsedMicroseconds, readings)) BeginAccelerating(readings, estimate);
                break;
            case Phase.Accelerating:
                if (readings.StopPressed) _stopping.Begin();
                else if (_contacts.LineCommanded || !_fieldBuilding.TripIfLost(readings)) _accelerating.Step(elapsedMicroseconds, readings, estimate);
                break;
            case Phase.Running:
                if (readings.StopPressed) _stopping.Begin();
                else _running.Step(readings, estimate);
                break;
            case Phase.Stopping:
                if (_stopping.Step(elapsedMicroseconds, readings, estimate)) EnterReady(readings, estimate);
                break;
            case Phase.Braking:
                _braking.Step(elapsedMicroseconds, readings, estimate);
                break;
            default:
                if (_tripped.Step(readings, resetEdge, causePresent)) EnterReady(readings, estimate);
                break;
        }
    }

    private void BeginStart(Readings readings, Estimate estimate)
    {
        if (!_fieldBuilding.IsNeeded)
        {
            BeginAccelerating(readings, estimate);
            return;
        }

        _sequence.Enter(Phase.FieldBuilding);
        if (_fieldBuilding.Step(0, readings)) BeginAccelerating(readings, estimate);
    }

    private void BeginAccelerating(Readings readings, Estimate estimate)
    {
        _sequence.Enter(Phase.Accelerating);
        _accelerating.Step(0, readings, estimate);
    }

    // The press that may have been made on this tick was not made in Ready: it counts as held.
    private void EnterReady(Readings readings, Estimate estimate)
    {
        _sequence.Enter(Phase.Ready);
        _ready.Step(readings, estimate, false);
    }
}
