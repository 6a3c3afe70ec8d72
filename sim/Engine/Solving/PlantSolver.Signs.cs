using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <content>Which way current and shaft go from here.</content>
public sealed partial class PlantSolver
{
    // Also makes the currents consistent: one dies with an open circuit and jumps where there is no inductance.
    private int ChooseConduction()
    {
        if (_network.ArcVolts > 0 && IsArcOut()) Take(_conditions with { Arc = ArcPlace.None });
        if (!_network.IsLive)
        {
            Energy.BookArc(MagneticJoules);
            _amps = 0;
            JumpField();
            return 0;
        }

        bool jumps = _conditions.Machine.ArmatureHenries == 0;
        int pushed = PushedSign(out double drivingVolts);
        if (jumps) _amps = pushed == 0 ? 0 : BalancedAmps(pushed, drivingVolts);
        JumpField();
        return jumps || _amps == 0 ? pushed : Math.Sign(_amps);
    }

    // Which way the voltages drive a current that is none yet, or has no inductance to keep it.
    private int PushedSign(out double drivingVolts)
    {
        double fieldAmps = FieldAmpsAt(_conditions.Machine.ArmatureHenries == 0 ? 0 : _amps);
        double backEmfVolts = ConstantAt(fieldAmps, 0) * _speed;
        drivingVolts = _network.ArmatureVolts - _network.CouplingOhms * fieldAmps - backEmfVolts;
        double band = DeadBandVolts(backEmfVolts);
        return drivingVolts > band ? 1 : drivingVolts < -band ? -1 : band > 0 ? 0 : 1;
    }

    private void Take(PlantConditions conditions)
    {
        _conditions = conditions;
        _network = new Network(conditions);
    }

    private double FieldAmpsAt(double amps) =>
        _conditions.Field != null && _network.FieldHenries == 0 ? _network.FinalFieldAmps(amps) : _fieldAmps;

    private void JumpField()
    {
        double before = FieldMagneticJoules;
        _fieldAmps = FieldAmpsAt(_amps);
        if (FieldMagneticJoules < before) Energy.BookFieldJump(before - FieldMagneticJoules);
    }

    // The current at which the circuit's voltages balance without inductance.
    private double BalancedAmps(int sign, double drivingVolts)
    {
        Machine machine = _conditions.Machine;
        double alone = (drivingVolts - sign * OpposingVolts) / _network.ArmatureOhms;
        bool followsArmature = machine.Flux is { FollowsArmature: true } || (_network.FieldHenries == 0 && _network.FieldCouplingOhms != 0);
        if (!followsArmature || alone == 0) return alone;
        double high = alone;
        for (int i = 0; i < 60 && sign * Imbalance(high) > 0; i++) high *= 2;
        double low = 0;
        return sign > 0
            ? RootFinder.Find(Imbalance, low, high, RootTolerance * Math.Abs(high))
            : RootFinder.Find(Imbalance, high, low, RootTolerance * Math.Abs(high));

        double Imbalance(double amps)
        {
            double fieldAmps = FieldAmpsAt(amps);
            return _network.ArmatureVolts - sign * OpposingVolts - _network.ArmatureOhms * amps - _network.CouplingOhms * fieldAmps
                - ConstantAt(fieldAmps, amps) * _speed;
        }
    }

    private int ChooseRotation()
    {
        if (_speed != 0) return Math.Sign(_speed);
        if (!HasSignedLoad) return 1;
        double torque = _constant * _amps - _conditions.Load.HoistNewtonMetres;
        double holding = _conditions.Load.HoldingNewtonMetres;
        if (torque > holding) return 1;
        if (torque < -holding) return -1;
        return holding > 0 ? 0 : 1;
    }
}
