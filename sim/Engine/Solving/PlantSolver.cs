using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// Carries armature current and shaft speed through time. Closed form where the equations are linear, an adaptive method
/// of order 4 where they are not; the moments at which current or speed change sign, the shaft breaks away and the current
/// peaks are located inside the step.
/// </summary>
public sealed class PlantSolver
{
    /// <summary>Error allowed per step of the adaptive method, as a part of the locked-rotor current and of the no-load speed.</summary>
    public const double StepTolerance = 1e-9;

    private const double EventSeconds = 1e-12;
    private const double ShortestStep = 1e-12;
    private const double VoltRounding = 1e-12;
    private const double TurnRounding = 1e-10;
    private const double ExtremumTolerance = 1e-9;
    private const double AccelerationMargin = 4;
    private const int MostEventsPerAdvance = 1000;

    private static readonly Func<Regime, double, double, double> CurrentSlope = (regime, amps, speed) => regime.AmpsSlope(amps, speed);
    private static readonly Func<Regime, double, double, double> SpeedSlope = (regime, amps, speed) => regime.Acceleration(amps, speed);

    private PlantConditions _conditions;
    private ArmatureCircuit _circuit;
    private Regime _regime;
    private LinearStep? _wholeStep;
    private StepIntegrals _sums;
    private double _booksAmps;
    private double _booksSpeed;
    private double _booksSeconds;
    private double _amps;
    private double _speed;
    private double _ampsSlope;
    private double _adaptiveSeconds = 1e-4;
    private double _ampsScale;
    private double _speedScale;
    private double _steepestAcceleration;
    private double _signedAmps;
    private double _signedSpeed;
    private bool _isPlain;
    private PeakWatch _peaks;

    /// <summary>Starts from a speed, without current.</summary>
    /// <param name="conditions">Circuit, supply and load at the beginning.</param>
    /// <param name="speedRadPerSec">Speed at the beginning, rad/s.</param>
    public PlantSolver(PlantConditions conditions, double speedRadPerSec)
    {
        _conditions = conditions;
        _circuit = new ArmatureCircuit(conditions);
        _speed = speedRadPerSec;
        Energy = new EnergyAccount(conditions.SectionOhms.Count);
        InitialKineticJoules = KineticJoules;
        _regime = ChooseRegime();
        RestartPeak();
    }

    /// <summary>Circuit, supply and load now.</summary>
    public PlantConditions Conditions => _conditions;

    /// <summary>Armature current, A.</summary>
    public double ArmatureAmps => _amps;

    /// <summary>Shaft speed, rad/s.</summary>
    public double SpeedRadPerSec => _speed;

    /// <summary>True back-EMF, V.</summary>
    public double BackEmfVolts => _conditions.Machine.Constant * _speed;

    /// <summary>Torque that the current makes, N m.</summary>
    public double TorqueNewtonMetres => _conditions.Machine.Constant * _amps;

    /// <summary>Torque that the load takes, N m; at rest what it holds against.</summary>
    public double LoadTorqueNewtonMetres => _regime.Rotation == 0 ? TorqueNewtonMetres : _conditions.Load.TorqueAt(_speed);

    /// <summary>Current from the supply, A: the armature's while the line is closed and the brake open, none while the line is open.</summary>
    public double LineAmps => _circuit.LineAmps(_amps);

    /// <summary>Voltage at the starter's input terminals, V.</summary>
    public double TerminalVolts => _conditions.Supply.OpenCircuitVolts - _conditions.Supply.SourceOhms * LineAmps;

    /// <summary>dIa/dt, A/s.</summary>
    public double AmpsSlope => _ampsSlope;

    /// <summary>dw/dt, rad/s2.</summary>
    public double Acceleration => _regime.Acceleration(_amps, _speed);

    /// <summary>Where the energy went so far. Call <see cref="CloseBooks"/> before reading.</summary>
    public EnergyAccount Energy { get; }

    /// <summary>Kinetic energy of everything on the shaft, J.</summary>
    public double KineticJoules => 0.5 * _conditions.Machine.InertiaKgM2 * _speed * _speed;

    /// <summary>Kinetic energy at the beginning, J.</summary>
    public double InitialKineticJoules { get; }

    /// <summary>Magnetic energy of the armature, J.</summary>
    public double MagneticJoules => 0.5 * _conditions.Machine.ArmatureHenries * _amps * _amps;

