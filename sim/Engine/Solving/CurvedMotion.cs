using System;
using System.Runtime.Intrinsics;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// Carries the three states where the equations are not linear: steps as long as the error allows, whatever the caller's spans
/// are, and the smooth solution inside the step. A step ends early where a sign changes.
/// </summary>
internal sealed class CurvedMotion
{
    private const double ShortestStep = 1e-12;
    private const double LongestStep = 3600;
    private const double LongestGrowth = 5;
    private const double LeastShrink = 0.2;

    // The course inside a step has one order less than its ends and may be off by this much more; energies are read off it.
    private const double CourseTolerance = 100;

    // So much better than asked for, an end says nothing about the course to it.
    private const double SettledError = 0.01;

    // A condition that is no polynomial is looked at this often inside a step.
    private const int Looks = 8;

    // Between the nodes of a step a current is hardly larger than at them.
    private const double CurrentMargin = 1.1;

    // Gauss-Legendre, 4 points on (0, 1): exact for the square and nearly so for the cube of a cubic; any table of quadrature formulas.
    private static readonly double[] Nodes = [0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263];
    private static readonly double[] Weights = [0.17392742256872693, 0.32607257743127307, 0.32607257743127307, 0.17392742256872693];

    private readonly double _tolerance;
    private MachineEquations _equations = null!;
    private SignRules _signs;
    private RodasStep _step;
    private Vector256<double> _state;
    private Vector256<double> _perScale;
    private double _trySeconds = 1e-4;
    private double _stepSeconds;
    private double _at;
    private double _end;
    private double _booked;
    private double _turn1;
    private double _turn2;
    private bool _endsAtEvent;

    /// <summary>Builds it.</summary>
    /// <param name="tolerance">Error allowed per step, as a part of each state's scale.</param>
    public CurvedMotion(double tolerance)
    {
        _tolerance = tolerance;
    }

    /// <summary>The state now: Ia, w, If.</summary>
    public Vector256<double> State => _state;

    /// <summary>dy/dt now, where a mass is 0 that of the course inside the step.</summary>
    public double Slope(int index)
    {
        double mass = _equations.Masses.GetElement(index);
        if (mass > 0) return _equations.Right(_state).GetElement(index) / mass;
        if (_stepSeconds == 0) TakeStep();
        double s = _at / _stepSeconds;
        Cubic course = _step.Course(index);
        return (course.C1 + s * (2 * course.C2 + s * 3 * course.C3)) / _stepSeconds;
    }

    /// <summary>Begins anew from a state.</summary>
    /// <param name="equations">The equations that hold until a sign changes.</param>
    /// <param name="signs">The signs for which they hold.</param>
    /// <param name="state">Ia, w, If; consistent where a mass is 0.</param>
    /// <param name="scale">Size of each state, above 0.</param>
    public void Begin(MachineEquations equations, in SignRules signs, Vector256<double> state, Vector256<double> scale)
    {
        _equations = equations;
        _signs = signs;
        _state = state;
        _perScale = Vector256.Create(1.0) / scale / Vector256.Create(_tolerance);
        DropStep();
    }

    /// <summary>Goes forward, at most to the next change of a sign.</summary>
    /// <param name="seconds">Span, s, above 0.</param>
    /// <param name="sums">Receives the integrals of steps that are done.</param>
    /// <param name="peaks">Receives the peaks.</param>
    /// <param name="done">Span that was gone.</param>
    /// <returns>True at a change of a sign.</returns>
    public bool Advance(double seconds, ref StepIntegrals sums, ref PeakWatch peaks, out double done)
    {
        done = 0;
        while (done < seconds)
        {
            if (_stepSeconds == 0) TakeStep();
            double left = _end - _at, wanted = seconds - done;
            if (wanted < left)
            {
                MoveTo(_at + wanted, ref peaks);
                done = seconds;
                return false;
            }

            MoveTo(_end, ref peaks);
            done += left;
            bool isEvent = _endsAtEvent;
            Book(ref sums, ref peaks);
            DropStep();
            if (isEvent) return true;
        }

        return false;
    }

    /// <summary>
    /// Ends the step here and books it. What goes on from the middle of a step begins at the end of one made to there: the course inside may
    /// be off by <see cref="CourseTolerance"/> times what an end may, and each change of the circuit would add its own.
    /// </summary>
    public void Close(ref StepIntegrals sums, ref PeakWatch peaks)
    {
        if (_at > 0 && _at < _stepSeconds)
        {
            _step = new RodasStep(_equations, _at, _step.Begin);
            _stepSeconds = _at;
            _state = _step.End;
        }

        Book(ref sums, ref peaks);
        DropStep();
    }

    /// <summary>Adds what has been gone since the last booking.</summary>
    public void Book(ref StepIntegrals sums, ref PeakWatch peaks)
    {
        if (_stepSeconds == 0 || _at <= _booked) return;
        double span = _at - _booked, amps = 0;
        for (int i = 0; i < Nodes.Length; i++)
        {
            Vector256<double> state = _step.At((_booked + Nodes[i] * span) / _stepSeconds);
            sums.Add(Weights[i] * span, state.GetElement(0), state.GetElement(1), state.GetElement(2));
            sums.TableJoules += Weights[i] * span * _equations.TableWattsAt(state.GetElement(1));
            amps = Math.Max(amps, Math.Abs(state.GetElement(0)));
        }

        // A current that could make no new peak at the largest flux of all needs no closer look.
        Vector256<double> begin = _step.At(_booked / _stepSeconds);
        amps = Math.Max(amps, Math.Max(Math.Abs(begin.GetElement(0)), Math.Abs(_state.GetElement(0))));
        if (CurrentMargin * amps * _equations.LargestConstant > peaks.NewtonMetres) NoteTorques(begin, span, ref peaks);
        _booked = _at;
    }

