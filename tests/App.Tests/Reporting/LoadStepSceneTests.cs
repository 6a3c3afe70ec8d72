using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.App.Tests.Reporting;

public sealed class LoadStepSceneTests
{
    private const double Tolerance = 1e-6;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Of_SteadyStates_AreThoseOfTheClosedForm(bool isBenchRig)
    {
        StartStudy study = isBenchRig ? Studies.BenchRig.Value : Studies.LineShaft.Value;

        LoadStepScene scene = LoadStepScene.Of(study);

        foreach (LoadStepResponse response in new[] { scene.Machine, scene.WeakerMachine })
        {
            AssertSteady(study, response, scene.LoadBefore, response.Before);
            AssertSteady(study, response, scene.LoadAfter, response.After);
        }
    }

    [Fact]
    public void Of_EventThatRaisesTheLoad_IsTheStep()
    {
        LoadStepScene scene = LoadStepScene.Of(Studies.LineShaft.Value);

        Assert.Equal(5, scene.EventSeconds);
        Assert.Equal(45, scene.LoadBefore.ConstantNewtonMetres);
        Assert.Equal(85, scene.LoadAfter.ConstantNewtonMetres);
        Assert.Equal(LoadStepScene.WeakerTimes * scene.Machine.ArmatureOhms, scene.WeakerMachine.ArmatureOhms, 1e-12);
    }

    [Fact]
    public void Of_NoSuchEvent_StepsByHalfTheRatedTorque()
    {
        StartStudy study = Studies.LineShaft.Value;
        study = study with { Setup = study.Setup with { Events = [new RunEvent(4, 20, null, null)] } };

        LoadStepScene scene = LoadStepScene.Of(study);

        Assert.Null(scene.EventSeconds);
        Assert.Equal(45, scene.LoadBefore.ConstantNewtonMetres);
        Assert.Equal(45 + 0.5 * 15000 / (1250 * Math.PI / 30), scene.LoadAfter.ConstantNewtonMetres, 1e-9);
    }