    /// <summary>Largest magnitude of the current since the last <see cref="RestartPeak"/>, A, between steps too.</summary>
    public double PeakAmps => _peaks.Amps;

    /// <summary>Largest magnitude of the torque since the last <see cref="RestartPeak"/>, N m.</summary>
    public double PeakTorqueNewtonMetres => _peaks.NewtonMetres(_conditions.Machine.Constant);

    /// <summary>Forgets the peak; it begins again at the present current.</summary>
    public void RestartPeak() => _peaks.Restart(_amps);

    /// <summary>Books the energies up to now.</summary>
    public void CloseBooks()
    {
        // In a linear regime the integrals since the last closing are known exactly from where it began.
        if (_regime.IsLinear && _booksSeconds > 0) LinearIntegrals.Add(
                _regime, _booksSeconds, _booksAmps, _booksSpeed, _conditions.Load.ViscousNewtonMetreSeconds > 0, ref _sums);
        Energy.Book(_sums, _booksSeconds, _conditions, _circuit, _regime.Conduction, _regime.Rotation);
        OpenBooks();
    }

    /// <summary>Changes circuit, supply, load or flux at this instant.</summary>
    public void Change(PlantConditions conditions)
    {
        CloseBooks();
        double constantBefore = _conditions.Machine.Constant;
        _conditions = conditions;
        _circuit = new ArmatureCircuit(conditions);
        _regime = ChooseRegime();
        if (conditions.Machine.Constant != constantBefore) _peaks.ChangeFlux(constantBefore, _amps);
        _peaks.Note(_amps);
    }

    /// <summary>Goes forward in time.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public void Advance(double seconds)
    {
        double remaining = seconds;
        int events = 0;
        while (remaining > 0)
        {
            double wanted = _regime.IsLinear ? Math.Min(remaining, _regime.LongestStep) : remaining;
            double done = _regime.IsLinear ? AdvanceLinear(wanted) : AdvanceAdaptive(wanted);
            remaining -= done;
            if (done < wanted && ++events > MostEventsPerAdvance)
            {
                throw new InvalidOperationException("The solver makes no progress: the machine's data are out of any sensible range.");
            }
        }
    }

    private double AdvanceLinear(double seconds)
    {
        double amps = _amps, speed = _speed;
        WholeStep(seconds).Apply(ref amps, ref speed);
        return TryCommit(seconds, amps, speed, out double brokenSeconds) ? seconds : AdvanceToEvent(brokenSeconds);
    }

    // The control period is the span that comes back again and again; anything else is used once.
    private LinearStep WholeStep(double seconds)
    {
        if (_wholeStep == null || _wholeStep.Seconds != seconds) _wholeStep = new LinearStep(_regime, seconds);
        return _wholeStep;
    }

    private double AdvanceAdaptive(double seconds)
    {
        double done = 0;
        while (done < seconds)
        {
            double h = Math.Min(_adaptiveSeconds, seconds - done);
            bool shortened = h < _adaptiveSeconds;
            double amps = _amps, speed = _speed;
            RosenbrockStep.Apply(_regime, h, ref amps, ref speed, out double ampsError, out double speedError);
            double error = Math.Max(Math.Abs(ampsError) / _ampsScale, Math.Abs(speedError) / _speedScale) / StepTolerance;
            double factor = Math.Clamp(0.9 / Math.Sqrt(Math.Sqrt(error + 1e-12)), 0.2, 5);
            if (error > 1 && h > ShortestStep)
            {
                _adaptiveSeconds = Math.Max(h * factor, ShortestStep);
                continue;
            }

            if (!TryCommit(h, amps, speed, out double brokenSeconds)) return done + AdvanceToEvent(brokenSeconds);
            done += h;
            if (!shortened || factor < 1) _adaptiveSeconds = h * factor;
        }

        return seconds;
    }

    private double AdvanceToEvent(double seconds)
    {
        double at = RootFinder.Find(
            span =>
            {
                Flow(span, out double i, out double w);
                return Margin(i, w);
            },
            0,
            seconds,
            EventSeconds);
        Flow(at, out double amps, out double speed);
        double slope = _regime.AmpsSlope(amps, speed);
        if (CurrentTurnsInside(at, amps, slope))
        {
            ExtremumInside(CurrentSlope, _ampsScale, at, _ampsSlope, slope, out double extremeAmps, out _);
            _peaks.Note(extremeAmps);
        }

        Commit(at, amps, speed, slope);
        CloseBooks();
        if (_regime.Conduction != 0 && CurrentMargin(amps) < 0) _amps = 0;
        if (_regime.Rotation != 0 && HasSignedLoad && _regime.Rotation * speed < 0) _speed = 0;
        _regime = ChooseRegime();
        return at;
    }

