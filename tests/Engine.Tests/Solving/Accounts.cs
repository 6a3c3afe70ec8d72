using System;
using System.Linq;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>The account of a plant's energies.</summary>
internal static class Accounts
{
    /// <summary>What the supply delivered is what every other entry took.</summary>
    public static void AssertBalanced(PlantSolver plant, double tolerance)
    {
        plant.CloseBooks();
        EnergyAccount energy = plant.Energy;
        double heat = energy.SectionJoules.Sum() + energy.ArmatureJoules + energy.BrakeJoules + energy.ArcJoules + energy.FieldJoules;
        double moved = plant.KineticJoules - plant.InitialKineticJoules + plant.MagneticJoules + plant.FieldMagneticJoules - plant.InitialFieldJoules;
        double turnover = Math.Abs(energy.SupplyJoules) + heat + Math.Abs(energy.LoadJoules) + plant.InitialKineticJoules;
        Assert.InRange(Math.Abs(energy.SupplyJoules - heat - energy.LoadJoules - moved), 0, tolerance * turnover + 1e-12);
        Assert.True(energy.BrakeJoules >= 0 && energy.ArmatureJoules >= 0 && energy.SourceJoules >= 0);
    }
}
