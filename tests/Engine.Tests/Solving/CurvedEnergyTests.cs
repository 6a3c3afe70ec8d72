using System;
using System.Linq;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>The energies of the adaptive method: they come from its course inside the steps, which has to be as good as their ends.</summary>
public sealed class CurvedEnergyTests
{
    private static readonly Machine Shaft = new(1.69, 0.18, 0.003, 0, 2.5);
    private static readonly Load Fan = new(20, 0.05, 0.004);

    // Halving the steps: a step's error goes with h^4, so a sixteenth of the tolerance halves it. Measured: 3.6 to 4.1.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.05, 0.5)]
    [InlineData(1e-5, 10)]
    public void Advance_SixteenthOfTheTolerance_HalvesTheStepsAndTheEnergiesFollowWithOrderFour(double henries, double seconds)
    {
        double[] exact = Energies(Started(henries, 1e-14), seconds);
        double[][] errors = [.. Enumerable.Range(0, 4).Select(level =>
            Energies(Started(henries, 1e-6 / Math.Pow(16, level)), seconds).Zip(exact, (energy, reference) => Math.Abs(energy - reference)).ToArray())];

        for (int level = 1; level < errors.Length; level++)
        {
            // Heat of armature and section, and what the supply gave.
            for (int i = 0; i < 3; i++) Assert.InRange(Math.Log2(errors[level - 1][i] / errors[level][i]), 3.3, 4.7);
        }
    }

    // A machine that has settled allows steps without end, and a change begins a new one with what the last one allowed.
    [Theory]
    [InlineData(0)]
    [InlineData(0.003)]
    public void Change_OftenInASteadyStateAndThenForGood_StaysOnTheCourse(double henries)
    {
        PlantSolver disturbed = Started(henries, PlantSolver.StepTolerance), alone = Started(henries, PlantSolver.StepTolerance);
        for (int i = 0; i < 1500; i++)
        {
            disturbed.Advance(0.02);
            disturbed.Change(disturbed.Conditions);
        }

        alone.Advance(30);
        foreach (PlantSolver plant in (PlantSolver[])[disturbed, alone])
        {
            plant.Change(plant.Conditions with { Supply = new Supply(150, 0.02) });
            plant.Advance(1);
        }

        Assert.Equal(alone.SpeedRadPerSec, disturbed.SpeedRadPerSec, 1e-5);
        Assert.Equal(1, Energies(disturbed, 0)[2] / Energies(alone, 0)[2], 1e-6);
        Accounts.AssertBalanced(disturbed, 1e-7);
    }

    // At one go, on the usual tolerance and a million times more tightly: what settles soon allows long steps.
    [Theory]
    [InlineData(0, 0, 100)]
    [InlineData(0, 200, 3)]
    [InlineData(0.003, 100, 10)]
    [InlineData(0.05, 100, 3)]
    public void Advance_SingleSpanOfSeconds_LosesNoEnergy(double henries, double speed, double seconds)
    {
        PlantConditions conditions = Started(henries, 1).Conditions;

        double[] usual = Energies(new PlantSolver(conditions, speed), seconds), tight = Energies(new PlantSolver(conditions, speed, 1e-14), seconds);

        for (int i = 0; i < usual.Length; i++) Assert.Equal(1, usual[i] / tight[i], 1e-6);
    }

    private static double[] Energies(PlantSolver plant, double seconds)
    {
        plant.Advance(seconds);
        plant.CloseBooks();
        return [plant.Energy.ArmatureJoules, plant.Energy.SectionJoules[0], plant.Energy.SupplyJoules, plant.Energy.LoadJoules];
    }

    private static PlantSolver Started(double henries, double tolerance) =>
        new(new PlantConditions(Shaft with { ArmatureHenries = henries }, Fan, new Supply(220, 0.02), [0.9], true, 0), 0, tolerance);
}
