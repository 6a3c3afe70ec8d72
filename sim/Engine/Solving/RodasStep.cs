using System.Runtime.Intrinsics;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// One step of a linearly implicit method of order 4 with an embedded error estimate and a smooth solution inside the step.
/// Stable however short a time constant is, and exact to its order where a mass is 0.
/// </summary>
/// <remarks>
/// Coefficients of RODAS: Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd ed., section VI.4 (from
/// memory; the tests hold the method and its inner solution to their orders and to closed forms).
/// </remarks>
public readonly struct RodasStep
{
    private const double Gamma = 0.25;
    private const double A21 = 1.544, A31 = 0.9466785280815826, A32 = 0.2557011698983284;
    private const double A41 = 3.314825187068521, A42 = 2.896124015972201, A43 = 0.9986419139977817;
    private const double A51 = 1.221224509226641, A52 = 6.019134481288629, A53 = 12.53708332932087, A54 = -0.6878860361058950;
    private const double C21 = -5.6688, C31 = -2.430093356833875, C32 = -0.2063599157091915;
    private const double C41 = -0.1073529058151375, C42 = -9.594562251023355, C43 = -20.47028614809616;
    private const double C51 = 7.496443313967647, C52 = -10.24680431464352, C53 = -33.99990352819905, C54 = 11.70890893206160;
    private const double C61 = 8.083246795921522, C62 = -7.981132988064893, C63 = -31.52159432874371;
    private const double C64 = 16.31930543123136, C65 = -6.058818238834054;
    private const double D21 = 10.12623508344586, D22 = -7.487995877610167, D23 = -34.80091861555747;
    private const double D24 = -7.992771707568823, D25 = 1.025137723295662;
    private const double D31 = -0.6762803392806898, D32 = 6.087714651680015, D33 = 16.43084320892478;
    private const double D34 = 24.76722511418386, D35 = -6.594389125716872;

    // Where the course inside is held against the equations: off the middle, where an error that is 0 at both ends has no slope.
    private const double LookedAt = 0.25;

    private readonly Vector256<double> _begin;
    private readonly Vector256<double> _way;
    private readonly Vector256<double> _bend;
    private readonly Vector256<double> _twist;
    private readonly Vector256<double> _slope;

    /// <summary>Makes a step.</summary>
    /// <param name="equations">The equations that hold over it.</param>
    /// <param name="seconds">Its span, s, above 0.</param>
    /// <param name="begin">State at its beginning.</param>
    public RodasStep(MachineEquations equations, double seconds, Vector256<double> begin)
    {
        _begin = begin;
        equations.Inverse(begin, 1 / (seconds * Gamma), out Vector256<double> i0, out Vector256<double> i1, out Vector256<double> i2);
        Vector256<double> pull = equations.Masses / Vector256.Create(seconds);

        Vector256<double> u1 = Solve(i0, i1, i2, equations.Right(begin));
        Vector256<double> u2 = Solve(i0, i1, i2, equations.Right(begin + u1 * A21) + pull * (u1 * C21));
        Vector256<double> u3 = Solve(i0, i1, i2, equations.Right(begin + u1 * A31 + u2 * A32) + pull * (u1 * C31 + u2 * C32));
        Vector256<double> u4 = Solve(
            i0, i1, i2, equations.Right(begin + u1 * A41 + u2 * A42 + u3 * A43) + pull * (u1 * C41 + u2 * C42 + u3 * C43));
        Vector256<double> gone = u1 * A51 + u2 * A52 + u3 * A53 + u4 * A54;
        Vector256<double> last = begin + gone;
        Vector256<double> u5 = Solve(i0, i1, i2, equations.Right(last) + pull * (u1 * C51 + u2 * C52 + u3 * C53 + u4 * C54));
        last += u5;
        Error = Solve(i0, i1, i2, equations.Right(last) + pull * (u1 * C61 + u2 * C62 + u3 * C63 + u4 * C64 + u5 * C65));
        End = last + Error;
        _way = End - begin;
        _bend = u1 * D21 + u2 * D22 + u3 * D23 + u4 * D24 + u5 * D25;
        _twist = u1 * D31 + u2 * D32 + u3 * D33 + u4 * D34 + u5 * D35;
        // From the increments: the difference of two states carries their rounding, which outlives any shortening of the step.
        _slope = gone + u5 + Error + _bend * (1 - 2 * LookedAt) + _twist * (LookedAt * (2 - 3 * LookedAt));
    }

    /// <summary>State at the beginning.</summary>
    public Vector256<double> Begin => _begin;

    /// <summary>State at the end.</summary>
    public Vector256<double> End { get; }

    /// <summary>Estimated error of each state.</summary>
    public Vector256<double> Error { get; }

    /// <summary>
    /// By how much the state inside the step fails the equations, as a difference of each state. The ends of a step far beyond every
    /// time constant may be right where its course between them is not.
    /// </summary>
    /// <param name="equations">Those of the step.</param>
    /// <param name="seconds">The step's span, s.</param>
    public Vector256<double> Defect(MachineEquations equations, double seconds)
    {
        equations.Inverse(_begin, 1 / (seconds * Gamma), out Vector256<double> i0, out Vector256<double> i1, out Vector256<double> i2);
        return Solve(i0, i1, i2, equations.Right(At(LookedAt)) - equations.Masses / Vector256.Create(seconds) * _slope);
    }

    /// <summary>State inside the step.</summary>
    /// <param name="part">Part of the span, 0 to 1.</param>
    public Vector256<double> At(double part)
    {
        // A state that stands still stays where it is to the last bit.
        return _begin + (_way + (_bend + _twist * part) * (1 - part)) * part;
    }

    /// <summary>One state inside the step as a cubic c0 + c1 s + c2 s^2 + c3 s^3 of the part s of the span.</summary>
    /// <param name="index">Which state.</param>
    public Cubic Course(int index)
    {
        double begin = _begin.GetElement(index), bend = _bend.GetElement(index), twist = _twist.GetElement(index);
        return new Cubic(begin, _way.GetElement(index) + bend, twist - bend, -twist);
    }

    private static Vector256<double> Solve(Vector256<double> i0, Vector256<double> i1, Vector256<double> i2, Vector256<double> right) =>
        i0 * right.GetElement(0) + i1 * right.GetElement(1) + i2 * right.GetElement(2);
}