    private void Flow(double seconds, out double amps, out double speed)
    {
        amps = _amps;
        speed = _speed;
        if (seconds <= 0) return;
        if (_regime.IsLinear)
        {
            new LinearStep(_regime, seconds).Apply(ref amps, ref speed);
        }
        else
        {
            RosenbrockStep.Apply(_regime, seconds, ref amps, ref speed, out _, out _);
        }
    }

    // False when the regime's signs are broken at the end of the step, or inside it where current or speed turn; nothing is
    // committed then.
    private bool TryCommit(double seconds, double amps, double speed, out double brokenSeconds)
    {
        brokenSeconds = seconds;
        if (!Holds(amps, speed)) return false;
        if (SpeedMayDip(seconds, speed) && SpeedBreaksInside(seconds, amps, speed, ref brokenSeconds)) return false;

        double slope = _regime.AmpsSlope(amps, speed);
        if (CurrentTurnsInside(seconds, amps, slope))
        {
            double at = ExtremumInside(CurrentSlope, _ampsScale, seconds, _ampsSlope, slope, out double extremeAmps, out double extremeSpeed);
            if (!Holds(extremeAmps, extremeSpeed))
            {
                brokenSeconds = at;
                return false;
            }

            _peaks.Note(extremeAmps);
        }

        Commit(seconds, amps, speed, slope);
        return true;
    }

    // Only a shaft that could come to rest within the step at all can touch zero and come back.
    private bool SpeedMayDip(double seconds, double speed) => _signedSpeed * speed < seconds * _steepestAcceleration;

    private bool SpeedBreaksInside(double seconds, double amps, double speed, ref double brokenSeconds)
    {
        double accelerationAtStart = _regime.Acceleration(_amps, _speed), accelerationAtEnd = _regime.Acceleration(amps, speed);
        if (accelerationAtStart > 0 == accelerationAtEnd > 0) return false;
        double at = ExtremumInside(
            SpeedSlope, _speedScale, seconds, accelerationAtStart, accelerationAtEnd, out double extremeAmps, out double extremeSpeed);
        if (Holds(extremeAmps, extremeSpeed)) return false;
        brokenSeconds = at;
        return true;
    }

    private void Commit(double seconds, double amps, double speed, double slope)
    {
        if (!_regime.IsLinear) _sums.AddTrapezoid(_regime, seconds, _amps, _speed, amps, speed);
        _amps = amps;
        _speed = speed;
        _ampsSlope = slope;
        _booksSeconds += seconds;
        _peaks.Note(amps);
    }

    // A slope that is only the rounding of zero turns no current.
    private bool CurrentTurnsInside(double seconds, double amps, double slopeAtEnd)
    {
        if (_ampsSlope > 0 == slopeAtEnd > 0) return false;
        return Math.Max(Math.Abs(_ampsSlope), Math.Abs(slopeAtEnd)) * seconds > TurnRounding * Math.Max(Math.Abs(amps), _ampsScale);
    }

    /// <summary>
    /// Where a slope of the state is zero inside a step, held to the bracket of its own signs; the state there is right to
    /// <see cref="ExtremumTolerance"/> of its scale.
    /// </summary>
    private double ExtremumInside(
        Func<Regime, double, double, double> slopeOf,
        double scale,
        double seconds,
        double slopeAtStart,
        double slopeAtEnd,
        out double amps,
        out double speed)
    {
        double low = 0, high = seconds, slopeLow = slopeAtStart, slopeHigh = slopeAtEnd, at = 0;
        amps = _amps;
        speed = _speed;
        for (int i = 0; i < 60; i++)
        {
            at = i % 4 == 3 ? (low + high) / 2 : low + (high - low) * slopeLow / (slopeLow - slopeHigh);
            Flow(at, out amps, out speed);
            double slope = slopeOf(_regime, amps, speed);
            // What is left to the extremum is the slope squared over twice the curvature.
            double curvature = Math.Abs(slopeHigh - slopeLow) / (high - low);
            if (slope * slope <= 2 * curvature * ExtremumTolerance * scale) break;
            if (slope > 0 == slopeLow > 0)
            {
                low = at;
                slopeLow = slope;
            }
            else
            {
                high = at;
                slopeHigh = slope;
            }
        }

        return at;
    }

