using System;
using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>Watches a run and sums it up: phases, reasons, cutouts, faults, peaks, energies.</summary>
internal sealed class RunLog
{
    private readonly Controller _controller;
    private readonly Explanation _why;
    private readonly PlantSolver _plant;
    private readonly double _initialSpeed;
    private readonly SpeedHistory _speeds = new();
    private readonly List<TimelineEntry> _timeline = [];
    private readonly List<PhaseEntry> _phases = [];
    private readonly List<FaultEntry> _faults = [];
    private readonly List<Cutout> _cutouts = [];
    private readonly double[] _commandSeconds = new double[Settings.MostStages];
    private readonly double[] _thresholdSeconds = new double[Settings.MostStages];
    private Phase _phase = (Phase)(-1);
    private int _stage;
    private Reason _reason;
    private FaultId _fault;
    private double _marginVolts;
    private double _marginSeconds;
    private int _marginStage;
    private double _crossedSeconds;
    private double _peakAmps;
    private double _peakTorque;
    private bool _isAfterCutout;

    public RunLog(Controller controller, PlantSolver plant)
    {
        _controller = controller;
        _why = controller.Why;
        _plant = plant;
        _initialSpeed = plant.SpeedRadPerSec;
        Advanced(0);
    }

    /// <summary>Notes what the controller decided.</summary>
    /// <param name="now">Time of the tick, s.</param>
    /// <param name="cutouts">Stages newly commanded on this tick, as bits.</param>
    /// <returns>True when phase, stage or reason changed.</returns>
    public bool Tick(double now, int cutouts)
    {
        Phase phase = _controller.Phase;
        if (phase == Phase.Accelerating) FollowThreshold(now);
        else _marginStage = 0;
        if (cutouts != 0) NoteCutouts(now, cutouts);
        if (_why.Reason == _reason && phase == _phase && _controller.Stage == _stage) return false;
        NoteChange(now);
        return true;
    }

    /// <summary>Notes something that happened to the machine or the panel.</summary>
    public void Happened(RunEvent happening, double now) => _timeline.Add(Entry(now, happening));

    /// <summary>Notes the speed at the end of a control period.</summary>
    public void Advanced(double now)
    {
        if (_speeds.IsDue(_plant.SpeedRadPerSec)) KeepSpeed(now, false);
    }

    /// <summary>Notes the speed at a bounce of a contact, before and behind it: the current's peak goes on through it.</summary>
    public void Bounced(double now) => KeepSpeed(now, true);

    /// <summary>Sums up what lies before a change of the circuit, the supply or the load.</summary>
    /// <param name="now">Time of the change, s.</param>
    /// <param name="cutouts">Stage contacts that close with it, as bits.</param>
    public void BeforeChange(double now, int cutouts)
    {
        ClosePeak();
        KeepSpeed(now, true);
        if (!_plant.Conditions.LineClosed) return;
        for (int i = 0; cutouts >> i != 0; i++)
        {
            if ((cutouts & (1 << i)) == 0) continue;
            double rpm = _plant.SpeedRadPerSec * 30 / Math.PI;
            _cutouts.Add(new Cutout(i + 1, now, _thresholdSeconds[i], _commandSeconds[i], _plant.BackEmfVolts, rpm, _plant.ArmatureAmps, 0));
            _isAfterCutout = true;
        }
    }

    /// <summary>Begins the next span.</summary>
    /// <param name="now">Time of the change, s.</param>
    public void AfterChange(double now)
    {
        _plant.RestartPeak();
        KeepSpeed(now, true);
    }

