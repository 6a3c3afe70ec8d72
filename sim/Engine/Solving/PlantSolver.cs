using System;
using System.Runtime.Intrinsics;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// Carries armature current, shaft speed and field current through time. Closed form where the equations are linear: flux that
/// stands still and no load that bends with speed. An adaptive method of order 4 where they are not. The moments at which
/// current or speed change sign, the shaft breaks away and the current peaks are located inside the step.
/// </summary>
public sealed partial class PlantSolver
{
    /// <summary>Error allowed per step of the adaptive method, as a part of the locked-rotor current, the no-load speed and the field current.</summary>
    public const double StepTolerance = 1e-8;

    // What is left to the final field current counts as arrived: its flux moves no armature current that could be told apart.
    private const double StillRatio = 1e-8;
    private const double RootTolerance = 1e-13;
    private const int MostEventsPerAdvance = 1000;

    private readonly CurvedMotion _curved;
    private PlantConditions _conditions;
    private Network _network;
    private Regime _regime = null!;
    private StepIntegrals _sums;
    private PeakWatch _peaks;
    private double _booksAmps;
    private double _booksSpeed;
    private double _booksSeconds;
    private double _openCircuitVolts;
    private double _sourceOhms;
    private Share _line;
    private double _amps;
    private double _speed;
    private double _fieldAmps;
    private double _constant;
    private double _drivingVolts;
    private double _ampsScale;
    private double _speedScale;
    private double _fieldScale;
    private int _conduction;
    private int _rotation;
    private bool _isLinear;
    private bool _mayFreeze;

    /// <summary>Starts from a speed, without armature current; a closed field circuit carries its final current.</summary>
    /// <param name="conditions">Circuit, supply and load at the beginning.</param>
    /// <param name="speedRadPerSec">Speed at the beginning, rad/s.</param>
    /// <param name="tolerance">Error allowed per step of the adaptive method.</param>
    /// <exception cref="ArgumentException">The field circuit's values are out of their ranges, or the machine has no flux law for it.</exception>
    public PlantSolver(PlantConditions conditions, double speedRadPerSec, double tolerance = StepTolerance)
    {
        if (conditions.Field is FieldCircuit field) Check(field, conditions.Machine);
        _conditions = conditions;
        _network = new Network(conditions);
        _curved = new CurvedMotion(tolerance);
        _speed = speedRadPerSec;
        if (conditions.Field != null) _fieldAmps = _network.FinalFieldAmps(0);
        Energy = new EnergyAccount(conditions.SectionOhms.Count);
        InitialKineticJoules = KineticJoules;
        InitialFieldJoules = FieldMagneticJoules;
        ChooseRegime();
        RestartPeak();
    }

    /// <summary>Circuit, supply and load now.</summary>
    public PlantConditions Conditions => _conditions;

    /// <summary>Armature current, A.</summary>
    public double ArmatureAmps => _amps;

    /// <summary>Shaft speed, rad/s.</summary>
    public double SpeedRadPerSec => _speed;

    /// <summary>Field current, A; 0 for a machine without a field winding of its own.</summary>
    public double FieldAmps => _fieldAmps;

    /// <summary>Machine constant times flux now, V s/rad.</summary>
    public double Constant => _isLinear ? _constant : ConstantAt(_fieldAmps, _amps);

    /// <summary>True back-EMF, V.</summary>
    public double BackEmfVolts => Constant * _speed;

    /// <summary>Torque that the current makes, N m.</summary>
    public double TorqueNewtonMetres => Constant * _amps;

    /// <summary>Torque that the load takes, N m; at rest what it holds against.</summary>
    public double LoadTorqueNewtonMetres => _rotation == 0 ? TorqueNewtonMetres : _conditions.Load.TorqueAt(_speed);

    /// <summary>Current from the supply, A; a shunt winding's included.</summary>
    public double LineAmps => _network.Line.Amps(_amps, _fieldAmps);

    /// <summary>Voltage at the starter's input terminals, V.</summary>
    public double TerminalVolts => _openCircuitVolts - _sourceOhms * _line.Amps(_amps, _fieldAmps);

    /// <summary>dIa/dt, A/s.</summary>
    public double AmpsSlope => _isLinear ? _regime.AmpsSlope.At(_amps, _speed) : _curved.Slope(0);

    /// <summary>dw/dt, rad/s2.</summary>
    public double Acceleration => _isLinear ? _regime.Acceleration.At(_amps, _speed) : _curved.Slope(1);

    /// <summary>Where the energy went so far. Call <see cref="CloseBooks"/> before reading.</summary>
    public EnergyAccount Energy { get; }

    /// <summary>Kinetic energy of everything on the shaft, J.</summary>
    public double KineticJoules => 0.5 * _conditions.Machine.InertiaKgM2 * _speed * _speed;

    /// <summary>Kinetic energy at the beginning, J.</summary>
    public double InitialKineticJoules { get; }

    /// <summary>Magnetic energy of the armature circuit, J.</summary>
    public double MagneticJoules => 0.5 * _conditions.Machine.ArmatureHenries * _amps * _amps;

