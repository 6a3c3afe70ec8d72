using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What events do to machine, supply, field, shaft and signals, whatever the controller makes of it.</summary>
public sealed class PlantEventTests
{
    private const double K = 1.69;

    [Fact]
    public void FieldSupplyVolts_Running_MovesTheFieldWithItsTimeConstant()
    {
        PlayedRun run = PlayField(At(2) with { FieldSupplyVolts = 110 }, At(2.2) with { FieldSupplyVolts = 0 });

        Assert.All(run.Between(-0.001, 2), sample => Assert.Equal(2f, sample.FieldAmps));
        Assert.Equal(1 + Math.Exp(-1), run.At(2.1).FieldAmps, 1e-6);
        double left = 1 + Math.Exp(-2);
        Assert.Equal(left, run.At(2.2).FieldAmps, 1e-6);
        Assert.Equal(left * Math.Exp(-1), run.At(2.3).FieldAmps, 1e-6);
        Sample weak = run.At(2.2);
        Assert.Equal((0.03 + 0.97 * left / 2) * K * weak.ArmatureAmps, weak.TorqueNewtonMetres, 1e-3);
    }

    [Fact]
    public void FieldOpen_Running_DischargesAndComesBack()
    {
        PlayedRun run = PlayField(At(2) with { FieldOpen = true }, At(2.05) with { FieldOpen = false });

        Assert.Equal(2 * Math.Exp(-1), run.At(2.05).FieldAmps, 1e-6);
        Assert.Equal(2 + (2 * Math.Exp(-1) - 2) * Math.Exp(-0.5), run.At(2.1).FieldAmps, 1e-6);
    }

    [Fact]
    public void FieldOpen_LineClosed_DrivesTheCurrentUp()
    {
        PlayedRun run = PlayField(At(3.9) with { FieldOpen = true });

        Assert.True(run.At(3.95).ArmatureAmps > 3 * run.At(3.9).ArmatureAmps);
        Assert.Equal(run.At(3.899).SupplyVolts, run.At(3.95).SupplyVolts);
    }

    [Fact]
    public void ShaftLocked_Turning_StopsSoonAndHoldsAgainstTheRaisedSupply()
    {
        PlayedRun run = Play(
            At(2) with { ShaftLocked = true }, new RunEvent(2.1, 20, null, null), new RunEvent(2.2, null, 400, null), At(2.4) with { ShaftLocked = false });

        Assert.True(run.At(2).SpeedRadPerSec > 50);
        Assert.All(run.Between(2 + ShaftJam.StopSeconds, 2.4), sample => Assert.Equal(0, sample.SpeedRadPerSec));
        Assert.True(run.At(2.15).ArmatureAmps > 150);
        Assert.True(run.At(2.39).ArmatureAmps > 400);
        Assert.True(run.At(2.6).SpeedRadPerSec > 10);
        Assert.Equal(20, run.At(2.6).LoadTorqueNewtonMetres, 1e-9);
    }

    [Fact]
    public void ShaftLocked_AtRestOnADeadSupply_HoldsWhenTheSupplyComes()
    {
        PlayedRun run = Play(
            new RunEvent(0, null, 0, null), At(0.1) with { ShaftLocked = true }, new RunEvent(0.2, null, 220, null));

        Assert.All(run.Samples, sample => Assert.Equal(0, sample.SpeedRadPerSec));
        Assert.True(run.At(1).ArmatureAmps > 100);
    }

    [Fact]
    public void ShaftLocked_TurningBackwards_StopsToo()
    {
        RunSetup setup = PlayedRun.Setup(At(0.1) with { ShaftLocked = true }) with { InitialSpeedRadPerSec = -80 };
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, setup);