    // Only a torque that is larger inside than at both ends has a top there.
    private void NoteTorques(Vector256<double> begin, double span, ref PeakWatch peaks)
    {
        double highest = 0, atEnds = Math.Max(Torque(begin), Torque(_state));
        foreach (double node in Nodes) highest = Math.Max(highest, TorqueAt(_booked + node * span));
        if (highest > atEnds) highest = Math.Max(highest, HighestTorque(span));
        peaks.NoteTorque(Math.Max(highest, atEnds));
    }

    private double Torque(Vector256<double> state) =>
        Math.Abs(_equations.ConstantAt(state.GetElement(0), state.GetElement(2)) * state.GetElement(0));

    // By thirds towards the top, where a torque inside the span is the largest.
    private double HighestTorque(double span)
    {
        double low = _booked, high = _booked + span;
        for (int i = 0; i < 24; i++)
        {
            double third = (high - low) / 3;
            if (TorqueAt(low + third) < TorqueAt(high - third)) low += third;
            else high -= third;
        }

        return TorqueAt((low + high) / 2);
    }

    private double TorqueAt(double at) => Torque(_step.At(at / _stepSeconds));

    private void MoveTo(double at, ref PeakWatch peaks)
    {
        if (_turn1 > _at && _turn1 <= at) peaks.Note(_step.At(_turn1 / _stepSeconds).GetElement(0));
        if (_turn2 > _at && _turn2 <= at) peaks.Note(_step.At(_turn2 / _stepSeconds).GetElement(0));
        _at = at;
        _state = at == _stepSeconds ? _step.End : _step.At(at / _stepSeconds);
        peaks.Note(_state.GetElement(0));
    }

    private void DropStep()
    {
        _stepSeconds = 0;
        _at = 0;
        _booked = 0;
    }

    private void TakeStep()
    {
        double h = _trySeconds;
        while (true)
        {
            _step = new RodasStep(_equations, h, _state);
            double error = Largest(_step.Error * _perScale);
            if (error < SettledError) error = Math.Max(error, Largest(_step.Defect(_equations, h) * _perScale) / CourseTolerance);
            if (!double.IsFinite(error)) error = 1e12;
            double factor = Math.Clamp(0.9 / Math.Sqrt(Math.Sqrt(error + 1e-12)), LeastShrink, LongestGrowth);
            bool isGood = error <= 1 || h <= ShortestStep;
            _trySeconds = Math.Clamp(h * factor, ShortestStep, LongestStep);
            if (isGood) break;
            h = _trySeconds;
        }

        _stepSeconds = h;
        _at = 0;
        _booked = 0;
        FindTurns();
        double part = FirstEvent();
        _endsAtEvent = part <= 1;
        _end = _endsAtEvent ? part * h : h;
        // A sign that changes at once must not stand still.
        if (_endsAtEvent && _end < ShortestStep) _end = Math.Min(ShortestStep, h);
    }

    private static double Largest(Vector256<double> ratio) =>
        Math.Max(Math.Abs(ratio.GetElement(0)), Math.Max(Math.Abs(ratio.GetElement(1)), Math.Abs(ratio.GetElement(2))));

    private void FindTurns()
    {
        (double first, double second) = _step.Course(0).Turns();
        _turn1 = first * _stepSeconds;
        _turn2 = second * _stepSeconds;
    }

    private double FirstEvent()
    {
        // What lies within the method's own error of zero has not passed it.
        double part = double.PositiveInfinity;
        if (_signs.Current != 0) part = Math.Min(part, _step.Course(0).FirstBelowZero(_signs.Current, 1 / _perScale.GetElement(0)));
        if (_signs.Speed != 0) part = Math.Min(part, _step.Course(1).FirstBelowZero(_signs.Speed, 1 / _perScale.GetElement(1)));
        return _signs.HasMargin ? Math.Min(part, FirstBrokenMargin(Math.Min(part, 1))) : part;
    }

    private double FirstBrokenMargin(double upTo)
    {
        double sound = 0;
        for (int i = 1; i <= Looks; i++)
        {
            double broken = upTo * i / Looks;
            if (Margin(broken) >= 0)
            {
                sound = broken;
                continue;
            }

            for (int halving = 0; halving < 60; halving++)
            {
                double middle = (sound + broken) / 2;
                if (middle <= sound || middle >= broken) break;
                if (Margin(middle) < 0) broken = middle;
                else sound = middle;
            }

            return broken;
        }

        return double.PositiveInfinity;
    }

    private double Margin(double part)
    {
        Vector256<double> state = _step.At(part);
        return _signs.Margin(_equations, state.GetElement(0), state.GetElement(1), state.GetElement(2));
    }
}