    /// <summary>Magnetic energy of a shunt winding, J; that of a field with its own supply stands beside the account.</summary>
    public double FieldMagneticJoules =>
        _conditions.Field is { IsShunt: true } shunt ? 0.5 * shunt.Henries * _fieldAmps * _fieldAmps : 0;

    /// <summary>The same at the beginning, J.</summary>
    public double InitialFieldJoules { get; }

    /// <summary>Largest magnitude of the current since the last <see cref="RestartPeak"/>, A, between steps too.</summary>
    public double PeakAmps => _peaks.Amps;

    /// <summary>Largest magnitude of the torque since the last <see cref="RestartPeak"/>, N m.</summary>
    public double PeakTorqueNewtonMetres
    {
        get
        {
            if (_isLinear) return Math.Max(_peaks.NewtonMetres, _constant * _peaks.SteadyFluxAmps);
            _curved.Book(ref _sums, ref _peaks);
            return _peaks.NewtonMetres;
        }
    }

    /// <summary>Forgets the peak; it begins again at the present current.</summary>
    public void RestartPeak()
    {
        // A swing that was too small for the last peak may be large enough for the next.
        _isQuiet = false;
        if (!_isLinear) _curved.Book(ref _sums, ref _peaks);
        _peaks.Restart(_amps);
        if (!_isLinear) _peaks.NoteTorque(Math.Abs(TorqueNewtonMetres));
    }

    /// <summary>Books the energies up to now.</summary>
    public void CloseBooks()
    {
        if (!_isLinear)
        {
            _curved.Close(ref _sums, ref _peaks);
            TakeState();
        }
        else if (_booksSeconds > 0)
        {
            // In a linear regime the integrals since the last closing are known exactly from where it began.
            LinearIntegrals.Add(
                _regime, _booksSeconds, _booksAmps, _booksSpeed, _conditions.Load.ViscousNewtonMetreSeconds > 0, ref _sums);
            _sums.AddSteadyField(_fieldAmps, _booksSeconds);
        }

        Energy.Book(_sums, _booksSeconds, _conditions, _network, _conduction, _rotation);
        OpenBooks();
    }

    /// <summary>
    /// Changes circuit, supply, load, inertia or field circuit at this instant. The speed goes on; the kinetic energy of an inertia that is
    /// added comes from the load in the account, that of one that is taken away goes to it. A current that line or brake parts with goes on
    /// through an arc where <see cref="PlantConditions.ArcVolts"/> is above 0, until it is zero or a contact closes.
    /// </summary>
    public void Change(PlantConditions conditions)
    {
        CloseBooks();
        // What is added turns already: it brings its kinetic energy along, and what is taken away keeps it.
        double added = conditions.Machine.InertiaKgM2 - _conditions.Machine.InertiaKgM2;
        if (added != 0) Energy.BookLoad(-0.5 * added * _speed * _speed);
        Take(WithArc(conditions));
        ChooseRegime();
        _peaks.Note(_amps);
    }

    /// <summary>Goes forward in time.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public void Advance(double seconds)
    {
        if (_isQuiet && seconds == _wholeStep.Seconds) AdvanceQuietly(seconds);
        else AdvanceWatchfully(seconds);
    }

    private void AdvanceWatchfully(double seconds)
    {
        double remaining = seconds;
        int events = 0;
        while (remaining > 0)
        {
            double done = _isLinear ? AdvanceLinear(remaining) : AdvanceCurved(remaining);
            remaining -= done;
            if (remaining > 0 && ++events > MostEventsPerAdvance)
            {
                throw new InvalidOperationException("The solver makes no progress: the machine's data are out of any sensible range.");
            }
        }
    }

    private static void Check(FieldCircuit field, Machine machine)
    {
        if (!(field.SupplyVolts >= 0 && field.Ohms > 0 && field.Henries >= 0 && field.DischargeSeconds >= 0 && field.SharedOhms >= 0))
        {
            throw new ArgumentException("A field circuit has a resistance above 0, and nothing in it is negative.", nameof(field));
        }

        if (machine.Flux == null) throw new ArgumentException("A machine with a field winding has a flux that follows it.", nameof(machine));
    }

    private double AdvanceCurved(double seconds)
    {
        bool isEvent = _curved.Advance(seconds, ref _sums, ref _peaks, out double done);
        TakeState();
        _booksSeconds += done;
        // A shaft that the load stops never turns back, not even by the method's error.
        if (isEvent || (_rotation * _speed < 0 && HasSignedLoad)) ChangeSigns();
        else if (_mayFreeze && HasFieldArrived) Freeze();
        return done;
    }

    private void TakeState()
    {
        Vector256<double> state = _curved.State;
        _amps = state.GetElement(0);
        _speed = state.GetElement(1);
        _fieldAmps = state.GetElement(2);
    }

    private void Freeze()
    {
        CloseBooks();
        ChooseRegime();
    }

    // What has just passed zero stands at zero now.
    private void ChangeSigns()
    {
        CloseBooks();
        if (_conduction != 0 && IsCurrentSigned && _conduction * _amps < 0) _amps = 0;
        if (_rotation != 0 && HasSignedLoad && _rotation * _speed < 0) _speed = 0;
        ChooseRegime();
    }

