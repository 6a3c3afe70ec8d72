using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <content>The closed form, and the moments inside its steps.</content>
public sealed partial class PlantSolver
{
    private const double EventSeconds = 1e-12;
    private const double TurnRounding = 1e-10;
    private const double AccelerationMargin = 4;

    private LinearStep _wholeStep;
    private double _ampsSlope;
    private double _steepestAcceleration;
    private double _signedAmps;
    private double _signedSpeed;
    private double _lowestSpeed;
    private bool _isPlain;
    private bool _isQuiet;

    private void BeginLinear()
    {
        Machine machine = _conditions.Machine;
        _regime = new Regime(machine, _constant, _conditions.Load, _network.ArmatureVolts - _conduction * _network.ArcVolts, _network.ArmatureOhms, _conduction, _rotation);
        _wholeStep = LinearStep.None;
        _signedAmps = OpposingVolts > 0 ? _conduction : 0;
        _signedSpeed = HasSignedLoad ? _rotation : 0;
        double steepestTorque = _constant * Math.Max(_ampsScale, Math.Abs(_amps)) + _conditions.Load.TorqueAt(_speedScale);
        steepestTorque += Math.Abs(_conditions.Load.HoistNewtonMetres) - _conditions.Load.HoistNewtonMetres;
        _steepestAcceleration = HasSignedLoad ? AccelerationMargin * steepestTorque / machine.InertiaKgM2 : 0;
        _ampsSlope = _regime.AmpsSlope.At(_amps, _speed);
    }

    // Nothing is to be looked for any more: the state only has to be carried on.
    private void AdvanceQuietly(double seconds)
    {
        double amps = _amps, speed = _speed;
        _wholeStep.Apply(ref amps, ref speed);
        _amps = amps;
        _speed = speed;
        _booksSeconds += seconds;
        _peaks.Note(amps);
    }

    private double AdvanceLinear(double seconds)
    {
        if (_isQuiet) _ampsSlope = _regime.AmpsSlope.At(_amps, _speed);
        if (_wholeStep.Seconds != seconds) PrepareWholeStep(seconds);
        double amps = _amps, speed = _speed;
        _wholeStep.Apply(ref amps, ref speed);
        double slope = _regime.AmpsSlope.At(amps, speed);
        if (!IsUneventful(amps, speed, slope))
        {
            double brokenSeconds = BrokenSeconds(seconds, amps, speed, slope);
            if (brokenSeconds <= seconds) return AdvanceToEvent(brokenSeconds);
            Commit(seconds, amps, speed, slope);
            _isQuiet = HoldsForEver();
            return seconds;
        }

        Commit(seconds, amps, speed, slope);
        return seconds;
    }

    // The control period is the span that comes back again and again; anything else is used once.
    private void PrepareWholeStep(double seconds)
    {
        _wholeStep = new LinearStep(_regime, seconds);
        _isPlain = _conduction != 0 && _rotation != 0 && seconds < _regime.HalfSwingSeconds;
        // Only a shaft that could come to rest within the step at all can touch zero and come back.
        _lowestSpeed = seconds * _steepestAcceleration;
        _isQuiet = HoldsForEver();
    }

    // Both keep their signs to where they settle, and the current has passed its peak: either they turn no more, or what is left of
    // their swing is too small for it.
    private bool HoldsForEver()
    {
        if (_conduction == 0 || _rotation == 0 || !_regime.TrySettle(_amps, _speed, out double amps, out double speed)) return false;
        LinearForm slopeOf = _regime.AmpsSlope, ofSpeed = _regime.Acceleration;
        double slope = slopeOf.At(_amps, _speed), acceleration = ofSpeed.At(_amps, _speed);
        double ampsSwing = 0, speedSwing = 0;
        if (_regime.Swings)
        {
            ampsSwing = _regime.LargestSwing(_amps - amps, slope);
            speedSwing = _regime.LargestSwing(_speed - speed, acceleration);
            if (Math.Abs(amps) + ampsSwing > _peaks.SteadyFluxAmps) return false;
        }
        else if (_regime.Turns(slope, slopeOf.Amps * slope + slopeOf.Speed * acceleration)
            || _regime.Turns(acceleration, ofSpeed.Amps * slope + ofSpeed.Speed * acceleration)) return false;

        return Holds(_signedAmps, amps, ampsSwing) && Holds(_signedSpeed, speed, speedSwing);
    }

