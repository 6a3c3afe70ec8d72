using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>Currents that change sign or turn inside a step.</summary>
public sealed class PeakTests
{
    private const double K = 0.138, Ohms = 0.28;

    // The supply dips under a machine at its no-load speed: the current leaves zero downward, and its peak lies inside a step.
    [Theory]
    [InlineData(0.18e-3, 1e-3, 0)]
    [InlineData(0.18e-3, 1e-3, 1)]
    [InlineData(1.8e-3, 10e-3, 0)]
    [InlineData(1.8e-3, 10e-3, 1)]
    public void PeakAmps_SupplyDipsAtNoLoadSpeed_IsThatOfAThousandTimesFinerSteps(double electricalSeconds, double step, double brushVolts)
    {
        Machine magnet = new(K, Ohms, electricalSeconds * Ohms, brushVolts, 0.0222);
        PlantSolver coarse = Dipped(magnet), fine = Dipped(magnet);

        for (int i = 0; i < 5; i++) coarse.Advance(step);
        for (int i = 0; i < 5000; i++) fine.Advance(step / 1000);

        Assert.True(coarse.ArmatureAmps < 0);
        Assert.InRange(fine.PeakAmps, 0.9 * (18 - 2 * brushVolts) / Ohms, (18 - 2 * brushVolts) / Ohms);
        Assert.Equal(1, coarse.PeakAmps / fine.PeakAmps, 1e-4);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void PeakAmps_SupplyDipsUnderLoad_CountsTheCurrentBack(double brushVolts)
    {
        Machine magnet = new(K, Ohms, 1.8e-3 * Ohms, brushVolts, 0.0222);
        PlantSolver coarse = AtSteady(magnet, 2), fine = AtSteady(magnet, 2);
        coarse.Change(coarse.Conditions with { Supply = new Supply(30, 0) });
        fine.Change(coarse.Conditions);

        for (int i = 0; i < 5; i++) coarse.Advance(0.01);
        for (int i = 0; i < 5000; i++) fine.Advance(1e-5);

        Assert.True(coarse.PeakAmps > 2 / K);
        Assert.Equal(1, coarse.PeakAmps / fine.PeakAmps, 1e-4);
    }

    // The machine swings with a period of 0.2 s; from 0.08 to 0.12 s after the load has gone the current is negative.
    [Theory]
    [InlineData(0.05, 0.1)]
    [InlineData(0, 0.2)]
    [InlineData(0.03, 0.4)]
    public void Advance_CurrentGoesNegativeAndBackInOneStep_EndsAsWithFineSteps(double before, double step)
    {
        Machine magnet = new(K, Ohms, 0.5 * Ohms, 1, 2e-3 * K * K / Ohms);
        PlantSolver coarse = AtSteady(magnet, 5 * K), fine = AtSteady(magnet, 5 * K);
        foreach (PlantSolver plant in new[] { coarse, fine })
        {
            plant.Change(plant.Conditions with { Load = new Load(0.45 * 5 * K, 0, 0) });
            for (int i = 0; i < (int)Math.Round(before / 1e-4); i++) plant.Advance(1e-4);
        }

        double lowest = double.PositiveInfinity;
        coarse.Advance(step);
        for (int i = 0; i < (int)Math.Round(step / 1e-4); i++)
        {
            fine.Advance(1e-4);
            lowest = Math.Min(lowest, fine.ArmatureAmps);
        }

        Assert.True(lowest < -0.05, $"{lowest}");
        Assert.Equal(1, coarse.ArmatureAmps / fine.ArmatureAmps, 1e-6);
        Assert.Equal(1, coarse.SpeedRadPerSec / fine.SpeedRadPerSec, 1e-6);
        Assert.Equal(1, coarse.PeakAmps / fine.PeakAmps, 1e-6);
    }

    // La from a twentieth of what lets the machine swing, R^2 J / (4 k^2), to two hundred times it: up to thirty turns in the one step.
    [Fact]
    public void Advance_ManySwingsInOneStep_IsThatOfFineSteps() =>
        Gen.Select(Rigs.AnyLinear, Gen.Double[-1.3, 2.3], Gen.Double[-1.2, 1.2], Gen.Double[0, 1]).Sample((rig, logHenries, spin, friction) =>
        {
            double volts = rig.Supply.OpenCircuitVolts, k = rig.Machine.Constant, ohms = rig.Machine.ArmatureOhms, topSpeed = volts / k;
            double critical = ohms * ohms * rig.Machine.InertiaKgM2 / (4 * k * k);
            Machine machine = rig.Machine with { ArmatureHenries = critical * Math.Pow(10, logHenries) };
            Load load = rig.Load with { ConstantNewtonMetres = friction * rig.Load.ConstantNewtonMetres };
            double span = 10 * Math.PI * Math.Sqrt(machine.ArmatureHenries * machine.InertiaKgM2) / k;
            PlantSolver whole = Spinning(), fine = Spinning();

            whole.Advance(span);
            for (int i = 0; i < 2000; i++) fine.Advance(span / 2000);

            Assert.Equal(fine.PeakAmps / rig.PeakAmps!.Value, whole.PeakAmps / rig.PeakAmps.Value, 1e-7);
            Assert.Equal(fine.ArmatureAmps / rig.PeakAmps.Value, whole.ArmatureAmps / rig.PeakAmps.Value, 1e-7);
            Assert.Equal(fine.SpeedRadPerSec / topSpeed, whole.SpeedRadPerSec / topSpeed, 1e-7);
            Accounts.AssertBalanced(whole, 1e-6);

            PlantSolver Spinning() => new(new PlantConditions(machine, load, rig.Supply, [], true, 0), spin * topSpeed);
        }, iter: 300);

    [Fact]
    public void PeakAmps_BuiltWithTheLineClosedAndNoInductance_IncludesTheFirstJump()
    {
        PlantSolver plant = new(new PlantConditions(new Machine(K, Ohms, 0, 1, 0.0222), Load.None, new Supply(48, 0), [], true, 0), 0);
        Assert.Equal(47 / Ohms, plant.PeakAmps, 1e-9);

        plant.Advance(1);

        Assert.True(plant.ArmatureAmps < 100);
        Assert.Equal(47 / Ohms, plant.PeakAmps, 1e-9);
    }

    private static PlantSolver Dipped(Machine machine)
    {
        PlantSolver plant = new(
            new PlantConditions(machine, Load.None, new Supply(48, 0), [], true, 0), (48 - machine.BrushDropVolts) / machine.Constant);
        plant.Advance(0.01);
        Assert.Equal(0, plant.ArmatureAmps, 1e-9);
        plant.Change(plant.Conditions with { Supply = new Supply(30, 0) });
        plant.RestartPeak();
        return plant;
    }

    private static PlantSolver AtSteady(Machine machine, double torque)
    {
        double speed = (48 - machine.BrushDropVolts - Ohms * torque / K) / K;
        PlantSolver plant = new(new PlantConditions(machine, new Load(torque, 0, 0), new Supply(48, 0), [], true, 0), speed);
        for (int i = 0; i < 2000; i++) plant.Advance(0.01);
        Assert.Equal(torque / K, plant.ArmatureAmps, 1e-6);
        plant.RestartPeak();
        return plant;
    }
}