    // The common case in two products: current and speed keep their signs.
    private bool Holds(double amps, double speed) =>
        _isPlain ? _signedAmps * amps >= 0 && _signedSpeed * speed >= 0 : Margin(amps, speed) >= 0;

    /// <summary>Not negative while the regime's signs hold.</summary>
    private double Margin(double amps, double speed)
    {
        Machine machine = _conditions.Machine;
        double margin = double.PositiveInfinity;
        if (_regime.Conduction != 0) margin = CurrentMargin(amps);
        else if (_circuit.IsLive) margin = DeadBandVolts(speed) - Math.Abs(_circuit.Volts - machine.Constant * speed);

        if (_regime.Rotation == 0) margin = Math.Min(margin, _conditions.Load.ConstantNewtonMetres - Math.Abs(machine.Constant * amps));
        else if (HasSignedLoad) margin = Math.Min(margin, _regime.Rotation * speed);
        return margin;
    }

    // Without a brush drop the sign of the current changes nothing in the equations.
    private double CurrentMargin(double amps) =>
        _conditions.Machine.BrushDropVolts > 0 ? _regime.Conduction * amps : double.PositiveInfinity;

    // The brush drop, and so much more that rounding cannot take up a current again at the very instant it died.
    private double DeadBandVolts(double speed)
    {
        Machine machine = _conditions.Machine;
        if (machine.BrushDropVolts == 0) return 0;
        return machine.BrushDropVolts + VoltRounding * (_circuit.Volts + Math.Abs(machine.Constant * speed));
    }

    private bool HasSignedLoad => _conditions.Load.ConstantNewtonMetres > 0 || _conditions.Load.FanNewtonMetreSecondsSquared > 0;

    private Regime ChooseRegime()
    {
        Machine machine = _conditions.Machine;
        double ohms = _circuit.Ohms;
        double volts = _circuit.Volts;
        int conduction = ChooseConduction(volts - machine.Constant * _speed, ohms);
        int rotation = ChooseRotation();
        _wholeStep = null;
        _ampsScale = Math.Max(volts, Math.Abs(BackEmfVolts)) / ohms + 1e-9;
        _speedScale = Math.Max(volts / machine.Constant, Math.Abs(_speed)) + 1e-9;
        _isPlain = conduction != 0 && rotation != 0;
        _signedAmps = machine.BrushDropVolts > 0 ? conduction : 0;
        _signedSpeed = HasSignedLoad ? rotation : 0;
        double steepestTorque = machine.Constant * Math.Max(_ampsScale, Math.Abs(_amps)) + _conditions.Load.TorqueAt(_speedScale);
        _steepestAcceleration = HasSignedLoad ? AccelerationMargin * steepestTorque / machine.InertiaKgM2 : 0;
        Regime regime = new(machine, _conditions.Load, volts, ohms, conduction, rotation);
        _ampsSlope = regime.AmpsSlope(_amps, _speed);
        OpenBooks();
        return regime;
    }

    private void OpenBooks()
    {
        _sums = default;
        _booksAmps = _amps;
        _booksSpeed = _speed;
        _booksSeconds = 0;
    }

    // Also makes the current consistent: it dies with an open circuit and jumps where there is no inductance.
    private int ChooseConduction(double drivingVolts, double ohms)
    {
        Machine machine = _conditions.Machine;
        if (!_circuit.IsLive)
        {
            Energy.BookArc(MagneticJoules);
            _amps = 0;
            return 0;
        }

        double band = DeadBandVolts(_speed);
        int pushed = drivingVolts > band ? 1 : drivingVolts < -band ? -1 : band > 0 ? 0 : 1;
        if (machine.ArmatureHenries > 0) return _amps == 0 ? pushed : Math.Sign(_amps);
        _amps = pushed == 0 ? 0 : (drivingVolts - pushed * machine.BrushDropVolts) / ohms;
        return pushed;
    }

    private int ChooseRotation()
    {
        if (_speed != 0) return Math.Sign(_speed);
        if (!HasSignedLoad) return 1;
        double torque = TorqueNewtonMetres;
        double holding = _conditions.Load.ConstantNewtonMetres;
        if (torque > holding) return 1;
        if (torque < -holding) return -1;
        return holding > 0 ? 0 : 1;
    }
}