        Assert.True(run.At(0.1).SpeedRadPerSec < -50);
        Assert.All(run.Between(0.1 + ShaftJam.StopSeconds, 4), sample => Assert.Equal(0, sample.SpeedRadPerSec));
    }

    [Fact]
    public void SupplyVolts_ToZero_FeedsTheDeadSupplyThroughItsResistance()
    {
        RunSetup setup = PlayedRun.Setup(new RunEvent(2.4, null, 0, null)) with { Supply = new Supply(220, 0.1) };
        PlayedRun run = PlayedRun.Of(PlayedRun.Patient, setup);
        Sample dead = run.At(2.43);

        Assert.True(run.At(2.4).ArmatureAmps > 0 && dead.LineClosed);
        Assert.True(dead.ArmatureAmps < -50);
        Assert.Equal(-0.1 * dead.ArmatureAmps, dead.SupplyVolts, 1e-4);
        Assert.True(run.At(2.6).SpeedRadPerSec < dead.SpeedRadPerSec);
    }

    [Theory]
    [InlineData(SpeedSignalState.Lost)]
    [InlineData(SpeedSignalState.Stuck)]
    [InlineData(SpeedSignalState.Zero)]
    public void SpeedSignal_Faulty_HidesAShaftThatGoesOn(SpeedSignalState state)
    {
        PlayedRun sound = Play(), faulty = Play(At(0.5) with { SpeedSignal = state }, At(0.6) with { SpeedSignal = SpeedSignalState.Sound });

        float last = faulty.At(0.499).SpeedRadPerSec;
        Assert.All(faulty.Between(0.5, 0.599), sample =>
        {
            Assert.Equal(state != SpeedSignalState.Lost, sample.SpeedValid);
            Assert.Equal(state == SpeedSignalState.Zero ? 0 : last, sample.SpeedRadPerSec);
        });
        Assert.Equal(sound.At(0.505).ArmatureAmps, faulty.At(0.505).ArmatureAmps);
        Assert.True(faulty.At(0.6).SpeedValid);
        Assert.NotEqual(last, faulty.At(0.6).SpeedRadPerSec);
    }

    [Fact]
    public void CurrentSensorGain_Wrong_FalsifiesTheReadingAlone()
    {
        PlayedRun sound = Play(), wrong = Play(At(0.5) with { CurrentSensorGain = 0.5 });

        Assert.Equal(0.5 * sound.At(0.5).ArmatureAmps, wrong.At(0.5).ArmatureAmps, 1e-5);
        Assert.Equal(sound.At(0.5).TorqueNewtonMetres, wrong.At(0.5).TorqueNewtonMetres);
        Assert.Equal(sound.At(0.51).SpeedRadPerSec, wrong.At(0.51).SpeedRadPerSec);
    }

    // Both are not in the record: what the controller reads shows in what it does.
    [Fact]
    public void Permissives_Taken_RefuseTheStart()
    {
        Core.Settings settings = PlayedRun.Patient;
        settings.RequiredPermissives = 6;
        RunEvent start = new(0.5, null, null, OperatorCommand.Start);

        Assert.True(PlayedRun.Of(settings, PlayedRun.Setup(start)).At(1).LineClosed);
        Assert.True(PlayedRun.Of(settings, PlayedRun.Setup(At(0) with { Permissives = 6 }, start)).At(1).LineClosed);
        Assert.False(PlayedRun.Of(settings, PlayedRun.Setup(At(0) with { Permissives = 5 }, start)).At(1).LineClosed);
    }

    [Theory]
    [InlineData(20.0, 300.0, true)]
    [InlineData(20.0, 400.0, false)]
    [InlineData(400.0, 20.0, true)]
    [InlineData(400.0, null, false)]
    public void ResistorCelsius_AboveTheLimit_RefusesTheStart(double atFirst, double? then, bool starts)
    {
        Core.Settings settings = PlayedRun.Patient;
        settings.ResistorSensorFitted = true;
        RunSetup setup = PlayedRun.Setup(At(0.1) with { ResistorCelsius = then }, At(0.2) with { Command = OperatorCommand.Reset }, new RunEvent(0.5, null, null, OperatorCommand.Start));

        Assert.Equal(starts, PlayedRun.Of(settings, setup with { ResistorCelsius = atFirst }).At(1).LineClosed);
    }

    [Fact]
    public void Run_NothingOfItUsed_ReadsAsBefore()
    {
        PlayedRun run = Play();

        Assert.All(run.Samples, sample =>
        {
            Assert.True(sample.SpeedValid);
            Assert.Equal(0, sample.FieldAmps);
            Assert.False(sample.BrakeClosed || sample.CloseBrake || sample.FieldClosed || sample.CloseField);
        });
        Assert.Equal(0, run.Result.BrakeJoules);
        Assert.Equal(K * run.Result.PeakAmps, run.Result.PeakTorqueNewtonMetres);
    }

    private static RunEvent At(double seconds) => new(seconds, null, null, null);

    private static PlayedRun Play(params RunEvent[] events) => PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup(events));

    private static PlayedRun PlayField(params RunEvent[] events)
    {
        RunSetup setup = PlayedRun.SetupWithBrakeAndField(events);
        return PlayedRun.Of(PlayedRun.Patient, setup with { Field = setup.Field! with { HasContactor = false } });
    }
}
