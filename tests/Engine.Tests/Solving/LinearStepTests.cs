using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class LinearStepTests
{
    private const double Volts = 24;
    private static readonly Machine Small = new(0.06, 1.5, 0.01, 0, 2e-4);

    // R^2 J / (4 k^2): both roots coincide.
    private const double CriticalHenries = 1.5 * 1.5 * 2e-4 / (4 * 0.06 * 0.06);

    public static TheoryData<double, double> Spans { get; } = AllSpans();

    [Theory]
    [MemberData(nameof(Spans))]
    public void Apply_AnyInductance_IsTheExponentialOfTheRoots(double henries, double seconds)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        ClosedForm exact = new(machine, 1e-5, 0.02, Volts, 1.5);
        double amps = 3, speed = 50;
        StepIntegrals integrals = default;

        Advance(RegimeOf(machine, new Load(0.02, 1e-5, 0)), seconds, ref amps, ref speed, ref integrals);

        (double exactAmps, double exactSpeed) = exact.At(seconds, 3, 50);
        Assert.Equal(exactAmps, amps, 1e-11);
        Assert.Equal(exactSpeed, speed, 1e-10);
    }

    [Fact]
    public void Apply_CriticalInductance_HasADoubleRoot()
    {
        Machine machine = Small with { ArmatureHenries = CriticalHenries };
        ClosedForm exact = new(machine, 0, 0, Volts, 1.5);
        double amps = 0, speed = 0;
        StepIntegrals integrals = default;

        Advance(RegimeOf(machine, Load.None), 0.02, ref amps, ref speed, ref integrals);

        // i = (V/L) t e^(st) with s = -R/(2L).
        Assert.InRange(exact.Discriminant, -1e-9, 1e-9);
        Assert.Equal(Volts / CriticalHenries * 0.02 * Math.Exp(-1.5 / (2 * CriticalHenries) * 0.02), amps, 1e-10);
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.01)]
    [InlineData(CriticalHenries)]
    [InlineData(0.2)]
    [InlineData(1)]
    public void Apply_Integrals_AreThoseOfFineSimpson(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        ClosedForm exact = new(machine, 1e-5, 0.02, Volts, 1.5);
        double amps = 3, speed = 50, seconds = 0.03;
        StepIntegrals found = default;

        Advance(RegimeOf(machine, new Load(0.02, 1e-5, 0)), seconds, ref amps, ref speed, ref found);

        double Exact(Func<double, double, double> value) => exact.Integrate(value, seconds, 3, 50, 4000);
        Assert.Equal(1, found.AmpSeconds / Exact((i, w) => i), 1e-9);
        Assert.Equal(1, found.SquareAmpSeconds / Exact((i, w) => i * i), 1e-9);
        Assert.Equal(1, found.Radians / Exact((i, w) => w), 1e-9);
        Assert.Equal(1, found.SquareSpeedSeconds / Exact((i, w) => w * w), 1e-9);
    }

    [Fact]
    public void Apply_ZeroSpan_ChangesNothing()
    {
        double amps = 3, speed = 50;
        StepIntegrals integrals = default;

        Advance(RegimeOf(Small, Load.None), 0, ref amps, ref speed, ref integrals);

        Assert.Equal(3, amps);
        Assert.Equal(50, speed);
        Assert.Equal(default, integrals);
    }

    [Fact]
    public void Apply_TwoHalfSpans_AreOneWholeSpan() =>
        Gen.Select(Rigs.AnyLinear, Gen.Double[-6, 0]).Sample((rig, logSeconds) =>
        {
            double seconds = Math.Pow(10, logSeconds);
            Regime regime = RegimeOf(rig.Machine, rig.Load, rig.Supply.OpenCircuitVolts, rig.Machine.ArmatureOhms);
            double peak = rig.PeakAmps!.Value, amps = peak / 2, speed = 10, halfAmps = amps, halfSpeed = speed;
            StepIntegrals whole = default, halves = default;

            Advance(regime, seconds, ref amps, ref speed, ref whole);
            Advance(regime, seconds / 2, ref halfAmps, ref halfSpeed, ref halves);
            Advance(regime, seconds / 2, ref halfAmps, ref halfSpeed, ref halves);

            Assert.Equal(amps / peak, halfAmps / peak, 1e-11);
            Assert.Equal(1, speed / halfSpeed, 1e-11);
            Assert.Equal(whole.AmpSeconds / (peak * seconds), halves.AmpSeconds / (peak * seconds), 1e-11);
            Assert.Equal(whole.SquareAmpSeconds / (peak * peak * seconds), halves.SquareAmpSeconds / (peak * peak * seconds), 1e-11);
            Assert.Equal(1, whole.Radians / halves.Radians, 1e-11);
            Assert.Equal(1, whole.SquareSpeedSeconds / halves.SquareSpeedSeconds, 1e-11);
        }, iter: 200);

    [Theory]
    [InlineData(1)]
    [InlineData(1e-2)]
    [InlineData(1e-4)]
    [InlineData(1e-6)]
    public void Apply_HoweverStiff_BalancesTheEnergy(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        double amps = 0, speed = 0;
        StepIntegrals span = default;

        Advance(RegimeOf(machine, new Load(0.02, 1e-5, 0)), 0.05, ref amps, ref speed, ref span);

        double supply = Volts * span.AmpSeconds;
        double spent = 1.5 * span.SquareAmpSeconds + henries * amps * amps / 2
            + 2e-4 * speed * speed / 2 + 0.02 * span.Radians + 1e-5 * span.SquareSpeedSeconds;
        Assert.Equal(1, spent / supply, 1e-12);
    }

    private static void Advance(Regime regime, double seconds, ref double amps, ref double speed, ref StepIntegrals sums)
    {
        LinearIntegrals.Add(regime, seconds, amps, speed, true, ref sums);
        new LinearStep(regime, seconds).Apply(ref amps, ref speed);
    }

    private static Regime RegimeOf(Machine machine, Load load, double volts = Volts, double ohms = 1.5) =>
        new(machine, machine.Constant, load, volts, ohms, 1, 1);

    private static TheoryData<double, double> AllSpans()
    {
        TheoryData<double, double> spans = [];
        foreach (double henries in new[] { 1, 0.2, CriticalHenries, 0.01, 1e-3, 1e-4, 1e-5, 1e-6 })
        {
            foreach (double seconds in new[] { 1e-7, 2e-5, 1e-3, 0.1, 2.0 }) spans.Add(henries, seconds);
        }

        return spans;
    }
}