    /// <summary>The result of the whole run.</summary>
    /// <param name="durationSeconds">Length of the run, s.</param>
    public RunResult Result(double durationSeconds)
    {
        ClosePeak();
        _plant.CloseBooks();
        EnergyAccount energy = _plant.Energy;
        double finalSpeed = _plant.SpeedRadPerSec;
        return new RunResult
        {
            Cutouts = _cutouts,
            PeakAmps = _peakAmps,
            PeakTorqueNewtonMetres = _peakTorque,
            SecondsToSpeed = finalSpeed > 0 && finalSpeed >= _initialSpeed ? _speeds.FirstReached(0.95 * finalSpeed) : null,
            FinalRpm = finalSpeed * 30 / Math.PI,
            FinalAmps = _plant.ArmatureAmps,
            RmsAmps = Math.Sqrt(energy.SquareAmpSeconds / durationSeconds),
            SectionJoules = [.. energy.SectionJoules],
            ArmatureJoules = energy.ArmatureJoules,
            BrushJoules = energy.BrushJoules,
            BrakeJoules = energy.BrakeJoules,
            FieldJoules = energy.FieldJoules,
            FieldMagneticJoules = _plant.FieldMagneticJoules - _plant.InitialFieldJoules,
            SupplyJoules = energy.SupplyJoules,
            SourceJoules = energy.SourceJoules,
            LoadJoules = energy.LoadJoules,
            KineticJoules = _plant.KineticJoules - _plant.InitialKineticJoules,
            MagneticJoules = _plant.MagneticJoules,
            ArcJoules = energy.ArcJoules,
            Phases = _phases,
            Faults = _faults,
            Timeline = _timeline,
        };
    }

    private void NoteCutouts(double now, int cutouts)
    {
        for (int i = 0; cutouts >> i != 0; i++)
        {
            if ((cutouts & (1 << i)) == 0) continue;
            _commandSeconds[i] = now;
            _thresholdSeconds[i] = Math.Min(_crossedSeconds, now);
        }
    }

    private void NoteChange(double now)
    {
        if (_controller.Phase != _phase) _phases.Add(new PhaseEntry(_controller.Phase, now, _why.Reason));
        FaultLatch fault = _controller.Fault;
        FaultEntry? latched = fault.Id != _fault && fault.IsLatched ? FaultEntry.Of(fault, now) : null;
        if (latched != null) _faults.Add(latched);
        _fault = fault.Id;
        _phase = _controller.Phase;
        _stage = _controller.Stage;
        _reason = _why.Reason;
        _timeline.Add(Entry(now, null) with { Fault = latched });
    }

    // The back-EMF crosses its threshold between two ticks; a straight line between them says when.
    private void FollowThreshold(double now)
    {
        Explanation why = _why;
        if (why.Reason is not (Reason.BackEmfBelowThreshold or Reason.MinimumDwell or Reason.Confirming or Reason.StageCutOut or Reason.CurrentAboveLockout)) return;

        // A lockout speaks of the current: the threshold is passed, by how much is not said.
        double margin = why.Reason == Reason.CurrentAboveLockout ? 0 : (double)why.Quantity - why.Limit;
        bool isFirst = _controller.Stage != _marginStage;
        if (margin >= 0 && isFirst) _crossedSeconds = now;
        else if (margin >= 0 && _marginVolts < 0) _crossedSeconds = _marginSeconds + (now - _marginSeconds) * _marginVolts / (_marginVolts - margin);
        _marginVolts = margin;
        _marginSeconds = now;
        _marginStage = _controller.Stage;
    }

    private void KeepSpeed(double now, bool isKink) => _speeds.Keep(now, _plant.SpeedRadPerSec, _plant.Acceleration, isKink);

    private TimelineEntry Entry(double now, RunEvent? happening)
    {
        return new TimelineEntry(
            now, _controller.Phase, _controller.Stage, _why.Reason, _why.Quantity, _why.Limit, _why.MicrosecondsLeft * 1e-6, _plant.ArmatureAmps, happening);
    }

    private void ClosePeak()
    {
        _peakAmps = Math.Max(_peakAmps, _plant.PeakAmps);
        _peakTorque = Math.Max(_peakTorque, _plant.PeakTorqueNewtonMetres);
        if (_isAfterCutout) _cutouts[^1] = _cutouts[^1] with { PeakAmpsAfter = _plant.PeakAmps };
        _isAfterCutout = false;
    }
}
