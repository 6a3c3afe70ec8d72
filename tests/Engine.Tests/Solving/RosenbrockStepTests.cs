using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

// Source: the order that the method's authors state (Hairer and Wanner; tests/published/SOURCES.md, RODAS).
public sealed class RosenbrockStepTests
{
    private const double Seconds = 0.08;
    private static readonly Machine Small = new(0.06, 1.5, 0.01, 0, 2e-4);

    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    [InlineData(0.06)]
    public void Apply_FanOnTheShaft_IsOfOrderFour(double henries)
    {
        Regime regime = new(Small with { ArmatureHenries = henries }, new Load(0, 0, 4e-6), 24, 1.5, 1, 1);
        (double amps, double speed) = Begin(henries);
        (double exactAmps, double exactSpeed) = ClassicalMethod(regime, amps, speed, 40_000);

        AssertOrderFour(regime, amps, speed, exactAmps, exactSpeed);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.06)]
    public void Apply_LinearMachine_IsOfOrderFour(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        Regime regime = new(machine, new Load(0.02, 1e-5, 0), 24, 1.5, 1, 1);
        (double exactAmps, double exactSpeed) = new ClosedForm(machine, 1e-5, 0.02, 24, 1.5).At(Seconds, 0, 0);

        AssertOrderFour(regime, 0, 0, exactAmps, exactSpeed);
    }

    [Fact]
    public void Apply_SmallStep_EstimatesItsErrorFromAbove()
    {
        Regime regime = new(Small, new Load(0, 0, 4e-6), 24, 1.5, 1, 1);
        double amps = 5, speed = 100;

        RosenbrockStep.Apply(regime, 0.002, ref amps, ref speed, out double ampsError, out double speedError);

        (double exactAmps, double exactSpeed) = ClassicalMethod(regime, 5, 100, 10_000, 0.002);
        Assert.InRange(Math.Abs(amps - exactAmps), 0, Math.Abs(ampsError));
        Assert.InRange(Math.Abs(speed - exactSpeed), 0, Math.Abs(speedError));
        Assert.InRange(Math.Abs(ampsError), 1e-12, 1e-2);
    }

    [Fact]
    public void Apply_StepFarBeyondTheArmatureTimeConstant_DoesNotBlowUp()
    {
        Regime regime = new(Small with { ArmatureHenries = 1e-6 }, new Load(0, 0, 4e-6), 24, 1.5, 1, 1);
        double amps = 0, speed = 0;

        for (int i = 0; i < 1000; i++) RosenbrockStep.Apply(regime, 0.002, ref amps, ref speed, out _, out _);

        // Settled: k w + R T(w) / k = V.
        Assert.Equal(24, 0.06 * speed + 1.5 * 4e-6 * speed * speed / 0.06, 1e-9);
        Assert.Equal(4e-6 * speed * speed / 0.06, amps, 1e-9);
    }

    private static (double Amps, double Speed) Begin(double henries) => (henries == 0 ? 16 : 0, 0);

    private static void AssertOrderFour(Regime regime, double amps, double speed, double exactAmps, double exactSpeed)
    {
        double[] errors = new double[4];
        for (int level = 0; level < errors.Length; level++)
        {
            double i = amps, w = speed;
            int steps = 40 << level;
            for (int n = 0; n < steps; n++) RosenbrockStep.Apply(regime, Seconds / steps, ref i, ref w, out _, out _);
            errors[level] = Math.Abs(i - exactAmps) / 16 + Math.Abs(w - exactSpeed) / 400;
        }

        for (int level = 1; level < errors.Length; level++)
        {
            Assert.InRange(Math.Log2(errors[level - 1] / errors[level]), 3.7, 4.5);
        }
    }

    private static (double Amps, double Speed) ClassicalMethod(Regime regime, double amps, double speed, int steps, double seconds = Seconds)
    {
        double h = seconds / steps;
        for (int n = 0; n < steps; n++)
        {
            double a1 = regime.AmpsSlope(amps, speed), b1 = regime.Acceleration(amps, speed);
            double a2 = regime.AmpsSlope(amps + h / 2 * a1, speed + h / 2 * b1), b2 = regime.Acceleration(amps + h / 2 * a1, speed + h / 2 * b1);
            double a3 = regime.AmpsSlope(amps + h / 2 * a2, speed + h / 2 * b2), b3 = regime.Acceleration(amps + h / 2 * a2, speed + h / 2 * b2);
            double a4 = regime.AmpsSlope(amps + h * a3, speed + h * b3), b4 = regime.Acceleration(amps + h * a3, speed + h * b3);
            amps += h / 6 * (a1 + 2 * a2 + 2 * a3 + a4);
            speed += h / 6 * (b1 + 2 * b2 + 2 * b3 + b4);
        }

        return (amps, speed);
    }
}
