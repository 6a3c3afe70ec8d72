using System.Linq;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>Machines that turn a load known point by point. Closed forms derived here.</summary>
public sealed class LoadTableMotionTests
{
    private const double K = 1.69;
    private static readonly Machine Shaft = new(K, 0.18, 0.003, 2, 2.5);

    // 0.5 N m s/rad in points: between points on a straight line the table is that line.
    [Fact]
    public void Advance_TableOnAViscousLine_IsTheViscousMachine()
    {
        PlantSolver viscous = Closed(new Load(0, 0.5, 0), 0), table = Closed(Table([0, 7, 40, 90, 140], [0, 3.5, 20, 45, 70]), 0, 1e-11);

        viscous.Advance(1.5);
        table.Advance(1.5);
        viscous.CloseBooks();
        table.CloseBooks();

        Assert.Equal(1, table.ArmatureAmps / viscous.ArmatureAmps, 1e-9);
        Assert.Equal(1, table.SpeedRadPerSec / viscous.SpeedRadPerSec, 1e-9);
        Assert.Equal(1, table.Energy.LoadJoules / viscous.Energy.LoadJoules, 1e-9);
        Assert.Equal(1, table.Energy.SupplyJoules / viscous.Energy.SupplyJoules, 1e-9);
    }

    // The machine rests where k I meets a point of the table: 50 N m at 100 rad/s, through R = (218 - k 100) / (50 / k).
    [Fact]
    public void Advance_ForLong_SettlesAtThePointThatTheMotorMeets()
    {
        double ohms = (218 - K * 100) / (50 / K);
        PlantSolver plant = Closed(Table([0, 20, 100, 140], [60, 15, 50, 95]), 0, sections: ohms - 0.18);

        plant.Advance(60);

        Assert.Equal(100, plant.SpeedRadPerSec, 1e-5);
        Assert.Equal(50, plant.LoadTorqueNewtonMetres, 1e-5);
        Accounts.AssertBalanced(plant, 1e-7);
    }

    // 218 V drive 100 A at most through 2.18 ohm: 169 N m.
    [Theory]
    [InlineData(168, true)]
    [InlineData(170, false)]
    public void Advance_BreakawayPeak_HoldsTheShaftUpToItsTorqueAtRest(double newtonMetres, bool turns)
    {
        PlantSolver plant = Closed(Table([0, 5, 100], [newtonMetres, 20, 30]), 0, sections: 2);

        plant.Advance(0.2);

        Assert.Equal(turns, plant.SpeedRadPerSec > 0);
        if (!turns) Assert.Equal(0, plant.SpeedRadPerSec);
    }

    // Level at 25 N m the whole way and beyond it: 5 s from 50 rad/s at 2.5 kg m2, whichever way it turns, and there it stays.
    [Theory]
    [InlineData(50)]
    [InlineData(-50)]
    public void Advance_LineOpen_ComesToRestAndStays(double speed)
    {
        PlantSolver plant = new(new PlantConditions(Shaft, Table([0, 10, 30], [25, 25, 25]), new Supply(220, 0), [], false, 0), speed);

        plant.Advance(4);
        Assert.Equal(speed / 5, plant.SpeedRadPerSec, 1e-7);
        plant.Advance(2);

        Assert.Equal(0, plant.SpeedRadPerSec);
        Accounts.AssertBalanced(plant, 1e-7);
    }

    [Fact]
    public void Advance_AnyMachineAndTable_BalancesItsEnergyAndIsTheSameInManySteps() =>
        Gen.Select(Rigs.Any, Gen.Double[0, 0.5].Array[6], Gen.Double[-1, 1]).Sample((rig, parts, spin) =>
        {
            double stall = rig.Machine.Constant * rig.PeakAmps!.Value, noLoad = rig.Supply.OpenCircuitVolts / rig.Machine.Constant;
            double[] speeds = [.. Enumerable.Range(0, 6).Select(i => noLoad * i / 6)], torques = [.. parts.Select(part => part * stall)];
            Rig table = rig with { Load = rig.Load with { Table = new LoadTable(speeds, torques) }, InitialSpeedRadPerSec = spin * noLoad };
            double ohms = rig.Supply.OpenCircuitVolts / rig.PeakAmps.Value;
            PlantSolver whole = table.Plant(ohms), many = table.Plant(ohms);

            whole.Advance(0.5);
            for (int i = 0; i < 200; i++) many.Advance(0.0025);

            Assert.Equal(many.SpeedRadPerSec / noLoad, whole.SpeedRadPerSec / noLoad, 1e-6);
            Accounts.AssertBalanced(whole, 1e-6);
            Accounts.AssertBalanced(many, 1e-6);
        }, iter: 100);

    private static Load Table(double[] radPerSec, double[] newtonMetres) => new(0, 0, 0) { Table = new LoadTable(radPerSec, newtonMetres) };

    private static PlantSolver Closed(Load load, double speed, double tolerance = PlantSolver.StepTolerance, double sections = 1.2) =>
        new(new PlantConditions(Shaft, load, new Supply(220, 0), [sections], true, 0), speed, tolerance);
}
