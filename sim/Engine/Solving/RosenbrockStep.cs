namespace StarterCtl.Engine.Solving;

/// <summary>
/// One step of a linearly implicit method of order 4 with an embedded error estimate, for regimes whose load torque bends
/// with speed. Stable however short the armature's time constant is.
/// </summary>
/// <remarks>
/// Coefficients of RODAS: Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd ed., section VI.4 (from
/// memory; the tests hold the method to its order and to the closed form).
/// </remarks>
public static class RosenbrockStep
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

    /// <summary>Moves a state over a span.</summary>
    /// <param name="regime">The regime that holds over the span.</param>
    /// <param name="h">Span, s, above 0.</param>
    /// <param name="amps">Current, A: before, then after.</param>
    /// <param name="speed">Speed, rad/s: before, then after.</param>
    /// <param name="ampsError">Estimated error of the current, A.</param>
    /// <param name="speedError">Estimated error of the speed, rad/s.</param>
    public static void Apply(Regime regime, double h, ref double amps, ref double speed, out double ampsError, out double speedError)
    {
        regime.Jacobian(speed, out double j00, out double j01, out double j10, out double j11);
        double diagonal = 1 / (h * Gamma);
        double m00 = diagonal - j00, m11 = diagonal - j11;
        double scale = 1 / (m00 * m11 - j01 * j10);
        double i00 = m11 * scale, i01 = j01 * scale, i10 = j10 * scale, i11 = m00 * scale;
        double hc = 1 / h;

        double f = regime.AmpsSlope(amps, speed), g = regime.Acceleration(amps, speed);
        double x1 = i00 * f + i01 * g, y1 = i10 * f + i11 * g;

        double u = amps + A21 * x1, v = speed + A21 * y1;
        f = regime.AmpsSlope(u, v) + hc * (C21 * x1);
        g = regime.Acceleration(u, v) + hc * (C21 * y1);
        double x2 = i00 * f + i01 * g, y2 = i10 * f + i11 * g;

        u = amps + A31 * x1 + A32 * x2;
        v = speed + A31 * y1 + A32 * y2;
        f = regime.AmpsSlope(u, v) + hc * (C31 * x1 + C32 * x2);
        g = regime.Acceleration(u, v) + hc * (C31 * y1 + C32 * y2);
        double x3 = i00 * f + i01 * g, y3 = i10 * f + i11 * g;

        u = amps + A41 * x1 + A42 * x2 + A43 * x3;
        v = speed + A41 * y1 + A42 * y2 + A43 * y3;
        f = regime.AmpsSlope(u, v) + hc * (C41 * x1 + C42 * x2 + C43 * x3);
        g = regime.Acceleration(u, v) + hc * (C41 * y1 + C42 * y2 + C43 * y3);
        double x4 = i00 * f + i01 * g, y4 = i10 * f + i11 * g;

        u = amps + A51 * x1 + A52 * x2 + A53 * x3 + A54 * x4;
        v = speed + A51 * y1 + A52 * y2 + A53 * y3 + A54 * y4;
        f = regime.AmpsSlope(u, v) + hc * (C51 * x1 + C52 * x2 + C53 * x3 + C54 * x4);
        g = regime.Acceleration(u, v) + hc * (C51 * y1 + C52 * y2 + C53 * y3 + C54 * y4);
        double x5 = i00 * f + i01 * g, y5 = i10 * f + i11 * g;

        u += x5;
        v += y5;
        f = regime.AmpsSlope(u, v) + hc * (C61 * x1 + C62 * x2 + C63 * x3 + C64 * x4 + C65 * x5);
        g = regime.Acceleration(u, v) + hc * (C61 * y1 + C62 * y2 + C63 * y3 + C64 * y4 + C65 * y5);
        ampsError = i00 * f + i01 * g;
        speedError = i10 * f + i11 * g;
        amps = u + ampsError;
        speed = v + speedError;
    }
}
