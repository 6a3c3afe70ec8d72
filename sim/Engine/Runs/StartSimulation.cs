using System;
using System.Linq;
using System.Threading;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// The clock master: senses the machine, ticks the controller, moves contacts, carries the machine on. The controller is
/// the board's own; nothing here decides.
/// </summary>
public sealed class StartSimulation
{
    private const int TicksBetweenReports = 4096;

    // A happening that rounding puts just behind a tick belongs to the tick.
    private const double TimeRounding = 1e-12;

    private readonly RunSetup _setup;
    private readonly Controller _controller;
    private readonly Readings _readings = new();
    private readonly Outputs _outputs = new();
    private readonly PlantSolver _plant;
    private readonly ContactorBank _contactors;
    private readonly SensorPanel _sensors;
    private readonly OperatorPanel _panel = new();
    private readonly RunLog _log;
    private readonly ISampleSink? _record;
    private readonly Trace? _trace;
    private readonly bool _isKept;
    private readonly double _periodSeconds;
    private readonly long _ticksPerSample;
    private readonly ComingEvents _events;
    private readonly Surroundings _surroundings;
    private readonly Temperatures? _temperatures;
    private double _plannedSeconds;
    private bool _isWaiting;
    private bool _isRamping;
    private double _tickSeconds;
    private int _elapsedMicroseconds;
    private double _tickNewtonMetres;

    private StartSimulation(RunSetup setup, Settings settings, ISampleSink? record, Trace? trace)
    {
        _setup = setup;
        _record = record;
        _trace = trace;
        _isKept = record != null || trace != null;
        _controller = new Controller(settings);
        _plant = new PlantSolver(
            new PlantConditions(setup.Machine, setup.Load, setup.Supply, setup.SectionOhms, false, 0)
            {
                BrakeOhms = setup.BrakeOhms ?? double.PositiveInfinity,
                ArcVolts = setup.Contactors.ArcVolts,
                Field = setup.Field,
                IsFieldClosed = setup.Field is not { HasContactor: true },
            },
            setup.InitialSpeedRadPerSec);
        _surroundings = new Surroundings(setup);
        if (setup.Heat is ThermalSetup heat) _temperatures = new Temperatures(setup, heat);
        _contactors = new ContactorBank(setup.Contactors, setup.SectionOhms.Count);
        _sensors = new SensorPanel(setup);
        _log = new RunLog(_controller, _plant);
        _periodSeconds = setup.PeriodMicroseconds * 1e-6;
        _events = new ComingEvents(setup.Events);
        LookAhead();
        _ticksPerSample = record == null ? long.MaxValue : Math.Max(1, record.PeriodMicroseconds / setup.PeriodMicroseconds);
    }

    /// <summary>Runs a start from beginning to end. A case without a start event is started at 0.</summary>
    /// <param name="setup">Machine, load, supply, contactors, events.</param>
    /// <param name="settings">The controller's settings.</param>
    /// <param name="record">Receives samples at its period; null keeps none.</param>
    /// <param name="trace">Receives samples where something happens; null keeps none.</param>
    /// <param name="progress">Told now and then which part of the run is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run with an <see cref="OperationCanceledException"/>.</param>
    public static RunResult Run(
        RunSetup setup,
        Settings settings,
        ISampleSink? record = null,
        Trace? trace = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default) =>
        new StartSimulation(setup, settings, record, trace).Run(progress, cancellation);

