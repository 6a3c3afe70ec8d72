using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>
/// A shunt start with time constants from microseconds to ten seconds, against the same start solved ten thousand times more
/// tightly. How long it takes stands in the benchmark.
/// </summary>
public sealed class StiffTests
{
    private static readonly Magnetisation Bend = new([0, 0.5, 1, 1.5, 2, 3], [0.06, 0.62, 1.15, 1.5, 1.69, 1.9]);

    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(0.1, 0.5)]
    [InlineData(1e-2, 0.5)]
    [InlineData(1e-3, 0.5)]
    [InlineData(1e-4, 0.5)]
    [InlineData(1e-5, 0.5)]
    [InlineData(1e-6, 0.5)]
    [InlineData(0, 0.5)]
    [InlineData(4e-3, 0.01)]
    [InlineData(4e-3, 0.1)]
    [InlineData(4e-3, 1)]
    [InlineData(4e-3, 10)]
    [InlineData(1e-6, 10)]
    [InlineData(1, 0.01)]
    public void Start_AnyTimeConstants_LosesNoAccuracy(double armatureHenries, double fieldSeconds)
    {
        PlantSolver usual = Started(armatureHenries, fieldSeconds, PlantSolver.StepTolerance), tight = Started(armatureHenries, fieldSeconds, PlantSolver.StepTolerance * 1e-4);

        for (int i = 0; i < 4; i++)
        {
            // The whole resistance, and a section less.
            PlantConditions conditions = usual.Conditions with { StagesClosed = i < 2 ? 0 : 1 };
            foreach (PlantSolver plant in (PlantSolver[])[usual, tight])
            {
                plant.Change(conditions);
                plant.RestartPeak();
                plant.Advance(0.3);
            }

            // Of 200 A, 100 rad/s and 2 A.
            Assert.Equal(tight.PeakAmps, usual.PeakAmps, 2e-3);
            Assert.Equal(tight.ArmatureAmps, usual.ArmatureAmps, 2e-3);
            Assert.Equal(tight.SpeedRadPerSec, usual.SpeedRadPerSec, 1e-4);
            Assert.Equal(tight.FieldAmps, usual.FieldAmps, 1e-5);
        }

        Accounts.AssertBalanced(usual, 1e-6);
    }

    // The field contactor closes with the line.
    private static PlantSolver Started(double armatureHenries, double fieldSeconds, double tolerance)
    {
        FieldCircuit field = new() { IsShunt = true, SupplyVolts = 220, Ohms = 110, Henries = 110 * fieldSeconds };
        Machine machine = new Machine(1.69, 0.2, armatureHenries, 2, 1.2) { Flux = new FluxLaw(Bend) };
        PlantConditions conditions = new(machine, new Load(15, 0.05, 0.001), new Supply(220, 0.02), [0.9], true, 0) { Field = field };
        PlantSolver plant = new(conditions with { LineClosed = false, IsFieldClosed = false }, 0, tolerance);
        plant.Change(conditions);
        return plant;
    }
}
