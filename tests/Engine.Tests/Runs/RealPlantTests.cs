using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What stands there differs from the case; what the controller is told does not.</summary>
public sealed class RealPlantTests
{
    // Every quantity that a case of constant flux can vary, with the value that it is given here.
    private static readonly (string Key, string Tolerance, double Value, Func<RunSetup, double> Found)[] Plain =
    [
        ("supply.voltage", "10 %", 198, setup => setup.Supply.OpenCircuitVolts),
        ("supply.resistance", "5 mohm to 20 mohm", 0.02, setup => setup.Supply.SourceOhms),
        ("motor.armature-resistance", "0.17 ohm to 0.24 ohm", 0.24, setup => setup.Machine.ArmatureOhms),
        ("motor.armature-inductance", "20 %", 0.0033, setup => setup.Machine.ArmatureHenries),
        ("motor.brush-drop", "0.5 V", 2.5, setup => setup.Machine.BrushDropVolts),
        ("load.inertia", "-10 % to 30 %", 2.5, setup => setup.LoadInertiaKgM2),
        ("load.constant-torque", "30 N m to 60 N m", 60, setup => setup.Load.ConstantNewtonMetres),
        ("load.viscous-torque", "50 %", 0.03, setup => setup.Load.ViscousNewtonMetreSeconds),
        ("load.fan-torque", "50 %", 0.002, setup => setup.Load.FanNewtonMetreSecondsSquared),
        ("contactors.closing-time", "30 ms to 60 ms", 0.06, setup => setup.Contactors.ClosingSeconds),
        ("contactors.opening-time", "10 ms to 30 ms", 0.03, setup => setup.Contactors.OpeningSeconds),
        ("sensors.current-gain", "2 %", 1.02, setup => setup.Sensors!.Current.Gain),
        ("sensors.current-offset", "2 A", -2, setup => setup.Sensors!.Current.Offset),
        ("sensors.current-noise", "0 A to 1 A", 1, setup => setup.Sensors!.Current.Noise),
        ("sensors.voltage-gain", "0.98 to 1.02", 0.98, setup => setup.Sensors!.Voltage.Gain),
        ("sensors.speed-gain", "1 %", 0.99, setup => setup.Sensors!.Speed.Gain),
        ("sensors.speed-offset", "5 rpm", 5 * Math.PI / 30, setup => setup.Sensors!.Speed.Offset),
        ("sensors.speed-noise", "0 rpm to 3 rpm", 3 * Math.PI / 30, setup => setup.Sensors!.Speed.Noise),
        ("control.period", "1 %", 0.00101, setup => setup.PeriodMicroseconds * 1e-6),
        ("control.jitter", "0 us to 300 us", 0.0003, setup => setup.Jitter!.MostMicroseconds * 1e-6),
    ];

    [Fact]
    public void RealSetup_EveryQuantity_IsInThePlantAndNowhereElse()
    {
        PreparedRun nominal = CaseRunner.Prepare(LineShaftCase.With());
        PreparedRun run = Prepare([.. Plain.Select(row => (row.Key, row.Tolerance))]);

        RunSetup real = run.RealSetup([.. Plain.Select(row => row.Value)]);

        Assert.Equal(Plain.Select(row => row.Key), run.Variables.Select(variable => variable.Path));
        Assert.All(Plain, row => Assert.Equal(row.Value, row.Found(real), 1e-9));
        Assert.Equal(nominal.Setup.SectionOhms, real.SectionOhms);
        Assert.Equal(SettingsText.Checksum(nominal.Settings), SettingsText.Checksum(run.Settings));
        Assert.Equal(nominal.Setup.Machine, run.Setup.Machine);
        // k comes from the plate: neither a warmer armature nor another supply changes it.
        Assert.Equal(nominal.Setup.Machine.Constant, real.Machine.Constant);
    }