    [Fact]
    public void Of_Chain_GoesFromLoadToBalance()
    {
        LoadStepResponse response = LoadStepScene.Of(Studies.LineShaft.Value).Machine;

        Assert.Equal(response.Before.SpeedRadPerSec, response.RightAfter.SpeedRadPerSec);
        Assert.Equal(response.Before.ArmatureAmps, response.RightAfter.ArmatureAmps);
        Assert.True(response.RightAfter.LoadTorqueNewtonMetres > response.Before.LoadTorqueNewtonMetres + 39);
        Assert.InRange(response.OnTheWay.SpeedRadPerSec, response.After.SpeedRadPerSec, response.Before.SpeedRadPerSec);
        Assert.InRange(response.OnTheWay.ArmatureAmps, response.Before.ArmatureAmps, response.After.ArmatureAmps);
        Assert.InRange(response.SettlingSeconds, response.TimeConstantSeconds, response.Curve[^1].Seconds);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Of_NoInductanceNoFan_IsOnTheWayExactlyAThirdOfTheTimeConstantLater(bool isBenchRig)
    {
        StartStudy study = isBenchRig ? Studies.BenchRig.Value : Studies.LineShaft.Value;
        RunSetup setup = study.Setup;
        study = study with { Setup = setup with { Machine = setup.Machine with { ArmatureHenries = 0 }, Load = setup.Load with { FanNewtonMetreSecondsSquared = 0 } } };

        LoadStepResponse response = LoadStepScene.Of(study).Machine;

        RunningPoint way = response.OnTheWay;
        double change = response.After.SpeedRadPerSec - response.Before.SpeedRadPerSec;
        Assert.Equal(response.TimeConstantSeconds / 3, way.Seconds, 1e-12);
        Assert.Equal(1 - Math.Exp(-1.0 / 3), (way.SpeedRadPerSec - response.Before.SpeedRadPerSec) / change, 1e-4);
    }

    [Fact]
    public void Of_NoInductance_SettlesWithTheMechanicalTimeConstant()
    {
        StartStudy study = Studies.BenchRig.Value;
        Machine machine = study.Setup.Machine with { ArmatureHenries = 0 };
        study = study with { Setup = study.Setup with { Machine = machine } };

        LoadStepResponse response = LoadStepScene.Of(study).Machine;

        double ohms = machine.ArmatureOhms + study.Setup.Supply.SourceOhms;
        double expected = machine.InertiaKgM2 / (machine.Constant * machine.Constant / ohms + study.Setup.Load.ViscousNewtonMetreSeconds);
        Assert.Equal(expected, response.TimeConstantSeconds, 2e-4 * expected);
        Assert.Equal(-expected * Math.Log(0.02), response.SettlingSeconds, 2e-4 * expected);
        Assert.True(response.Curve.Zip(response.Curve.Skip(1)).All(pair => pair.Second.SpeedRadPerSec <= pair.First.SpeedRadPerSec));
    }

    [Fact]
    public void Of_LoadThatTheWeakerMachineCannotCarry_Stalls()
    {
        StartStudy study = Studies.LineShaft.Value;
        study = study with { Setup = study.Setup with { Events = [new RunEvent(4, 300, null, null)] } };

        LoadStepScene scene = LoadStepScene.Of(study);

        Assert.True(scene.Machine.Runs);
        Assert.False(scene.WeakerMachine.Runs);
        Assert.Equal(0, scene.WeakerMachine.After.SpeedRadPerSec);
    }

    // A lightly loaded series machine takes many of its rated time constants to find its speed.
    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Of_EveryKind_SettlesOnItsCharacteristic(string name)
    {
        string text = MachineCases.Text(name).Replace("constant-torque = \"30 N m\"", "constant-torque = \"15 N m\"", StringComparison.Ordinal);
        StartStudy study = CaseRunner.Run(CaseFile.Parse("case.toml", text), null, TestContext.Current.CancellationToken);

        LoadStepScene scene = LoadStepScene.Of(study);

        Characteristic machine = Characteristic.Of(study.Setup.OnFullSupply(scene.LoadBefore));
        foreach ((Load load, RunningPoint settled) in new[] { (scene.LoadBefore, scene.Machine.Before), (scene.LoadAfter, scene.Machine.After) })
        {
            OperatingPoint expected = machine.Carrying(load)!;
            Assert.Equal(1, settled.SpeedRadPerSec / expected.SpeedRadPerSec, Tolerance);
            Assert.Equal(1, settled.ArmatureAmps / expected.ArmatureAmps, Tolerance);
        }
    }

    // k I = TL and E = V - Vb - I (R + Rs).
    private static void AssertSteady(StartStudy study, LoadStepResponse response, Load load, RunningPoint point)
    {
        Machine machine = study.Setup.Machine;
        Supply supply = study.Setup.Supply;
        double ohms = response.ArmatureOhms + supply.SourceOhms, k = machine.Constant;
        double a = load.FanNewtonMetreSecondsSquared, b = load.ViscousNewtonMetreSeconds + k * k / ohms;
        double c = load.ConstantNewtonMetres - k * (supply.OpenCircuitVolts - machine.BrushDropVolts) / ohms;
        double speed = -2 * c / (b + Math.Sqrt(b * b - 4 * a * c));
        double amps = load.TorqueAt(speed) / k;
        Assert.Equal(speed, point.SpeedRadPerSec, Tolerance * speed);
        Assert.Equal(amps, point.ArmatureAmps, Tolerance * amps);
        Assert.Equal(supply.OpenCircuitVolts - machine.BrushDropVolts - amps * ohms, point.BackEmfVolts, Tolerance * point.BackEmfVolts);
        Assert.Equal(point.LoadTorqueNewtonMetres, point.TorqueNewtonMetres, Tolerance * point.TorqueNewtonMetres);
        Assert.Equal(amps * supply.SourceOhms, point.SourceDropVolts, 1e-6);
    }
}
