using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>Where a linear regime settles, and from when on it needs no more watching.</summary>
public sealed class SettlingTests
{
    // 220 V, 0.18 ohm, 1.69 V s/rad, 70 N m: 70 / 1.69 = 41.42 A and (220 - 41.42 x 0.18) / 1.69 = 125.77 rad/s.
    [Theory]
    [InlineData(0.003)]
    [InlineData(0)]
    public void TrySettle_LoadedMachine_IsWhereTorqueAndVoltagesBalance(double henries)
    {
        Machine machine = new(1.69, 0.18, henries, 0, 2.5);
        Regime regime = new(machine, 1.69, new Load(70, 0, 0), 220, 0.18, 1, 1);

        // Without inductance current and speed stand on the balance already: (220 - 100 x 1.69) / 0.18 A.
        Assert.True(regime.TrySettle(51 / 0.18, 100, out double amps, out double speed));

        Assert.Equal(41.42, amps, 0.005);
        Assert.Equal(125.77, speed, 0.005);
    }

    // Source: the three cases of a damped second-order system, any control text. Critical is L = R^2 J / (4 k^2).
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public void Turns_CurrentThatRisesFromRest_DoesSoOnceMoreOrSwings(double overCritical, bool swings)
    {
        Machine machine = new(0.03, 2.4, 0.012 * overCritical, 0, 7.5e-6);
        Regime regime = new(machine, 0.03, Load.None, 12, 2.4, 1, 1);
        double slope = regime.AmpsSlope.At(0, 0), acceleration = regime.Acceleration.At(0, 0);

        Assert.Equal(swings, regime.Swings);
        Assert.True(swings || regime.Turns(slope, regime.AmpsSlope.Amps * slope + regime.AmpsSlope.Speed * acceleration));
    }

    // L = 2 R^2 J / (4 k^2) = 24 mH: m = -R / 2L = -50 and r = 50 per second, so x = e^(-50 t) (x0 cos 50 t + (x0' + 50 x0) / 50 sin 50 t).
    [Theory]
    [InlineData(1, 0, 1.4142)]
    [InlineData(0, 50, 1)]
    [InlineData(1, -50, 1)]
    public void LargestSwing_OfADampedOne_IsItsEnvelopeNow(double off, double slope, double largest)
    {
        Regime regime = new(new Machine(0.03, 2.4, 0.024, 0, 7.5e-6), 0.03, Load.None, 12, 2.4, 1, 1);

        Assert.Equal(largest, regime.LargestSwing(off, slope), 0.0001);
    }

    // The same machine without inductance: its current falls from standstill on and never turns.
    [Fact]
    public void Turns_CurrentWithoutInductance_Never()
    {
        Regime regime = new(new Machine(0.03, 2.4, 0, 0, 7.5e-6), 0.03, Load.None, 12, 2.4, 1, 1);
        double slope = regime.AmpsSlope.At(5, 0), acceleration = regime.Acceleration.At(5, 0);

        Assert.False(regime.Turns(slope, regime.AmpsSlope.Amps * slope + regime.AmpsSlope.Speed * acceleration));
    }

    // Spans that never come twice in a row are watched every time; equal ones only until nothing can happen any more.
    [Fact]
    public void Advance_EqualSpans_GoTheWayOfUnequalOnes() =>
        Gen.Select(Rigs.AnyLinear, Gen.Double[-1.2, 1.2], Gen.Double[0, 1], Gen.Double[-1.5, 2]).Sample((rig, spin, friction, logHenries) =>
        {
            double topSpeed = rig.Supply.OpenCircuitVolts / rig.Machine.Constant;
            double critical = Math.Pow(rig.Machine.ArmatureOhms / rig.Machine.Constant, 2) * rig.Machine.InertiaKgM2 / 4;
            Machine machine = rig.Machine with { ArmatureHenries = logHenries < -1.3 ? 0 : critical * Math.Pow(10, logHenries) };
            Load load = rig.Load with { ConstantNewtonMetres = friction * rig.Load.ConstantNewtonMetres };
            double ohms = rig.Machine.ArmatureOhms, most = rig.Supply.OpenCircuitVolts / ohms, span = rig.Machine.InertiaKgM2 * ohms / (rig.Machine.Constant * rig.Machine.Constant) / 50;
            PlantSolver equal = Spinning(), unequal = Spinning();

            for (int i = 0; i < 500; i++)
            {
                equal.Advance(span);
                unequal.Advance(0.4 * span);
                unequal.Advance(0.6 * span);
            }

            Assert.Equal(0, (equal.PeakAmps - unequal.PeakAmps) / most, 1e-9);
            Assert.Equal(0, (equal.ArmatureAmps - unequal.ArmatureAmps) / most, 1e-9);
            Assert.Equal(0, (equal.SpeedRadPerSec - unequal.SpeedRadPerSec) / topSpeed, 1e-9);

            PlantSolver Spinning() => new(new PlantConditions(machine, load, rig.Supply, [], true, 0), spin * topSpeed);
        }, iter: 300);
}