    private RunResult Run(IProgress<double>? progress, CancellationToken cancellation)
    {
        // The controller is powered for one tick before the case begins, so that a press of start at 0 is an edge.
        Tick(0, -_periodSeconds, true);
        if (_isWaiting) LookAtConditions(-_periodSeconds);
        if (!_setup.Events.Any(happening => happening.Command == OperatorCommand.Start)) _panel.Obey(OperatorCommand.Start, 0);
        Happen(0);

        long ticks = (long)Math.Ceiling(_setup.DurationSeconds / _periodSeconds - TimeRounding / _periodSeconds);
        for (long tick = 0; tick <= ticks; tick++)
        {
            double now = tick * _periodSeconds;
            Tick(_setup.PeriodMicroseconds, now, _record != null && tick % _ticksPerSample == 0);
            if (tick == ticks) break;
            if (_isWaiting) LookAtConditions(now);
            double end = (tick + 1) * _periodSeconds;
            double last = end + TimeRounding;
            if (_contactors.NextMoveSeconds > last && _plannedSeconds > last) AdvancePlant(now, end, _periodSeconds);
            else AdvanceWithHappenings(now, end);
            _log.Advanced(end);
            if (tick % TicksBetweenReports == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)tick / ticks);
            }
        }

        double durationSeconds = ticks * _periodSeconds;
        _temperatures?.End(durationSeconds, _plant);
        return _log.Result(durationSeconds) with { EventsLeft = _events.Left, Temperatures = _temperatures?.Courses ?? [] };
    }

    private void Tick(int elapsedMicroseconds, double now, bool keep)
    {
        Sense(now);
        _tickSeconds = now;
        if (_isKept) _tickNewtonMetres = _plant.Constant * (float)_plant.ArmatureAmps;
        _elapsedMicroseconds = elapsedMicroseconds;
        _controller.Tick(elapsedMicroseconds, _readings, _outputs);
        int cutouts = _contactors.Command(_outputs, now);
        if (_log.Tick(now, cutouts)) _trace?.Changed(now);
        if (_isKept) Keep(now, keep);
        if (_contactors.NextMoveSeconds > now) return;
        MoveContacts(now);
        Warm(now);
    }

    private void Keep(double now, bool isSample)
    {
        if (isSample) _record?.Add(Sampled(now));
        if (_trace != null && _trace.Wants(now)) _trace.Add(Sampled(now));
    }

    private void Sense(double now)
    {
        _sensors.Show(_plant, _readings, now);
        _contactors.Show(_readings);
        _panel.Show(now, _readings);
    }

    // Happenings inside the period split it; those of its last instant are there when the next tick reads.
    private void AdvanceWithHappenings(double now, double end)
    {
        double last = end + TimeRounding;
        double at = now;
        for (double next = NextHappening(); next <= last; next = NextHappening())
        {
            if (next > at) AdvancePlant(at, next, next - at);
            at = Math.Max(at, next);
            if (_surroundings.NextSeconds <= at) SettleRamps(at);
            MoveContacts(at);
            Happen(at);
            Warm(at);
        }

        if (at == now) AdvancePlant(at, end, _periodSeconds);
        else if (end > at) AdvancePlant(at, end, end - at);
    }

    private double NextHappening() => Math.Min(_contactors.NextMoveSeconds, _plannedSeconds);

    // What every tick asks for stands here, so that a run without any of it pays nothing.
    private void LookAhead()
    {
        _plannedSeconds = Math.Min(_events.NextSeconds, _surroundings.NextSeconds);
        if (_temperatures != null) _plannedSeconds = Math.Min(_plannedSeconds, _temperatures.NextSeconds);
        _isWaiting = _events.IsWaiting;
        _isRamping = _surroundings.IsMoving;
    }

    private void AdvancePlant(double from, double to, double seconds)
    {
        if (_isRamping) _plant.Change(_surroundings.At((from + to) / 2, _plant.Conditions));
        _plant.Advance(seconds);
    }

    // Whatever happened at this instant ends the span over which the temperatures were foreseen.
    private void Warm(double now)
    {
        if (_temperatures == null) return;
        _temperatures.End(now, _plant);
        PlantConditions warmed = _temperatures.Begin(now, _plant);
        if (!ReferenceEquals(warmed, _plant.Conditions)) _plant.Change(warmed);
        _sensors.Feel(_temperatures.HottestSectionCelsius);
        LookAhead();
    }

    // A ramp's last step held the middle of its span; from here on it is where it went.
    private void SettleRamps(double now)
    {
        _surroundings.Settle(now);
        LookAhead();
        _plant.Change(_surroundings.At(now, _plant.Conditions));
        _trace?.Changed(now);
    }

    private void LookAtConditions(double now)
    {
        bool isStarted = _controller.Phase is Phase.Accelerating or Phase.Running;
        _events.Look(now, _plant.SpeedRadPerSec, isStarted ? _controller.Stage : 0);
        LookAhead();
    }

    private void MoveContacts(double now)
    {
        if (_contactors.NextMoveSeconds > now) return;
        KeepBeforeChange();
        int closing = _contactors.Move(now);
        bool hasSwitched = _contactors.HasSwitched;
        if (hasSwitched) _log.BeforeChange(now, closing);
        else _log.Bounced(now);
        _plant.Change(_plant.Conditions with
        {
            LineClosed = _contactors.LineClosed,
            StagesClosed = _contactors.StagesClosed,
            BrakeClosed = _contactors.BrakeClosed,
            IsFieldClosed = IsFieldClosed,
        });
        if (hasSwitched) _log.AfterChange(now);
        else _log.Bounced(now);
        _trace?.Changed(now);
    }

    private void Happen(double now)
    {
        if (_plannedSeconds > now) return;
        while (_events.NextSeconds <= now)
        {
            RunEvent happening = _events.Take();
            if (Surroundings.IsConcerned(happening)) ChangeSurroundings(happening, now);
            if (happening.ContactFault is ContactFault fault) _contactors.Fail(fault, now);
            if (happening.CoilVoltageRatio is double ratio) _contactors.Feed(ratio, now);
            _temperatures?.Obey(happening, now, _plant);
            _sensors.Obey(happening, _readings);
            _log.Happened(happening, now);
            if (happening.Command is OperatorCommand command) _panel.Obey(command, now);
        }

        LookAhead();
    }

    private void ChangeSurroundings(RunEvent happening, double now)
    {
        KeepBeforeChange();
        _log.BeforeChange(now, 0);
        PlantConditions changed = _surroundings.Obey(happening, now, _plant);
        _plant.Change(changed with { IsFieldClosed = IsFieldClosed });
        _log.AfterChange(now);
        _trace?.Changed(now);
    }

    private bool IsFieldClosed => !_surroundings.IsFieldBroken && (_setup.Field is not { HasContactor: true } || _contactors.FieldClosed);

    // As last read: otherwise a picture would draw a slope from the last kept sample, long ago, to the change.
    private void KeepBeforeChange()
    {
        if (_trace != null) _trace.Add(Sampled(_tickSeconds));
    }

    private Sample Sampled(double now)
    {
        Sample sample = new()
        {
            TimeSeconds = now,
            TorqueNewtonMetres = _tickNewtonMetres,
            LoadTorqueNewtonMetres = _plant.LoadTorqueNewtonMetres,
            ArmatureCelsius = Celsius(_temperatures?.ArmatureCelsius),
            FieldCelsius = Celsius(_temperatures?.FieldCelsius),
            HottestSectionCelsius = Celsius(_temperatures?.HottestSectionCelsius),
        };
        ControllerTick.PutReadings(ref sample, _elapsedMicroseconds, _readings);
        ControllerTick.PutDecisions(ref sample, _controller, _outputs);
        return sample;
    }

    private static float Celsius(double? celsius) => (float)(celsius ?? double.NaN);
}
