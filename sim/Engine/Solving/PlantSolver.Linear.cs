using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <content>The closed form, and the moments inside its steps.</content>
public sealed partial class PlantSolver
{
    private const double EventSeconds = 1e-12;
    private const double TurnRounding = 1e-10;
    private const double ExtremumTolerance = 1e-9;
    private const double AccelerationMargin = 4;

    private static readonly Func<Regime, double, double, double> CurrentSlope = (regime, amps, speed) => regime.AmpsSlope(amps, speed);
    private static readonly Func<Regime, double, double, double> SpeedSlope = (regime, amps, speed) => regime.Acceleration(amps, speed);

    private LinearStep? _wholeStep;
    private double _ampsSlope;
    private double _steepestAcceleration;
    private double _signedAmps;
    private double _signedSpeed;
    private bool _isPlain;

    private void BeginLinear()
    {
        Machine machine = _conditions.Machine;
        _regime = new Regime(machine, _constant, _conditions.Load, _network.ArmatureVolts - _conduction * _network.ArcVolts, _network.ArmatureOhms, _conduction, _rotation);
        _wholeStep = null;
        _isPlain = _conduction != 0 && _rotation != 0;
        _signedAmps = OpposingVolts > 0 ? _conduction : 0;
        _signedSpeed = HasSignedLoad ? _rotation : 0;
        double steepestTorque = _constant * Math.Max(_ampsScale, Math.Abs(_amps)) + _conditions.Load.TorqueAt(_speedScale);
        steepestTorque += Math.Abs(_conditions.Load.HoistNewtonMetres) - _conditions.Load.HoistNewtonMetres;
        _steepestAcceleration = HasSignedLoad ? AccelerationMargin * steepestTorque / machine.InertiaKgM2 : 0;
        _ampsSlope = _regime.AmpsSlope(_amps, _speed);
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
            double turn = ExtremumInside(CurrentSlope, _ampsScale, at, _ampsSlope, slope, out double extremeAmps, out double extremeSpeed);
            // The shaft may come to rest in a span in which the current died before.
            if (!Holds(extremeAmps, extremeSpeed)) return AdvanceToEvent(turn);
            _peaks.Note(extremeAmps);
        }

        Commit(at, amps, speed, slope);
        ChangeSigns();
        return at;
    }

    private void Flow(double seconds, out double amps, out double speed)
    {
        amps = _amps;
        speed = _speed;
        if (seconds <= 0) return;
        new LinearStep(_regime, seconds).Apply(ref amps, ref speed);
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
        double margin = double.PositiveInfinity;
        if (_conduction != 0) margin = CurrentMargin(amps);
        else if (_network.IsLive) margin = DeadBandVolts(_constant * speed) - Math.Abs(_drivingVolts - _constant * speed);

        if (_rotation == 0) margin = Math.Min(margin, _conditions.Load.HoldingNewtonMetres - Math.Abs(_constant * amps - _conditions.Load.HoistNewtonMetres));
        else if (HasSignedLoad) margin = Math.Min(margin, _rotation * speed);
        return margin;
    }
}
