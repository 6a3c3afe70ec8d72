using System;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class BrakeTests
{
    private const double Ra = 0.18, Rb = 1.2, K = 1.69, J = 2.5;

    private static readonly Machine Shaft = new(K, Ra, 0.003, 2, J);

    private static readonly Machine Ideal = Shaft with { ArmatureHenries = 0, BrushDropVolts = 0 };

    // J dw/dt = k Ia and Ia = -k w / (Ra + Rb): w decays with tau = J (Ra + Rb) / k^2. Textbook theory, derived here.
    [Fact]
    public void Advance_BrakeAloneWithoutInductance_SlowsTheShaftExponentially()
    {
        PlantSolver plant = Braking(Ideal, Load.None, 120);
        double tau = J * (Ra + Rb) / (K * K);
        Assert.Equal(-K * 120 / (Ra + Rb), plant.ArmatureAmps, 1e-12);

        for (int i = 1; i <= 300; i++)
        {
            plant.Advance(0.01);
            double speed = 120 * Math.Exp(-0.01 * i / tau);
            Assert.Equal(speed, plant.SpeedRadPerSec, 1e-9);
            Assert.Equal(-K * speed / (Ra + Rb), plant.ArmatureAmps, 1e-9);
            Assert.Equal(220, plant.TerminalVolts);
        }

        // The kinetic energy goes into both resistances as they share the current's path.
        plant.CloseBooks();
        double lost = plant.InitialKineticJoules - plant.KineticJoules;
        Assert.Equal(lost * Rb / (Ra + Rb), plant.Energy.BrakeJoules, 1e-6);
        Assert.Equal(lost * Ra / (Ra + Rb), plant.Energy.ArmatureJoules, 1e-6);
        Assert.Equal(0, plant.Energy.SupplyJoules);
        Assert.Equal(0, plant.Energy.SectionJoules[0]);
    }

    // With friction Tc the shaft heads for -wf = -Tc R / k^2 and stops on the way, after tau ln(1 + w0 / wf). Its friction takes Tc times
    // the angle tau (w0 - wf ln(1 + w0 / wf)), both resistances take the rest. Derived here.
    [Theory]
    [Trait("Source", "CHK-38")]
    [InlineData(5)]
    [InlineData(60)]
    public void Advance_BrakeBesideFriction_StopsAtTheClosedFormTimeAndSharesTheEnergy(double friction)
    {
        double tau = J * (Ra + Rb) / (K * K), heading = friction * (Ra + Rb) / (K * K);
        double stop = tau * Math.Log(1 + 120 / heading), angle = tau * (120 - heading * Math.Log(1 + 120 / heading));
        PlantSolver plant = Braking(Ideal, new Load(friction, 0, 0), 120);

        plant.Advance(stop - 1e-6);
        Assert.InRange(plant.SpeedRadPerSec, 1e-9, 1e-4);
        plant.Advance(1);
        plant.CloseBooks();

        Assert.Equal(0, plant.SpeedRadPerSec);
        double kinetic = 0.5 * J * 120 * 120;
        Assert.Equal(friction * angle, plant.Energy.LoadJoules, 1e-6);
        Assert.Equal((kinetic - friction * angle) * Rb / (Ra + Rb), plant.Energy.BrakeJoules, 1e-6);
    }

    // By the time at which half of the kinetic energy is gone the speed has fallen to w0 / sqrt 2, after tau ln 2 / 2. Derived here.
    [Fact]
    [Trait("Source", "CHK-38")]
    public void Advance_BrakeForHalfTheEnergy_TakesHalfOfTauTimesLnTwo()
    {
        PlantSolver plant = Braking(Ideal, Load.None, 120);

        plant.Advance(J * (Ra + Rb) / (K * K) * Math.Log(2) / 2);
        plant.CloseBooks();

        Assert.Equal(120 / Math.Sqrt(2), plant.SpeedRadPerSec, 1e-9);
        Assert.Equal(0.25 * J * 120 * 120, plant.Energy.BrakeJoules + plant.Energy.ArmatureJoules, 1e-6);
    }

    [Fact]
    public void Advance_BrakeWithInductanceBrushesAndLoad_IsTheClosedForm()
    {
        PlantSolver plant = Braking(Shaft, new Load(40, 0.1, 0), 120);
        ClosedForm closed = new(Shaft, 0.1, 40, 2, Ra + Rb);

        for (int i = 1; i <= 100; i++)
        {
            plant.Advance(0.005);
            (double amps, double speed) = closed.At(0.005 * i, 0, 120);
            Assert.Equal(amps, plant.ArmatureAmps, 1e-8);
            Assert.Equal(speed, plant.SpeedRadPerSec, 1e-8);
        }

        Accounts.AssertBalanced(plant, 1e-12);
    }

    [Fact]
    public void Advance_BrakeDownToTheBrushDrop_LeavesTheRestToTheLoad()
    {
        PlantSolver plant = Braking(Shaft, new Load(5, 0, 0), 50);

        while (plant.ArmatureAmps < 0 || plant.SpeedRadPerSec > 20) plant.Advance(0.001);
        Assert.InRange(plant.SpeedRadPerSec, 0.1, 2 / K);
        Assert.Equal(-5 / J, plant.Acceleration, 1e-12);
        plant.Advance(10);

        Assert.Equal(0, plant.SpeedRadPerSec);
        Assert.Equal(0, plant.ArmatureAmps);
        Accounts.AssertBalanced(plant, 1e-9);
    }

    [Fact]
    public void Change_LineGivesWayToTheBrake_ArcsOnlyWithoutAPath()
    {
        PlantSolver plant = Braking(Shaft, Load.None, 100);
        plant.Change(plant.Conditions with { LineClosed = true, BrakeClosed = false });
        plant.Advance(0.05);
        double amps = plant.ArmatureAmps;
        Assert.True(amps > 10);

        plant.Change(plant.Conditions with { LineClosed = false, BrakeClosed = true });
        Assert.Equal(amps, plant.ArmatureAmps);
        Assert.Equal(0, plant.LineAmps);
        Assert.Equal(0, plant.Energy.ArcJoules);
        plant.Advance(0.05);
        Assert.True(plant.ArmatureAmps < -10);
        double magnetic = plant.MagneticJoules;

        plant.Change(plant.Conditions with { BrakeClosed = false });
        Assert.Equal(0, plant.ArmatureAmps);
        Assert.Equal(magnetic, plant.Energy.ArcJoules, 1e-12);
        Accounts.AssertBalanced(plant, 1e-12);
    }

    [Fact]
    public void Change_NoBrakeResistorFitted_BrakeContactDoesNothing()
    {
        PlantSolver plant = new(new PlantConditions(Shaft, Load.None, new Supply(220, 0), [0.5], false, 0) { BrakeClosed = true }, 100);

        plant.Advance(0.1);

        Assert.Equal(0, plant.ArmatureAmps);
        Assert.Equal(100, plant.SpeedRadPerSec);
    }

    // Two meshes solved by hand: V = (Rs + R1) IL + Rb (IL - Ia), Rb (IL - Ia) = Vb + Ra Ia + k w.
    [Fact]
    public void Change_LineAndBrakeTogether_DividesTheLine()
    {
        const double Lead = 0.05 + 0.5, Speed = 60;
        Machine machine = Ideal with { BrushDropVolts = 2 };
        PlantSolver plant = new(
            new PlantConditions(machine, Load.None, new Supply(220, 0.05), [0.5, 0.3], true, 2) { BrakeOhms = Rb, BrakeClosed = true }, Speed);
        double node = (220 / Lead + (2 + K * Speed) / Ra) / (1 / Lead + 1 / Rb + 1 / Ra);

        Assert.Equal((node - 2 - K * Speed) / Ra, plant.ArmatureAmps, 1e-9);
        Assert.Equal((220 - node) / Lead, plant.LineAmps, 1e-9);
        Assert.Equal(220 - 0.05 * plant.LineAmps, plant.TerminalVolts, 1e-9);

        plant.Advance(3);
        Accounts.AssertBalanced(plant, 1e-12);
        Assert.True(plant.Energy.BrakeJoules > 10_000);
    }

    // A dead supply is a short circuit behind its resistance: the same decay, through source, section and armature.
    [Fact]
    public void Advance_SupplyDies_BrakesTheShaftThroughTheSource()
    {
        PlantSolver plant = new(new PlantConditions(Ideal, Load.None, new Supply(220, 0.1), [0.5], true, 0), 120);
        plant.Change(plant.Conditions with { Supply = new Supply(0, 0.1) });

        plant.Advance(1);

        double speed = 120 * Math.Exp(-K * K / (J * (Ra + 0.6)));
        Assert.Equal(speed, plant.SpeedRadPerSec, 1e-9);
        Assert.Equal(-K * speed / (Ra + 0.6), plant.ArmatureAmps, 1e-9);
        Assert.Equal(0.1 * -plant.ArmatureAmps, plant.TerminalVolts, 1e-12);
        plant.CloseBooks();
        double lost = plant.InitialKineticJoules - plant.KineticJoules;
        Assert.Equal(lost * 0.1 / (Ra + 0.6), plant.Energy.SourceJoules, 1e-6);
        Accounts.AssertBalanced(plant, 1e-12);
    }

    [Fact]
    public void Energy_AnyMachineInAnyOrderOfContacts_Balances() =>
        Gen.Select(Rigs.Any, Gen.Double[-0.5, 1.3], Gen.Double[0.2, 3], Gen.Int[0, 15].Array[8]).Sample(
            (rig, part, ratio, contacts) =>
            {
                double section = rig.Supply.OpenCircuitVolts / rig.PeakAmps!.Value;
                double speed = part * rig.Supply.OpenCircuitVolts / rig.Machine.Constant;
                PlantSolver plant = new(
                    new PlantConditions(rig.Machine, rig.Load, rig.Supply, [section], false, 0) { BrakeOhms = ratio * section }, speed);
                foreach (int bits in contacts)
                {
                    plant.Change(plant.Conditions with
                    {
                        LineClosed = (bits & 1) != 0,
                        StagesClosed = (bits >> 1) & 1,
                        BrakeClosed = (bits & 4) != 0,
                        Supply = rig.Supply with { OpenCircuitVolts = (bits & 8) != 0 ? 0 : rig.Supply.OpenCircuitVolts },
                    });
                    for (int i = 0; i < 20; i++) plant.Advance(0.005);
                }

                Accounts.AssertBalanced(plant, 1e-7);
                Assert.All(plant.Energy.SectionJoules.Append(plant.Energy.BrakeJoules), joules => Assert.True(joules >= 0));
            },
            iter: 300);

    private static PlantSolver Braking(Machine machine, Load load, double speed) =>
        new(new PlantConditions(machine, load, new Supply(220, 0.05), [0.5], false, 0) { BrakeOhms = Rb, BrakeClosed = true }, speed);
}
