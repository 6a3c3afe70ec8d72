using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class ExcitationTests
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
        FieldCircuit field = Straight;
        Machine machine = Shaft with { ArmatureHenries = henries, Flux = bent ? Bend : Line };
        Load load = new(70, 0, fan);
        PlantSolver plant = new(new PlantConditions(machine, load, new Supply(Volts, 0), [0.3], true, 0), 110);
        Excitation excitation = new(plant, field);
        excitation.Advance(1);
        CoupledReference reference = new(machine, load, Volts, 0.48, machine.Flux.Curve.ConstantAt)
        {
            FieldFinalAmps = fieldVolts / field.Ohms,
            FieldSeconds = fieldSeconds,
            Amps = plant.ArmatureAmps,
            Speed = plant.SpeedRadPerSec,
            FieldAmps = excitation.FieldAmps,
        };
        if (fieldSeconds < 0.5) excitation.Change(isBroken: true);
        else excitation.Change(supplyVolts: fieldVolts);

        double lockedAmps = Volts / 0.48, amps = 0, speed = 0, fieldAmps = 0;
        for (int i = 0; i < 600; i++)
        {
            excitation.Advance(0.001);
            reference.Advance(0.001, henries < 1e-4 ? 400 : 50);
            amps = Math.Max(amps, Math.Abs(plant.ArmatureAmps - reference.Amps) / lockedAmps);
            speed = Math.Max(speed, Math.Abs(plant.SpeedRadPerSec / reference.Speed - 1));
            fieldAmps = Math.Max(fieldAmps, Math.Abs(excitation.FieldAmps - reference.FieldAmps) / 2);
        }

        // Measured: current up to 1.2e-5 of the locked-rotor current, speed up to 2e-7, with sub-steps of up to 1 ms. Where the
        // armature is much quicker than a sub-step its current stands where the flux of the sub-step's middle puts it.
        Assert.InRange(amps, 0, henries == 1e-5 ? Excitation.LargestChange / 2 : 2e-5);
        Assert.InRange(speed, 0, 4e-7);
        Assert.InRange(fieldAmps, 0, 1e-12);
    }

    [Fact]
    public void Advance_HalfTheSubStep_HasAQuarterOfTheError()
    {
        double coarse = WeakeningError(0.001), fine = WeakeningError(0.0005);

        Assert.InRange(coarse / fine, 3.7, 4.3);
    }

    [Fact]
    public void FieldAmps_Switched_FollowTheClosedForm()
    {
        FieldCircuit circuit = Straight with { HasContactor = true };
        PlantSolver plant = Open(0);
        Excitation excitation = new(plant, circuit);
        Assert.Equal(0, excitation.FieldAmps);
        Assert.Equal(Magnetisation.UsualResidualRatio * 1.69, plant.Conditions.Machine.Constant, 1e-15);

        // Lf / Rf = 0.5 s up, the discharge resistor's 0.05 s down, 0.5 s again through a shorted supply.
        excitation.Change(isContactClosed: true);
        for (int i = 0; i < 700; i++) excitation.Advance(0.001);
        double built = 2 * (1 - Math.Exp(-1.4));
        Assert.Equal(built, excitation.FieldAmps, 1e-13);
        Assert.Equal(Line.Curve.ConstantAt(built), plant.Conditions.Machine.Constant, 1e-13);

        excitation.Change(isContactClosed: false);
        excitation.Advance(0.02);
        double left = built * Math.Exp(-0.4);
        Assert.Equal(left, excitation.FieldAmps, 1e-13);

        excitation.Change(isContactClosed: true, supplyVolts: 0);
        excitation.Advance(0.25);
        Assert.Equal(left * Math.Exp(-0.5), excitation.FieldAmps, 1e-13);

        excitation.Change(isBroken: true, supplyVolts: 220);
        excitation.Advance(2);
        Assert.Equal(0, excitation.FieldAmps);
    }

    [Fact]
    public void FieldAmps_NoInductance_FollowAtOnce()
    {
        PlantSolver plant = Open(0);
        Excitation excitation = new(plant, Straight with { Henries = 0, HasContactor = true });

        excitation.Change(isContactClosed: true);
        Assert.Equal(2, excitation.FieldAmps);
        Assert.Equal(1.69, plant.Conditions.Machine.Constant);
        excitation.Change(isBroken: true);
        Assert.Equal(0, excitation.FieldAmps);
    }

    [Fact]
    public void FieldAmps_SlowDischargeResistor_IsNeverSlowerThanTheWindingAlone()
    {
        Excitation excitation = new(Open(0), Straight with { DischargeSeconds = 3 });

        excitation.Change(isBroken: true);
        excitation.Advance(0.5);

        Assert.Equal(2 * Math.Exp(-1), excitation.FieldAmps, 1e-13);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.004)]
    public void Advance_SteadyField_IsTheMachineOfConstantFluxBitForBit(double fan)
    {
        PlantConditions conditions = new(Shaft, new Load(70, 0, fan), new Supply(Volts, 0.01), [1.2], true, 0);
        PlantSolver plain = new(conditions, 0), excited = new(conditions, 0);
        Excitation excitation = new(excited, Straight);

        for (int i = 0; i < 2000; i++)
        {
            plain.Advance(0.001);
            excitation.Advance(0.001);
        }

        Assert.Equal(plain.ArmatureAmps, excited.ArmatureAmps);
        Assert.Equal(plain.SpeedRadPerSec, excited.SpeedRadPerSec);
        Assert.Equal(plain.PeakTorqueNewtonMetres, excited.PeakTorqueNewtonMetres);
    }

    [Fact]
    public void Advance_FieldGoesWithTheLineOpen_LeavesTheCoastingShaftAlone()
    {
        PlantSolver coasting = Open(120), alone = Open(120);
        Excitation excitation = new(coasting, Straight);
        excitation.Change(isBroken: true);

        for (int i = 0; i < 100; i++) excitation.Advance(0.001);
        alone.Advance(0.1);

        Assert.Equal(alone.SpeedRadPerSec, coasting.SpeedRadPerSec, 1e-10);
        Assert.Equal(coasting.Conditions.Machine.Constant * coasting.SpeedRadPerSec, coasting.BackEmfVolts);
        Assert.True(coasting.BackEmfVolts < 0.2 * alone.BackEmfVolts);
    }

    [Fact]
    public void PeakTorque_FieldGoes_IsNotThePeakCurrentTimesAnyOneFlux()
    {
        PlantSolver plant = Running(0.001, out Excitation excitation);
        double sampled = 0;
        excitation.Change(supplyVolts: 110);
        plant.RestartPeak();
        for (int i = 0; i < 2000; i++)
        {
            excitation.Advance(0.001);
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
                PlantSolver plant = new(new PlantConditions(machine, rig.Load, rig.Supply, [section], true, 0), 0);
                Excitation excitation = new(plant, circuit);
                foreach (double volts in new[] { 100, 100 * part, 0, 80 })
                {
                    excitation.Change(supplyVolts: volts);
                    for (int i = 0; i < 50; i++) excitation.Advance(0.002);
                }

                Accounts.AssertBalanced(plant, 1e-7);
            },
            iter: 30);

    private static double WeakeningError(double period)
    {
        PlantSolver plant = Running(period, out Excitation excitation);
        CoupledReference reference = new(Shaft, new Load(70, 0, 0), Volts, 0.48, Line.Curve.ConstantAt)
        {
            FieldFinalAmps = 1.9,
            FieldSeconds = 0.5,
            Amps = plant.ArmatureAmps,
            Speed = plant.SpeedRadPerSec,
            FieldAmps = 2,
        };
        excitation.Change(supplyVolts: 1.9 * 110);
        for (double seconds = 0; seconds < 0.1; seconds += period) excitation.Advance(period);
        reference.Advance(0.1, 10_000);
        return Math.Abs(plant.ArmatureAmps - reference.Amps);
    }

    private static PlantSolver Running(double period, out Excitation excitation)
    {
        PlantSolver plant = new(new PlantConditions(Shaft, new Load(70, 0, 0), new Supply(Volts, 0), [0.3], true, 0), 110);
        excitation = new Excitation(plant, Straight);
        for (int i = 0; i < 1000; i++) excitation.Advance(period);
        return plant;
    }

    private static PlantSolver Open(double speed) =>
        new(new PlantConditions(Shaft, new Load(20, 0, 0), new Supply(Volts, 0), [], false, 0), speed);
}
