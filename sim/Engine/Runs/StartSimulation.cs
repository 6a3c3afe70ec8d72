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
public sealed class StartSimulation : IPlantWatch
{
    private const int TicksBetweenReports = 4096;

    // A run that rounding puts just beyond a tick ends with it.
    private const double TimeRounding = 1e-12;

    private readonly RunSetup _setup;
    private readonly Controller _controller;
    private readonly Readings _readings;
    private readonly Outputs _outputs = new();
    private readonly PlantSide _side;
    private readonly PlantSolver _plant;
    private readonly RunLog _log;
    private readonly ISampleSink? _record;
    private readonly Trace? _trace;
    private readonly bool _isKept;
    private readonly double _periodSeconds;
    private readonly long _ticksPerSample;
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
        _side = new PlantSide(setup, this);
        _plant = _side.Plant;
        _readings = _side.Readings;
        _log = new RunLog(_controller, _plant);
        _periodSeconds = setup.PeriodMicroseconds * 1e-6;
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

    void IPlantWatch.BeforeChange(double now, int closing) => _log.BeforeChange(now, closing);

    void IPlantWatch.AfterChange(double now) => _log.AfterChange(now);

    void IPlantWatch.Bounced(double now) => _log.Bounced(now);

    void IPlantWatch.Happened(RunEvent happening, double now) => _log.Happened(happening, now);

    // As last read: otherwise a picture would draw a slope from the last kept sample, long ago, to the change.
    void IPlantWatch.Leaving()
    {
        if (_trace != null) _trace.Add(Sampled(_tickSeconds));
    }

    void IPlantWatch.Changed(double now) => _trace?.Changed(now);

    private RunResult Run(IProgress<double>? progress, CancellationToken cancellation)
    {
        // The controller is powered for one tick before the case begins, so that a press of start at 0 is an edge.
        Tick(0, -_periodSeconds, true);
        if (_side.IsWaiting) LookAtConditions(-_periodSeconds);
        if (!_setup.Events.Any(happening => happening.Command == OperatorCommand.Start)) _side.Obey(OperatorCommand.Start, 0);
        _side.Happen(0);

        long ticks = (long)Math.Ceiling(_setup.DurationSeconds / _periodSeconds - TimeRounding / _periodSeconds);
        RandomNumbers? lateness = _setup.Jitter?.Numbers();
        double now = 0, seconds = _periodSeconds;
        int elapsed = _setup.PeriodMicroseconds, late = 0;
        for (long tick = 0; tick <= ticks; tick++)
        {
            Tick(elapsed, now, _record != null && tick % _ticksPerSample == 0);
            if (tick == ticks) break;
            if (_side.IsWaiting) LookAtConditions(now);
            double end = (tick + 1) * _periodSeconds;
            if (lateness != null)
            {
                // The last tick is on time, so that the run ends where it should.
                int next = tick + 1 == ticks ? 0 : _setup.Jitter!.Next(lateness);
                elapsed = _setup.PeriodMicroseconds + next - late;
                late = next;
                end += late * 1e-6;
                seconds = elapsed * 1e-6;
            }

            _side.Advance(now, end, seconds);
            _log.Advanced(end);
            now = end;
            if (tick % TicksBetweenReports == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)tick / ticks);
            }
        }

        double durationSeconds = ticks * _periodSeconds;
        _side.End(durationSeconds);
        return _log.Result(durationSeconds) with { EventsLeft = _side.EventsLeft, Temperatures = _side.TemperatureCourses };
    }

    private void Tick(int elapsedMicroseconds, double now, bool keep)
    {
        _side.Read(now);
        _tickSeconds = now;
        if (_isKept) _tickNewtonMetres = _plant.Constant * (float)_plant.ArmatureAmps;
        _elapsedMicroseconds = elapsedMicroseconds;
        _controller.Tick(elapsedMicroseconds, _readings, _outputs);
        int cutouts = _side.Command(_outputs, now);
        if (_log.Tick(now, cutouts)) _trace?.Changed(now);
        if (_isKept) Keep(now, keep);
        _side.MoveContacts(now);
    }

    private void Keep(double now, bool isSample)
    {
        if (isSample) _record?.Add(Sampled(now));
        if (_trace != null && _trace.Wants(now)) _trace.Add(Sampled(now));
    }

    private void LookAtConditions(double now)
    {
        bool isStarted = _controller.Phase is Phase.Accelerating or Phase.Running;
        _side.LookAtConditions(now, isStarted ? _controller.Stage : 0);
    }

    private Sample Sampled(double now)
    {
        Sample sample = new()
        {
            TimeSeconds = now,
            TorqueNewtonMetres = _tickNewtonMetres,
            LoadTorqueNewtonMetres = _plant.LoadTorqueNewtonMetres,
            ArmatureCelsius = (float)_side.ArmatureCelsius,
            FieldCelsius = (float)_side.FieldCelsius,
            HottestSectionCelsius = (float)_side.HottestSectionCelsius,
        };
        ControllerTick.PutReadings(ref sample, _elapsedMicroseconds, _readings);
        ControllerTick.PutDecisions(ref sample, _controller, _outputs);
        return sample;
    }
}