    private static bool Holds(double sign, double final, double swing) => sign == 0 || sign * final >= swing;

    // The rule: signs hold at the end, the current does not turn, and the shaft is too fast to come to rest on the way.
    private bool IsUneventful(double amps, double speed, double slope) =>
        _isPlain && _signedAmps * amps >= 0 && _signedSpeed * speed >= _lowestSpeed && slope * _ampsSlope > 0;

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
        Commit(at, amps, speed, _regime.AmpsSlope.At(amps, speed));
        ChangeSigns();
        return at;
    }

    private void Flow(double seconds, out double amps, out double speed)
    {
        amps = _amps;
        speed = _speed;
        if (seconds > 0) new LinearStep(_regime, seconds).Apply(ref amps, ref speed);
    }

    // The first of the turning points and the end at which the regime's signs are broken; infinite where they hold. Notes the current where
    // it turns before.
    private double BrokenSeconds(double seconds, double amps, double speed, double slope)
    {
        double broken = Margin(amps, speed) >= 0 ? double.PositiveInfinity : seconds;
        if (_signedSpeed * speed < _lowestSpeed)
        {
            LinearForm ofSpeed = _regime.Acceleration;
            double from = ofSpeed.At(_amps, _speed);
            if (TurnsInside(seconds, from, ofSpeed.At(amps, speed))) broken = BrokenAtTurns(seconds, from, ofSpeed, false, broken);
        }

        if (!TurnsInside(seconds, _ampsSlope, slope) || IsRounding(seconds, amps, slope)) return broken;
        return BrokenAtTurns(seconds, _ampsSlope, _regime.AmpsSlope, true, broken);
    }

    private bool TurnsInside(double seconds, double slopeAtStart, double slopeAtEnd) =>
        slopeAtStart > 0 != slopeAtEnd > 0 || seconds >= _regime.HalfSwingSeconds;

    // A slope that is only the rounding of zero turns no current; that of a whole swing's ends says nothing about the swing.
    private bool IsRounding(double seconds, double amps, double slopeAtEnd) =>
        seconds < _regime.HalfSwingSeconds
        && Math.Max(Math.Abs(_ampsSlope), Math.Abs(slopeAtEnd)) * seconds <= TurnRounding * Math.Max(Math.Abs(amps), _ampsScale);

    // The later turning points of a damped swing lie between its first two.
    private double BrokenAtTurns(double seconds, double slope, in LinearForm slopeOf, bool isCurrent, double broken)
    {
        double slopeOfSlope = slopeOf.Amps * _ampsSlope + slopeOf.Speed * _regime.Acceleration.At(_amps, _speed);
        double first = _regime.FirstTurnSeconds(slope, slopeOfSlope);
        double last = Math.Min(seconds, broken);
        for (int i = 0; i < 2; i++)
        {
            double at = first + (i == 0 ? 0 : _regime.HalfSwingSeconds);
            if (!(at < last)) break;
            Flow(at, out double amps, out double speed);
            if (Margin(amps, speed) < 0) return at;
            if (isCurrent) _peaks.Note(amps);
        }

        return broken;
    }

    private void Commit(double seconds, double amps, double speed, double slope)
    {
        _amps = amps;
        _speed = speed;
        _ampsSlope = slope;
        _booksSeconds += seconds;
        _peaks.Note(amps);
    }

    /// <summary>Not negative while the regime's signs hold.</summary>
    private double Margin(double amps, double speed)
    {
        double margin = double.PositiveInfinity;
        if (_conduction != 0) margin = CurrentMargin(amps);
        else if (_network.IsLive) margin = DeadBandVolts(_constant * speed) - Math.Abs(_drivingVolts - _constant * speed);

        if (_rotation == 0) margin = Math.Min(margin, _conditions.Load.HoldingNewtonMetres - Math.Abs(_constant * amps - _conditions.Load.HoistNewtonMetres));
        else if (HasSignedLoad) margin = Math.Min(margin, _rotation * speed);
        return margin;
    }
}