    private bool HasSignedLoad => _conditions.Load.ConstantNewtonMetres > 0 || _conditions.Load.IsBent;

    // Without brush drop, arc and armature reaction the sign of the current changes nothing in the equations.
    private bool IsCurrentSigned =>
        OpposingVolts > 0 || (!_isLinear && _conditions.Machine.Flux is { ReactionRatio: > 0 });

    private double CurrentMargin(double amps) =>
        OpposingVolts > 0 ? _conduction * amps : double.PositiveInfinity;

    private double DeadBandVolts(double backEmfVolts) =>
        SignRules.DeadBandVolts(OpposingVolts, _network.ArmatureVolts, backEmfVolts);

    private double ConstantAt(double fieldAmps, double amps) =>
        _conditions.Machine.Flux?.ConstantAt(fieldAmps, amps) ?? _conditions.Machine.Constant;

    private void ChooseRegime()
    {
        _isQuiet = false;
        bool wasLinear = _isLinear;
        double constantBefore = _constant;
        _conduction = ChooseConduction();
        bool isFrozen = IsFluxFrozen();
        _constant = ConstantAt(_fieldAmps, _amps);
        _rotation = ChooseRotation();
        _drivingVolts = _network.ArmatureVolts - _network.CouplingOhms * _fieldAmps;
        _openCircuitVolts = _conditions.Supply.OpenCircuitVolts;
        _sourceOhms = _conditions.Supply.SourceOhms;
        _line = _network.Line;
        double volts = _network.ArmatureVolts;
        _ampsScale = Math.Max(volts, Math.Abs(_constant * _speed)) / _network.ArmatureOhms + 1e-9;
        _speedScale = Math.Max(volts / _conditions.Machine.Constant, Math.Abs(_speed)) + 1e-9;
        if (_conditions.Load.HoistNewtonMetres != 0) WidenScales();
        _isLinear = isFrozen && (!_conditions.Load.IsBent || _rotation == 0);
        if (_isLinear) BeginLinear();
        else BeginCurved(isFrozen);
        if (!wasLinear || !_isLinear || constantBefore != _constant) _peaks.ChangeFlux(wasLinear ? constantBefore * _peaks.SteadyFluxAmps : 0, _amps);
        OpenBooks();
    }

    // A hoist drives a shaft at rest without any voltage: what the supply alone would drive says how fast is fast.
    private void WidenScales()
    {
        _speedScale = Math.Max(_speedScale, Math.Max(1, _conditions.Supply.OpenCircuitVolts / _conditions.Machine.Constant));
        _ampsScale = Math.Max(_ampsScale, _constant * _speedScale / _network.ArmatureOhms);
    }

    private void BeginCurved(bool isFrozen)
    {
        Machine machine = _conditions.Machine;
        MachineEquations equations = new(_conditions, _network, _conduction, _rotation, isFrozen ? _constant : null);
        SignRules signs = new()
        {
            Current = IsCurrentSigned ? _conduction : 0,
            Speed = HasSignedLoad ? _rotation : 0,
            IsCurrentHeld = _conduction == 0 && _network.IsLive,
            IsShaftHeld = _rotation == 0,
            DrivingVolts = _network.ArmatureVolts,
            CouplingOhms = _network.CouplingOhms,
            BrushVolts = machine.BrushDropVolts,
            HoldingNewtonMetres = _conditions.Load.HoldingNewtonMetres,
            HoistNewtonMetres = _conditions.Load.HoistNewtonMetres,
        };
        _curved.Begin(
            equations,
            signs,
            Vector256.Create(_amps, _speed, _fieldAmps, 0),
            Vector256.Create(_ampsScale, _speedScale, _fieldScale, 1));
    }

    // Also brings the field current to where it already is but for rounding.
    private bool IsFluxFrozen()
    {
        FluxLaw? flux = _conditions.Machine.Flux;
        _mayFreeze = false;
        _fieldScale = Math.Max(Math.Abs(_network.FinalFieldAmps(0)), Math.Abs(_fieldAmps)) + 1e-9;
        if (flux == null) return true;
        bool isAlone = _conduction == 0 || (!flux.FollowsArmature && _network.FieldCouplingOhms == 0);
        if (!isAlone) return false;
        if (_conditions.Field == null) return true;
        if (!HasFieldArrived)
        {
            _mayFreeze = true;
            return false;
        }

        _fieldAmps = _network.FinalFieldAmps(0);
        return true;
    }

    // Measured in amperes of the curve, so that a field that is to vanish has an end too.
    private bool HasFieldArrived =>
        Math.Abs(_fieldAmps - _network.FinalFieldAmps(0)) <= StillRatio * Math.Max(_fieldScale, _conditions.Machine.Flux!.Curve.LastAmps);

    private void OpenBooks()
    {
        _sums = default;
        _booksAmps = _amps;
        _booksSpeed = _speed;
        _booksSeconds = 0;
    }
}
