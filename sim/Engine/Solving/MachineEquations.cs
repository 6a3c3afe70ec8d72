using System.Runtime.Intrinsics;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The machine's three equations, M y' = f(y) with y = (Ia, w, If), while no contact moves and no sign changes:
/// <c>La dIa/dt = Ua - s Vb - Ra' Ia - Rc If - k w</c>, <c>J dw/dt = k Ia - r (Tc + c w^2 + Tt(r w)) - Th - B w</c> and
/// <c>Lf dIf/dt = Uf - Rf' If - Rc' Ia</c>, with Vb the brushes' drop and an arc's, k from the flux law, Tt from the load's table and s, r the signs of conduction and rotation. A mass of 0 makes
/// its equation a balance that holds at every instant.
/// </summary>
public sealed class MachineEquations
{
    private readonly Magnetisation? _curve;
    private readonly double _constant;
    private readonly double _fieldShare;
    private readonly double _armatureShare;
    private readonly double _drivingVolts;
    private readonly double _armatureOhms;
    private readonly double _couplingOhms;
    private readonly double _fieldVolts;
    private readonly double _fieldOhms;
    private readonly double _fieldCouplingOhms;
    private readonly double _constantTorque;
    private readonly double _viscous;
    private readonly double _fan;
    private readonly LoadTable? _table;
    private readonly int _rotation;
    private readonly bool _conducts;
    private readonly bool _turns;

    /// <summary>Builds the equations.</summary>
    /// <param name="conditions">Machine, load and circuit.</param>
    /// <param name="network">The circuit as the windings see it.</param>
    /// <param name="conduction">Sign of the armature current; 0 while none flows.</param>
    /// <param name="rotation">Sign of the speed; 0 while the load holds the shaft.</param>
    /// <param name="frozenConstant">Machine constant times flux that stands still; null: it follows the currents.</param>
    public MachineEquations(PlantConditions conditions, in Network network, int conduction, int rotation, double? frozenConstant)
    {
        Machine machine = conditions.Machine;
        Load load = conditions.Load;
        _constant = frozenConstant ?? machine.Constant;
        if (frozenConstant == null && machine.Flux is FluxLaw flux)
        {
            _curve = flux.Curve;
            _fieldShare = flux.FieldShare;
            _armatureShare = flux.ArmatureShare - (conduction < 0 ? -flux.ReactionRatio : flux.ReactionRatio);
        }

        _conducts = conduction != 0;
        _turns = rotation != 0;
        _drivingVolts = network.ArmatureVolts - conduction * (machine.BrushDropVolts + network.ArcVolts);
        _armatureOhms = network.ArmatureOhms;
        _couplingOhms = network.CouplingOhms;
        _fieldVolts = network.FieldVolts;
        _fieldOhms = network.FieldOhms;
        _fieldCouplingOhms = network.FieldCouplingOhms;
        _constantTorque = rotation * load.ConstantNewtonMetres + load.HoistNewtonMetres;
        _viscous = load.ViscousNewtonMetreSeconds;
        _fan = rotation * load.FanNewtonMetreSecondsSquared;
        _table = load.Table;
        _rotation = rotation;
        Masses = Vector256.Create(_conducts ? machine.ArmatureHenries : 1, _turns ? machine.InertiaKgM2 : 1, network.FieldHenries, 1);
    }

    /// <summary>What each equation's derivative is multiplied by: H, kg m2, H.</summary>
    public Vector256<double> Masses { get; }

    /// <summary>Machine constant times flux, V s/rad.</summary>
    public double ConstantAt(double amps, double fieldAmps) =>
        _curve == null ? _constant : _curve.ConstantAt(_fieldShare * fieldAmps + _armatureShare * amps);

    /// <summary>Largest that this can be, V s/rad.</summary>
    public double LargestConstant => _curve == null ? _constant : _curve.Constants[^1];

    /// <summary>Power that the load's table takes, W.</summary>
    public double TableWattsAt(double speed) => TableTorque(speed, out _) * speed;

    /// <summary>The right-hand side f(y).</summary>
    public Vector256<double> Right(Vector256<double> state)
    {
        double amps = state.GetElement(0), speed = state.GetElement(1), fieldAmps = state.GetElement(2);
        double k = ConstantAt(amps, fieldAmps);
        return Vector256.Create(
            _conducts ? _drivingVolts - _armatureOhms * amps - _couplingOhms * fieldAmps - k * speed : 0,
            _turns ? k * amps - _constantTorque - (_viscous + _fan * speed) * speed - TableTorque(speed, out _) : 0,
            _fieldVolts - _fieldOhms * fieldAmps - _fieldCouplingOhms * amps,
            0);
    }

    /// <summary>The columns of the inverse of (M diagonal - df/dy).</summary>
    /// <param name="state">Where the derivatives are taken.</param>
    /// <param name="diagonal">Factor of the masses, 1/s.</param>
    /// <param name="column0">First column.</param>
    /// <param name="column1">Second column.</param>
    /// <param name="column2">Third column.</param>
    public void Inverse(
        Vector256<double> state, double diagonal, out Vector256<double> column0, out Vector256<double> column1, out Vector256<double> column2)
    {
        double amps = state.GetElement(0), speed = state.GetElement(1), fieldAmps = state.GetElement(2);
        double slope = 0, k = _constant;
        if (_curve != null) k = _curve.At(_fieldShare * fieldAmps + _armatureShare * amps, out slope);
        double byAmps = slope * _armatureShare, byField = slope * _fieldShare;
        double m00 = Masses.GetElement(0) * diagonal, m11 = Masses.GetElement(1) * diagonal;
        double m01 = 0, m02 = 0, m10 = 0, m12 = 0;
        if (_conducts)
        {
            m00 += _armatureOhms + byAmps * speed;
            m01 = k;
            m02 = _couplingOhms + byField * speed;
        }

        if (_turns)
        {
            m10 = -(k + byAmps * amps);
            TableTorque(speed, out double tableSlope);
            m11 += _viscous + 2 * _fan * speed + tableSlope;
            m12 = -byField * amps;
        }

        double m20 = _fieldCouplingOhms, m22 = Masses.GetElement(2) * diagonal + _fieldOhms;
        double c00 = m11 * m22, c10 = m12 * m20 - m10 * m22, c20 = -m11 * m20;
        double scale = 1 / (m00 * c00 + m01 * c10 + m02 * c20);
        column0 = Vector256.Create(c00, c10, c20, 0) * scale;
        column1 = Vector256.Create(-m01 * m22, m00 * m22 - m02 * m20, m01 * m20, 0) * scale;
        column2 = Vector256.Create(m01 * m12 - m02 * m11, m02 * m10 - m00 * m12, m00 * m11 - m01 * m10, 0) * scale;
    }

    private double TableTorque(double speed, out double slope)
    {
        slope = 0;
        return _table == null ? 0 : _rotation * _table.At(_rotation * speed, out slope);
    }
}
