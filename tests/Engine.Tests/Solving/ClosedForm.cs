using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>
/// A linear machine by the exponentials of its roots, written out for this test alone: current and speed go to their
/// steady values by e^(At) with A the 2 x 2 matrix of the two equations.
/// </summary>
internal sealed class ClosedForm
{
    private readonly double _a, _b, _c, _d;
    private readonly double _steadyAmps, _steadySpeed;

    public ClosedForm(Machine machine, double viscous, double constantTorque, double drivingVolts, double ohms)
    {
        double k = machine.Constant;
        _a = -ohms / machine.ArmatureHenries;
        _b = -k / machine.ArmatureHenries;
        _c = k / machine.InertiaKgM2;
        _d = -viscous / machine.InertiaKgM2;
        _steadySpeed = (k * drivingVolts - ohms * constantTorque) / (k * k + ohms * viscous);
        _steadyAmps = (drivingVolts - k * _steadySpeed) / ohms;
    }

    /// <summary>Above 0: two real roots; below 0: a complex pair.</summary>
    public double Discriminant => (_a - _d) * (_a - _d) / 4 + _b * _c;

    public (double Amps, double Speed) At(double seconds, double amps, double speed)
    {
        double middle = (_a + _d) / 2, d = Discriminant, rate = Math.Sqrt(Math.Abs(d));
        double even, odd;
        if (d > 0)
        {
            // The roots' product is the determinant, so that the slow one is not a difference of large numbers.
            double fast = middle - rate, slow = (_a * _d - _b * _c) / fast;
            double fastPart = Math.Exp(fast * seconds), slowPart = Math.Exp(slow * seconds);
            odd = (slowPart - fastPart) / (slow - fast);
            even = slowPart - slow * odd;
        }
        else
        {
            double envelope = Math.Exp(middle * seconds);
            odd = d == 0 ? envelope * seconds : envelope * Math.Sin(rate * seconds) / rate;
            even = (d == 0 ? envelope : envelope * Math.Cos(rate * seconds)) - middle * odd;
        }

        double i = amps - _steadyAmps, w = speed - _steadySpeed;
        return (_steadyAmps + even * i + odd * (_a * i + _b * w), _steadySpeed + even * w + odd * (_c * i + _d * w));
    }

    /// <summary>Integral over a span by Simpson's rule.</summary>
    public double Integrate(Func<double, double, double> value, double seconds, double amps, double speed, int panels)
    {
        double sum = 0, h = seconds / panels;
        for (int n = 0; n <= panels; n++)
        {
            (double i, double w) = At(n * h, amps, speed);
            sum += (n == 0 || n == panels ? 1 : n % 2 == 1 ? 4 : 2) * value(i, w);
        }

        return sum * h / 3;
    }
}