    [Fact]
    public void RealSetup_AtTheNominalValues_IsTheNominalPlant() =>
        Assert.All(MachineCases.Names.Select(row => row.Data), name =>
        {
            PreparedRun run = MachineCases.Prepare(MachineCases.Text(name) + "\n[tolerances]\nsupply.voltage = \"1 %\"\nmotor.constant = \"1 %\"\nstarter.sections = \"1 %\"\nmotor.winding-temperature = \"10 degC\"\n");

            RunSetup real = run.RealSetup([.. run.Variables.Select(variable => variable.Nominal)]);

            Assert.Equal(run.Setup.Machine with { Flux = null }, real.Machine with { Flux = null });
            Assert.Equal(run.Setup.Machine.Flux?.Curve.Constants, real.Machine.Flux?.Curve.Constants);
            Assert.Equal((run.Setup.Field, run.Setup.Supply, run.Setup.BrakeOhms), (real.Field, real.Supply, real.BrakeOhms));
            Assert.Equal(run.Setup.SectionOhms, real.SectionOhms);
        });

    [Fact]
    public void RealSetup_ConstantFromThePlate_VariesWithItsOwnToleranceOnly()
    {
        PreparedRun run = Prepare(("motor.constant", "normal 3 %"));
        double nominal = run.Setup.Machine.Constant;

        Assert.Equal((nominal, 0.91 * nominal, 1.09 * nominal), Assert.Single(run.Variables) is var found ? (found.Nominal, found.Low, found.High) : default);
        Assert.Equal(1.05 * nominal, run.RealSetup([1.05 * nominal]).Machine.Constant, 1e-12);
        Assert.Equal((float)nominal, run.Settings.MachineConstant);
    }

    [Fact]
    public void RealSetup_Sections_EachIsAVariableOfItsOwn()
    {
        PreparedRun run = Prepare(("starter.sections", "5 %"));
        double[] ohms = [.. run.Setup.SectionOhms];
        double[] values = [.. ohms.Select((section, i) => section * (1 + 0.01 * i))];

        Assert.Equal(ohms.Select((_, i) => $"starter.sections[{i + 1}]"), run.Variables.Select(variable => variable.Path));
        Assert.Equal(ohms, run.Variables.Select(variable => variable.Nominal));
        Assert.Equal(values, run.RealSetup(values).SectionOhms);
        Assert.Equal(ohms, run.Designed.SectionOhms());
        Assert.True(ohms.Length > 1);
    }

    [Fact]
    public void RealSetup_Curve_ScalesAsAWholeByItsOwnToleranceAndByTheConstants()
    {
        PreparedRun run = MachineCases.Prepare(MachineCases.Shunt + "\n[tolerances]\nmotor.constant = \"5 %\"\nfield.resistance = \"10 %\"\n");
        Assert.NotNull(run.Setup.Machine.Flux);
        double[] points = [.. run.Setup.Machine.Flux.Curve.Constants];

        RunSetup real = run.RealSetup([1.05 * run.Variables[0].Nominal, 1.1 * run.Variables[1].Nominal]);

        Assert.All(points.Zip(real.Machine.Flux!.Curve.Constants), pair => Assert.Equal(1.05 * pair.First, pair.Second, 1e-12));
        Assert.Equal(1.1 * run.Setup.Field!.Ohms, real.Field!.Ohms, 1e-9);
        // The rated point stays that of the nominal field, so that the weaker field weakens the flux.
        Assert.Equal(1.05 * run.Setup.Machine.Constant, real.Machine.Constant, 1e-9);
    }

    [Fact]
    public void RealSetup_CurveOfEmfs_IsOneFactor()
    {
        PreparedRun run = CaseRunner.Prepare(CaseFile.Parse("shunt.toml", ShippedCase.Text("shunt-shaft").Split("[tolerances]")[0] + "\n[tolerances]\nfield.curve-emfs = \"-4 % to 4 %\"\n"));

        PlantVariable factor = Assert.Single(run.Variables);

        Assert.Equal(("field.curve-emfs", 1, 0.96, 1.04, ""), (factor.Path, factor.Nominal, factor.Low, factor.High, factor.Unit));
        Assert.All(
            run.Setup.Machine.Flux!.Curve.Constants.Zip(run.RealSetup([0.96]).Machine.Flux!.Curve.Constants),
            pair => Assert.Equal(0.96 * pair.First, pair.Second, 1e-12));
    }

