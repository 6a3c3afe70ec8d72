using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class EnergyTests
{
    private const double LinearTolerance = 1e-9;
    // The solver's steps are held to a share of the states, not of the heat: the worst of 6 000 draws was off by 1.1e-7.
    private const double FanTolerance = 1e-6;

    /// <summary>Starts with delays, a load step, a supply step and a stop, so that arcs and coasting are in the balance too.</summary>
    private static Gen<Rig> EventfulRuns { get; } =
        Gen.Select(Rigs.Any, Gen.Double[0, 0.06], Gen.Double[0, 0.03], Gen.Double[0.1, 1], Gen.Double[-1, 1.5]).Select((rig, closing, opening, when, arc) => rig with
        {
            Control = Rigs.Panel with { MinimumDwellMicroseconds = 10_000 },
            Contactors = new Contactors(closing, opening) { ArcVolts = Math.Max(0, arc) * rig.Supply.OpenCircuitVolts },
            Events =
            [
                new RunEvent(0.4 * when, rig.Load.ConstantNewtonMetres * 1.5, null, null),
                new RunEvent(0.6 * when, null, rig.Supply.OpenCircuitVolts * 0.9, null),
                new RunEvent(0.9 * when, null, null, OperatorCommand.Stop),
            ],
        });

    [Fact]
    public void Run_AnyLinearMachine_BalancesItsEnergy() =>
        EventfulRuns.Sample(rig => AssertBalance(rig with { Load = rig.Load with { FanNewtonMetreSecondsSquared = 0 } }, LinearTolerance), iter: 150);

    [Fact]
    public void Run_AnyMachine_BalancesItsEnergy() =>
        EventfulRuns.Sample(rig => AssertBalance(rig, FanTolerance), iter: 100);

    // Bodies so small that the resistances move by a good part within a start.
    [Fact]
    public void Run_AnyMachineThatWarmsUp_BalancesItsEnergy() =>
        Gen.Select(EventfulRuns, Gen.Double[20, 200], Gen.Double[0, 0.004]).Sample(
            (rig, kelvin, coefficient) =>
            {
                ThermalMass mass = new(0.5 * rig.Machine.InertiaKgM2 * Math.Pow(rig.Supply.OpenCircuitVolts / rig.Machine.Constant, 2) / kelvin, 3);
                ThermalSetup heat = new() { Armature = mass, Sections = [.. Enumerable.Repeat(mass, rig.StageCount!.Value)], SectionPerKelvin = coefficient };
                AssertBalance(rig with { Heat = heat }, FanTolerance);
            },
            iter: 30);

    [Fact]
    public void Run_AnyMachineSpinningBackwards_BalancesItsEnergy() =>
        Gen.Select(EventfulRuns, Gen.Double[-0.3, 1.4]).Sample(
            (rig, part) =>
            {
                // Slow backward turning counts as standing, or the start would be refused.
                double noLoad = rig.Supply.OpenCircuitVolts / rig.Machine.Constant;
                ControlSetup control = rig.Control with { Sensors = new SensorSetup { StandstillRadPerSec = 0.35 * noLoad } };
                AssertBalance(rig with { Control = control, InitialSpeedRadPerSec = part * noLoad }, FanTolerance);
            },
            iter: 100);

    // Source: CHK-14 of tests/published/SOURCES.md, for any machine: the loss is J w0^2 / 2 whatever the stages.
    [Fact]
    public void Run_AnyUnloadedStart_LosesTheKineticEnergy() =>
        Rigs.Any.Sample(rig =>
        {
            Rig unloaded = rig with
            {
                Load = Load.None,
                Machine = rig.Machine with { BrushDropVolts = 0 },
                Supply = rig.Supply with { SourceOhms = 0 },
                Control = Rigs.Panel with { MinimumDwellMicroseconds = 0, ConfirmMicroseconds = 0 },
                DurationSeconds = 20,
            };

            RunResult run = unloaded.Run();

            Assert.Equal(rig.StageCount, run.Cutouts.Count);
            Assert.Equal(1, (run.ArmatureJoules + run.SectionJoules.Sum()) / run.KineticJoules, 1e-6);
            Assert.Equal(2, run.SupplyJoules / run.KineticJoules, 1e-6);
        }, iter: 20);

    [Fact]
    public void Run_AtNoLoadSpeedThroughout_MakesNoHeatAndNoNegativeOne()
    {
        Rig rig = new()
        {
            Machine = new Machine(0.04587533452690289, 0.011575968465303422, 0.0005787984232651711, 0, 0.036360609036957765),
            Supply = new Supply(12, 0.0014508547143180291),
            PeakAmps = 414.6521316455734,
            StageCount = 6,
            Control = Rigs.Panel with { MinimumDwellMicroseconds = 10_000 },
            InitialSpeedRadPerSec = 12 / 0.04587533452690289,
            DurationSeconds = 0.2,
        };

        RunResult run = rig.Run();

        // What is left is the rounding of sums that belong at zero; at rest this machine would take 921 A and 2 kJ.
        Assert.InRange(run.RmsAmps, 0, 1e-4);
        Assert.All(run.SectionJoules, joules => Assert.InRange(joules, 0, 1e-9));
        Assert.InRange(run.ArmatureJoules, 0, 1e-9);
    }

    private static void AssertBalance(Rig rig, double tolerance)
    {
        RunResult run = rig.Run();

        double spent = run.SectionJoules.Sum() + run.ArmatureJoules + run.LoadJoules + run.KineticJoules + run.MagneticJoules + run.ArcJoules
            + run.FieldJoules + run.FieldMagneticJoules;
        double turnover = Math.Abs(run.SupplyJoules) + run.SectionJoules.Sum() + run.ArmatureJoules + run.LoadJoules + Math.Abs(run.KineticJoules);
        // A shaft that comes in too fast for the whole resistance is not started, and without a load it turns on for ever.
        Assert.Equal(0, (run.SupplyJoules - spent) / Math.Max(turnover, double.Epsilon), tolerance);
        Assert.InRange(run.BrushJoules, 0, run.ArmatureJoules);
        Assert.All(run.SectionJoules, joules => Assert.True(joules >= 0));
        Assert.True(run.ArcJoules >= 0 && run.SourceJoules >= 0 && run.LoadJoules >= -tolerance * turnover);
    }
}
