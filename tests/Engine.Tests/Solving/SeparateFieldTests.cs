using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class SeparateFieldTests
{
    private const double Volts = 220;

    private static readonly FluxLaw Line = new(Magnetisation.Proportional(2, 1.69));
    private static readonly FluxLaw Bend = new(new Magnetisation([0, 0.8, 1.3, 2, 2.5], [0.05, 1.0, 1.4, 1.69, 1.75]));
    private static readonly Machine Shaft = new Machine(1.69, 0.18, 0.003, 2, 2.5) { Flux = Line };

    // 2 A rated, and 0.5 s in its own closed circuit.
    private static readonly FieldCircuit Straight = new()
    {
        SupplyVolts = 220,
        Ohms = 110,
        Henries = 55,
    };

    /// <summary>Field weakened, lost by freewheeling and lost through the discharge resistor, with and without inductance and fan.</summary>
    public static TheoryData<bool, double, double, double, double> Losses { get; } = new()
    {
        { false, 150, 0.5, 0.003, 0 },
        { false, 0, 0.5, 0.003, 0 },
        { true, 0, 0.5, 0.003, 0 },
        { true, 0, 0.05, 0.003, 0 },
        { false, 150, 0.5, 0, 0 },
        { false, 150, 0.5, 1e-5, 0 },
        { false, 0, 0.05, 1e-5, 0 },
        { false, 150, 0.5, 0.003, 0.004 },
        { true, 0, 0.05, 0.003, 0.004 },
    };

    [Theory]
    [MemberData(nameof(Losses))]
    public void Advance_FieldThatGoes_IsTheCoupledMachine(bool bent, double fieldVolts, double fieldSeconds, double henries, double fan)
    {
        Machine machine = Shaft with { ArmatureHenries = henries, Flux = bent ? Bend : Line };
        Load load = new(70, 0, fan);
        PlantSolver plant = new(new PlantConditions(machine, load, new Supply(Volts, 0), [0.3], true, 0) { Field = Straight }, 110);
        plant.Advance(1);
        bool isBroken = fieldSeconds < 0.5;
        CoupledReference reference = new(machine, load, Volts, 0.48)
        {
            FieldVolts = isBroken ? 0 : fieldVolts,
            FieldOhms = Straight.Henries / fieldSeconds,
            FieldHenries = Straight.Henries,
            Amps = plant.ArmatureAmps,
            Speed = plant.SpeedRadPerSec,
            FieldAmps = plant.FieldAmps,
        };
        if (isBroken) plant.Change(plant.Conditions with { IsFieldClosed = false });
        else plant.Change(plant.Conditions with { FieldVolts = fieldVolts });

        double lockedAmps = Volts / 0.48, amps = 0, speed = 0, fieldAmps = 0;
        for (int i = 0; i < 600; i++)
        {
            plant.Advance(0.001);
            reference.Advance(0.001, henries < 1e-4 ? 400 : 50);
            amps = Math.Max(amps, Math.Abs(plant.ArmatureAmps - reference.Amps) / lockedAmps);
            speed = Math.Max(speed, Math.Abs(plant.SpeedRadPerSec / reference.Speed - 1));
            fieldAmps = Math.Max(fieldAmps, Math.Abs(plant.FieldAmps - reference.FieldAmps) / 2);
        }

        Assert.InRange(amps, 0, 2e-7);
        Assert.InRange(speed, 0, 2e-7);
        Assert.InRange(fieldAmps, 0, 2e-7);
    }

    [Fact]
    public void FieldAmps_Switched_FollowTheClosedForm()
    {
        PlantSolver plant = Open(0, Straight, false);
        Assert.Equal(0, plant.FieldAmps);
        Assert.Equal(Magnetisation.UsualResidualRatio * 1.69, plant.Constant, 1e-15);

        // Lf / Rf = 0.5 s up, the discharge resistor's 0.05 s down, 0.5 s again through a shorted supply.
        plant.Change(plant.Conditions with { IsFieldClosed = true });
        for (int i = 0; i < 700; i++) plant.Advance(0.001);
        double built = 2 * (1 - Math.Exp(-1.4));
        Assert.Equal(built, plant.FieldAmps, 1e-8);
        Assert.Equal(Line.Curve.ConstantAt(built), plant.Constant, 1e-8);

        plant.Change(plant.Conditions with { IsFieldClosed = false });
        plant.Advance(0.02);
        double left = built * Math.Exp(-0.4);
        Assert.Equal(left, plant.FieldAmps, 1e-8);

        plant.Change(plant.Conditions with { IsFieldClosed = true, FieldVolts = 0 });
        plant.Advance(0.25);
        Assert.Equal(left * Math.Exp(-0.5), plant.FieldAmps, 1e-8);

        plant.Change(plant.Conditions with { IsFieldClosed = false, FieldVolts = 220 });
        plant.Advance(2);
        Assert.Equal(0, plant.FieldAmps);
    }

    [Fact]
    public void FieldAmps_NoInductance_FollowAtOnce()
    {
        PlantSolver plant = Open(0, Straight with { Henries = 0 }, false);

        plant.Change(plant.Conditions with { IsFieldClosed = true });
        Assert.Equal(2, plant.FieldAmps);
        Assert.Equal(1.69, plant.Constant);
        plant.Change(plant.Conditions with { IsFieldClosed = false });
        Assert.Equal(0, plant.FieldAmps);
    }

    [Fact]
    public void FieldAmps_SlowDischargeResistor_IsNeverSlowerThanTheWindingAlone()
    {
        PlantSolver plant = Open(0, Straight with { DischargeSeconds = 3 }, true);

        plant.Change(plant.Conditions with { IsFieldClosed = false });
        plant.Advance(0.5);

        Assert.Equal(2 * Math.Exp(-1), plant.FieldAmps, 1e-8);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.004, 1e-10)]
    public void Advance_SteadyField_IsTheMachineOfConstantFlux(double fan, double tolerance)
    {
        PlantConditions conditions = new(Shaft, new Load(70, 0, fan), new Supply(Volts, 0.01), [1.2], true, 0);
        PlantSolver plain = new(conditions with { Machine = Shaft with { Flux = null } }, 0), excited = new(conditions with { Field = Straight }, 0);

        for (int i = 0; i < 2000; i++)
        {
            plain.Advance(0.001);
            excited.Advance(0.001);
        }

        Assert.Equal(plain.ArmatureAmps, excited.ArmatureAmps, tolerance);
        Assert.Equal(plain.SpeedRadPerSec, excited.SpeedRadPerSec, tolerance);
        Assert.Equal(plain.PeakTorqueNewtonMetres, excited.PeakTorqueNewtonMetres, 1000 * tolerance);
    }

    [Fact]
    public void Advance_FieldGoesWithTheLineOpen_LeavesTheCoastingShaftAlone()
    {
        PlantSolver coasting = Open(120, Straight, true), alone = Open(120, Straight, true);
        coasting.Change(coasting.Conditions with { IsFieldClosed = false });

        for (int i = 0; i < 100; i++) coasting.Advance(0.001);
        alone.Advance(0.1);

        Assert.Equal(alone.SpeedRadPerSec, coasting.SpeedRadPerSec, 1e-10);
        Assert.Equal(coasting.Constant * coasting.SpeedRadPerSec, coasting.BackEmfVolts);
        Assert.True(coasting.BackEmfVolts < 0.2 * alone.BackEmfVolts);
    }

    [Fact]
    public void PeakTorque_FieldGoes_IsNotThePeakCurrentTimesAnyOneFlux()
    {
        PlantSolver plant = Running();
        double sampled = 0;
        plant.Change(plant.Conditions with { FieldVolts = 110 });
        plant.RestartPeak();
        for (int i = 0; i < 2000; i++)
        {
            plant.Advance(0.001);
            sampled = Math.Max(sampled, plant.TorqueNewtonMetres);
        }

        Assert.Equal(1, sampled / plant.PeakTorqueNewtonMetres, 1e-3);
        Assert.True(plant.PeakTorqueNewtonMetres < 0.95 * 1.69 * plant.PeakAmps);
    }

    // The back-EMF takes k w Ia and the torque gives k Ia w, with any k: the account closes while the flux goes.
    [Fact]
    public void Energy_FieldGoesAndComes_StillBalances() =>
        Gen.Select(Rigs.Any, Gen.Double[0, 1.2], Gen.Double[0.02, 0.5]).Sample(
            (rig, part, tau) =>
            {
                Machine machine = rig.Machine with { Flux = new FluxLaw(Magnetisation.Proportional(2, rig.Machine.Constant, 0.2)) };
                FieldCircuit circuit = new()
                {
                    SupplyVolts = 100,
                    Ohms = 50,
                    Henries = 50 * tau,
                };
                double section = rig.Supply.OpenCircuitVolts / rig.PeakAmps!.Value;
                PlantSolver plant = new(new PlantConditions(machine, rig.Load, rig.Supply, [section], true, 0) { Field = circuit }, 0);
                foreach (double volts in new[] { 100, 100 * part, 0, 80 })
                {
                    plant.Change(plant.Conditions with { FieldVolts = volts });
                    for (int i = 0; i < 50; i++) plant.Advance(0.002);
                }

                Accounts.AssertBalanced(plant, 1e-7);
            },
            iter: 30);

    private static PlantSolver Running()
    {
        PlantSolver plant = new(new PlantConditions(Shaft, new Load(70, 0, 0), new Supply(Volts, 0), [0.3], true, 0) { Field = Straight }, 110);
        for (int i = 0; i < 1000; i++) plant.Advance(0.001);
        return plant;
    }

    private static PlantSolver Open(double speed, FieldCircuit field, bool isFieldClosed) =>
        new(new PlantConditions(Shaft, new Load(20, 0, 0), new Supply(Volts, 0), [], false, 0) { Field = field, IsFieldClosed = isFieldClosed }, speed);
}