    [Fact]
    public void RealSetup_WindingTemperature_IsColdToHot()
    {
        PreparedRun run = Prepare(("motor.winding-temperature", "20 degC to 95 degC"));

        // IEC 60034-1, copper: (235 + 95) / (235 + 20).
        Assert.Equal(0.17 * 330 / 255, run.RealSetup([95]).Machine.ArmatureOhms, 1e-12);
        Assert.Equal(0.17, run.RealSetup([20]).Machine.ArmatureOhms, 1e-12);
    }

    [Fact]
    public void RealSetup_Seed_IsThatOfNoiseAndJitter()
    {
        PreparedRun run = Prepare(("sensors.current-noise", "0 A to 1 A"), ("control.jitter", "0 us to 200 us"));

        RunSetup real = run.RealSetup([0.5, 100e-6], 4711);

        Assert.Equal((4711, 4711), (real.Sensors!.Seed, real.Jitter!.Seed));
        Assert.Equal(1, run.RealSetup([0.5, 100e-6]).Jitter!.Seed);
    }

    [Theory]
    [InlineData("supply.voltage", "120 %", "\"120 %\", which reaches -44 V", "a tolerance that stays in above 0, up to 100 kV")]
    [InlineData("motor.armature-resistance", "100 %", "\"100 %\", which reaches 0 ohm", "a tolerance that stays in above 0, up to 1 kohm")]
    [InlineData("motor.constant", "-100 % to 5 %", "\"-100 % to 5 %\", which reaches 0 V s/rad", "a tolerance that stays in above 0, up to 1e6 V s/rad")]
    [InlineData("load.constant-torque", "50 N m", "\"50 N m\", which reaches -5 N m", "a tolerance that stays in 0 to 100000 kN m")]
    [InlineData("field.resistance", "5 %", "a tolerance of field.resistance, which the case does not have", "field.resistance in the file, or no such tolerance")]
    [InlineData("sensors.current-offset", "5 %", "\"5 %\" of a nominal value of 0, which is nothing", "limits with their unit")]
    [InlineData("motor.armature-resistance", "triangular 0.2 ohm to 0.3 ohm", "\"triangular 0.2 ohm to 0.3 ohm\", without the nominal 0.17 ohm at which it is most likely", "limits around the nominal value, or no triangular tolerance")]
    [InlineData("control.jitter", "0 us to 1 ms", "ticks up to 1000 us late in a period of 1000 us", "jitter below the period for all their values")]
    [InlineData("contactors.drop-out-voltage", "0.4 to 0.9", "a coil that may let go below 0.9 and close from 0.85", "contactors.drop-out-voltage up to contactors.pick-up-voltage for all their values")]
    [InlineData("run.ambient-temperature", "10 degC to 40 degC", "a tolerance of run.ambient-temperature where it is of no use: found it in a case in which nothing warms up at run.ambient-temperature", "a thermal capacity in the file")]
    [InlineData("series-field.resistance", "0 ohm to 1 ohm", "a tolerance of series-field.resistance where it is of no use: found \"0 ohm to 1 ohm\" on a separately excited motor at series-field.resistance", "motor.kind = \"compound\" or \"series\", or no [series-field]")]
    public void Prepare_AToleranceThatCannotBe_IsRefusedAtItsLine(string key, string tolerance, string found, string allowed)
    {
        CaseProblem problem = Assert.Single(Refused((key, tolerance)));

        Assert.Equal(($"tolerances.{key}", found, allowed), (problem.Key, problem.Found, problem.Allowed));
        Assert.True(problem.Line > 1);
    }

    [Fact]
    public void Prepare_SeveralSuchTolerances_AreAllReported() =>
        Assert.Equal(
            ["tolerances.supply.voltage", "tolerances.field.resistance"],
            Refused(("supply.voltage", "120 %"), ("motor.inertia", "5 %"), ("field.resistance", "5 %")).Select(problem => problem.Key));

    private static IReadOnlyList<CaseProblem> Refused(params (string Key, string Tolerance)[] tolerances) =>
        Assert.Throws<CaseException>(() => Prepare(tolerances)).Problems;

    private static PreparedRun Prepare(params (string Key, string Tolerance)[] tolerances) =>
        CaseRunner.Prepare(LineShaftCase.With([.. tolerances.Select(pair => ($"tolerances.{pair.Key}", (string?)pair.Tolerance))]));
}
