using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>A load that pulls one way whatever the speed: what it drives, what drives it and what holds it.</summary>
public sealed class HoistTests
{
    private const double K = 1.69;
    private const double Inertia = 2.5;
    private static readonly Machine Shaft = new(K, 0.18, 0.003, 2, Inertia);

    [Fact]
    public void Advance_LineOpen_FallsFreely()
    {
        PlantSolver plant = Open(Hoist(100), 0);

        plant.Advance(0.7);

        Assert.Equal(-100 * 0.7 / Inertia, plant.SpeedRadPerSec, 1e-10);
        Assert.Equal(100, plant.LoadTorqueNewtonMetres);
        plant.CloseBooks();
        // What the load gave is all kinetic.
        Assert.Equal(-plant.KineticJoules, plant.Energy.LoadJoules, 1e-8);
    }

    [Fact]
    public void Advance_LineOpenWhileRising_SlowsThroughZeroWithoutAStop()
    {
        PlantSolver plant = Open(Hoist(100), 20);

        plant.Advance(1);

        Assert.Equal(20 - 100 / Inertia, plant.SpeedRadPerSec, 1e-10);
    }

    [Fact]
    public void Advance_LineOpenBesideFriction_RisesSlowerThanItFalls()
    {
        // Up: both brake, (100 + 30) / J. At the top the friction of 30 N m does not hold 100 N m. Down: (100 - 30) / J.
        PlantSolver plant = Open(Hoist(100, friction: 30), 26);

        plant.Advance(0.5);
        Assert.Equal(0, plant.SpeedRadPerSec, 1e-9);
        plant.Advance(0.4);

        Assert.Equal(-70 * 0.4 / Inertia, plant.SpeedRadPerSec, 1e-9);
    }

    [Theory]
    [InlineData(100)]
    [InlineData(-100)]
    public void Advance_LineOpenFrictionAboveTheHoist_HoldsAtRest(double hoist)
    {
        PlantSolver plant = Open(Hoist(hoist, friction: 100.5), 0);

        plant.Advance(3);

        Assert.Equal(0, plant.SpeedRadPerSec);
        Assert.Equal(0, plant.Acceleration);
        Assert.Equal(0, plant.LoadTorqueNewtonMetres);
    }

    [Fact]
    public void Advance_HeldByFriction_BreaksAwayUpwardsAboveBothAndNotBefore()
    {
        // Friction of 101 N m holds 100 N m; upwards the motor must make both together. Until then the current rises as in a coil.
        const double Ohms = 1.4;
        double final = 218 / Ohms, tau = 0.003 / Ohms, breakSeconds = -tau * Math.Log(1 - 201 / K / final);
        PlantSolver plant = Closed(Hoist(100, friction: 101), 0, Ohms);

        plant.Advance(breakSeconds * 0.999);
        Assert.Equal(0, plant.SpeedRadPerSec);
        plant.Advance(breakSeconds * 0.001 + 0.004);

        (double amps, double speed) = new ClosedForm(Shaft, 0, 201, 218, Ohms).At(0.004, 201 / K, 0);
        Assert.Equal(amps, plant.ArmatureAmps, 1e-7);
        Assert.Equal(speed, plant.SpeedRadPerSec, 1e-7);
    }

    [Fact]
    public void Advance_RaisingForLong_SettlesWhereTheTorquesBalance()
    {
        PlantSolver plant = Closed(Hoist(100), 0, 0.18);

        plant.Advance(10);

        Assert.Equal(100 / K, plant.ArmatureAmps, 1e-9);
        Assert.Equal((218 - 0.18 * 100 / K) / K, plant.SpeedRadPerSec, 1e-9);
        Accounts.AssertBalanced(plant, 1e-12);
    }

    [Fact]
    public void Advance_OverhaulingFromRest_DrivesBeyondNoLoadAndFeedsBack()
    {
        PlantSolver plant = Closed(Hoist(-100), 0, 0.18);

        plant.Advance(10);

        // Generating, the brush drop changes sides.
        Assert.Equal(-100 / K, plant.ArmatureAmps, 1e-9);
        Assert.Equal((222 + 0.18 * 100 / K) / K, plant.SpeedRadPerSec, 1e-9);
        Accounts.AssertBalanced(plant, 1e-12);
    }

    [Fact]
    public void Advance_OnTheBrakeResistor_LowersAtTheSpeedWhoseCurrentHolds()
    {
        PlantConditions conditions = new(Shaft, Hoist(100), new Supply(220, 0), [], false, 0) { BrakeOhms = 1.2, BrakeClosed = true };
        PlantSolver plant = new(conditions, 0);

        plant.Advance(40);

        Assert.Equal(100 / K, plant.ArmatureAmps, 1e-8);
        Assert.Equal(-(2 + 1.38 * 100 / K) / K, plant.SpeedRadPerSec, 1e-8);
        Accounts.AssertBalanced(plant, 1e-10);
    }

    [Fact]
    public void Advance_FanBesideIt_FallsToTheSpeedThatTheFanHolds()
    {
        PlantSolver plant = Open(new Load(0, 0, 0.01) { HoistNewtonMetres = 100 }, 0);

        plant.Advance(1);
        // J dw/dt = -(T - c w^2): w = -sqrt(T/c) tanh(t sqrt(T c) / J).
        Assert.Equal(-100 * Math.Tanh(1 / Inertia), plant.SpeedRadPerSec, 1e-5);
        plant.Advance(60);

        Assert.Equal(-100, plant.SpeedRadPerSec, 1e-5);
        Accounts.AssertBalanced(plant, 1e-7);
    }

    [Fact]
    public void Advance_AnyMachineAndHoist_BalancesItsEnergyAndIsTheSameInManySteps() =>
        Gen.Select(Rigs.Any, Gen.Double[-0.8, 0.8], Gen.Double[-1, 1]).Sample((rig, part, spin) =>
        {
            double stall = rig.Machine.Constant * rig.PeakAmps!.Value;
            Rig hoist = rig with
            {
                Load = rig.Load with { HoistNewtonMetres = part * stall },
                InitialSpeedRadPerSec = spin * rig.Supply.OpenCircuitVolts / rig.Machine.Constant,
            };
            double ohms = rig.Supply.OpenCircuitVolts / rig.PeakAmps.Value;
            PlantSolver whole = hoist.Plant(ohms), many = hoist.Plant(ohms);

            whole.Advance(0.5);
            for (int i = 0; i < 500; i++) many.Advance(0.001);

            double speed = rig.Supply.OpenCircuitVolts / rig.Machine.Constant;
            Assert.Equal(many.SpeedRadPerSec / speed, whole.SpeedRadPerSec / speed, 1e-6);
            Accounts.AssertBalanced(whole, 1e-6);
            Accounts.AssertBalanced(many, 1e-6);
        }, iter: 200);

    private static Load Hoist(double newtonMetres, double friction = 0) => new(friction, 0, 0) { HoistNewtonMetres = newtonMetres };

    private static PlantSolver Open(Load load, double speed) => new(new PlantConditions(Shaft, load, new Supply(220, 0), [], false, 0), speed);

    private static PlantSolver Closed(Load load, double speed, double ohms) =>
        new(new PlantConditions(Shaft, load, new Supply(220, 0), [ohms - Shaft.ArmatureOhms], true, 0), speed);
}
