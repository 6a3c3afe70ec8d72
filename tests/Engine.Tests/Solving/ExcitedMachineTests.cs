using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>Series, shunt and compound machines against the classical method in small steps, which shares nothing with the solver.</summary>
public sealed class ExcitedMachineTests
{
    private const double Volts = 220;
    private const double SourceOhms = 0.02;
    private const double SectionOhms = 0.9;

    private static readonly Magnetisation Bend = new([0, 0.5, 1, 1.5, 2, 3], [0.06, 0.62, 1.15, 1.5, 1.69, 1.9]);
    private static readonly Magnetisation SeriesBend = new([0, 20, 40, 80, 120, 200], [0.05, 0.6, 1.05, 1.5, 1.7, 1.9]);

    /// <summary>Name, machine, and its field winding.</summary>
    public static TheoryData<string> Kinds { get; } = ["shunt", "shunt with armature reaction", "series", "long shunt", "short shunt", "differential"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Start_AnyKind_IsTheCoupledMachine(string kind)
    {
        foreach (double henries in new[] { 0.004, 1e-5, 0 })
        {
            PlantConditions conditions = Conditions(kind, henries, new Load(30, 0.05, 0.001));
            PlantSolver plant = new(conditions, 1);
            CoupledReference reference = Reference(conditions, plant);
            double amps = 0, speed = 0, fieldAmps = 0;
            for (int i = 0; i < 300; i++)
            {
                plant.Advance(0.001);
                reference.Advance(0.001, henries == 1e-5 ? 400 : 20);
                amps = Math.Max(amps, Math.Abs(plant.ArmatureAmps - reference.Amps));
                speed = Math.Max(speed, Math.Abs(plant.SpeedRadPerSec - reference.Speed));
                fieldAmps = Math.Max(fieldAmps, Math.Abs(plant.FieldAmps - reference.FieldAmps));
            }

            // Of 200 A, 100 rad/s and 2 A.
            Assert.InRange(amps, 0, 2e-4);
            Assert.InRange(speed, 0, 1e-6);
            Assert.InRange(fieldAmps, 0, 1e-6);
            Assert.Equal(1, plant.PeakAmps / reference.PeakAmps, 1e-5);
            Assert.Equal(1, plant.PeakTorqueNewtonMetres / reference.PeakTorque, 1e-5);
            Accounts.AssertBalanced(plant, 1e-7);
        }
    }

    [Fact]
    public void Shunt_SourceResistance_LetsTheArmatureWeakenTheField()
    {
        PlantSolver plant = new(Conditions("shunt", 0.004, new Load(30, 0, 0)), 0);
        double before = plant.FieldAmps;
        plant.Advance(0.2);

        // 200 A x 0.02 ohm take 4 V from a field of 110 ohm; its 0.5 s hide most of it.
        Assert.Equal(Volts / (110 + SourceOhms), before, 1e-12);
        Assert.InRange(plant.FieldAmps, before - 4.0 / 110, before - 0.002);
        Assert.Equal(plant.Conditions.Supply.OpenCircuitVolts - SourceOhms * (plant.ArmatureAmps + plant.FieldAmps), plant.TerminalVolts, 1e-12);
    }

    [Theory]
    [InlineData("series")]
    [InlineData("long shunt")]
    public void Steady_AnyKind_IsWhereTorqueAndVoltageBalance(string kind)
    {
        PlantSolver plant = new(Conditions(kind, 0.004, new Load(60, 0, 0)), 0);
        plant.Advance(60);

        double k = plant.Constant;
        Assert.Equal(60, k * plant.ArmatureAmps, 1e-6);
        Assert.Equal(Volts - 2 - (SourceOhms + SectionOhms + 0.2) * plant.ArmatureAmps - SourceOhms * plant.FieldAmps, k * plant.SpeedRadPerSec, 1e-6);
    }

    [Fact]
    public void Series_NoInductance_CurrentIsTheRootOfTheBalance()
    {
        PlantSolver plant = new(Conditions("series", 0, new Load(60, 0, 0)), 50);

        Assert.Equal(Volts - 2, (SourceOhms + SectionOhms + 0.2) * plant.ArmatureAmps + SeriesBend.ConstantAt(plant.ArmatureAmps) * 50, 1e-9);
    }

    [Fact]
    public void Change_HalvingTheSpans_ChangesNothing()
    {
        // Steps are the solver's own: what the caller asks for in between does not move them.
        PlantSolver coarse = new(Conditions("long shunt", 0.004, new Load(30, 0, 0)), 0), fine = new(Conditions("long shunt", 0.004, new Load(30, 0, 0)), 0);
        for (int i = 0; i < 100; i++) coarse.Advance(0.01);
        for (int i = 0; i < 100_000; i++) fine.Advance(0.00001);

        Assert.Equal(coarse.ArmatureAmps, fine.ArmatureAmps, 1e-9);
        Assert.Equal(coarse.SpeedRadPerSec, fine.SpeedRadPerSec, 1e-9);
    }

    [Theory]
    [InlineData("series")]
    [InlineData("short shunt")]
    public void Tolerance_ATenth_LeavesATenthOfTheErrorOrLess(string kind)
    {
        double[] errors = new double[4];
        for (int i = 0; i < errors.Length; i++)
        {
            PlantSolver plant = new(Conditions(kind, 0.004, new Load(30, 0, 0.002)), 1, Math.Pow(10, -5 - i));
            CoupledReference reference = Reference(plant.Conditions, plant);
            plant.Advance(0.3);
            reference.Advance(0.3, 20_000);
            errors[i] = Math.Abs(plant.SpeedRadPerSec - reference.Speed);
        }

        // Three powers of ten in the tolerance: at least two and a half in the error.
        Assert.True(errors[3] < errors[0] / 300, $"{errors[0]:g3} {errors[1]:g3} {errors[2]:g3} {errors[3]:g3}");
    }

    [Fact]
    public void Energy_AnyKindThroughAnyContacts_Balances() =>
        Gen.Select(Gen.OneOfConst("shunt", "shunt with armature reaction", "series", "long shunt", "short shunt", "differential"), Gen.OneOfConst(0.004, 0.0003, 0), Gen.Double[0, 60], Gen.Int[0, 63].Array[1, 12]).Sample(
            (kind, henries, torque, contacts) =>
            {
                PlantSolver plant = new(Conditions(kind, henries, new Load(torque, 0.01, 0.0005)), 0);
                foreach (int bits in contacts)
                {
                    plant.Change(plant.Conditions with
                    {
                        LineClosed = (bits & 1) != 0,
                        StagesClosed = (bits & 2) != 0 ? 1 : 0,
                        BrakeClosed = (bits & 4) != 0 && kind != "series",
                        IsFieldClosed = (bits & 8) == 0,
                        Supply = new Supply((bits & 16) != 0 ? 120 : Volts, SourceOhms),
                    });
                    for (int i = 0; i < 40; i++) plant.Advance(0.0025);
                }

                Accounts.AssertBalanced(plant, 2e-6);
            },
            iter: 200);

    private static PlantConditions Conditions(string kind, double henries, Load load)
    {
        FieldCircuit shunt = new() { IsShunt = true, SupplyVolts = Volts, Ohms = 110, Henries = 55 };
        Machine machine = new(1.69, 0.2, henries, 2, 1.2);
        (FluxLaw flux, FieldCircuit? field) = kind switch
        {
            "shunt" => (new FluxLaw(Bend), shunt),
            "shunt with armature reaction" => (new FluxLaw(Bend) { ReactionRatio = 0.002 }, shunt),
            "series" => (new FluxLaw(SeriesBend) { FieldShare = 0, ArmatureShare = 1 }, null),
            "long shunt" => (new FluxLaw(Bend) { ArmatureShare = 0.004 }, shunt),
            "short shunt" => (new FluxLaw(Bend) { FieldShare = 1.004, ArmatureShare = 0.004 }, shunt with { SharedOhms = 0.03 }),
            "differential" => ((FluxLaw, FieldCircuit?))(new FluxLaw(Bend) { ArmatureShare = -0.002 }, shunt),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
        };
        return new PlantConditions(machine with { Flux = flux }, load, new Supply(Volts, SourceOhms), [SectionOhms], true, 0) { Field = field };
    }

    private static CoupledReference Reference(PlantConditions conditions, PlantSolver plant)
    {
        double shared = conditions.Field == null ? 0 : SourceOhms + conditions.Field.SharedOhms;
        return new CoupledReference(conditions.Machine, conditions.Load, Volts, SectionOhms + 0.2 + Math.Max(shared, SourceOhms))
        {
            FieldVolts = Volts,
            FieldOhms = 110 + shared,
            FieldHenries = conditions.Field?.Henries ?? 0,
            SharedOhms = shared,
            Amps = plant.ArmatureAmps,
            Speed = plant.SpeedRadPerSec,
            FieldAmps = plant.FieldAmps,
        };
    }
}
