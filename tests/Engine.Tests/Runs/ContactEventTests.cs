using System;
using System.Linq;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What a faulty contactor does to the plant and to its feedback; contacts close after 20 ms and open after 10 ms.</summary>
public sealed class ContactEventTests
{
    private static readonly RunEvent Stop = new(2.5, null, null, OperatorCommand.Stop);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2.505)]
    public void LineWelds_Stop_KeepsItsCurrentUntilRepaired(double seconds)
    {
        PlayedRun run = Play(Fault(seconds, ContactName.Line, ContactFaultKind.Welds), Stop, Fault(3, ContactName.Line, ContactFaultKind.Sound));

        Assert.All(run.Between(2.501, 3.009), sample =>
        {
            Assert.False(sample.CloseLine);
            Assert.True(sample.LineClosed);
            Assert.True(sample.ArmatureAmps > 10);
        });
        Assert.False(run.At(3.011).LineClosed);
        Assert.Equal(0, run.At(3.011).ArmatureAmps);
    }

    [Fact]
    public void LineRefusesToClose_Start_StaysDeadUntilRepaired()
    {
        PlayedRun run = Play(Fault(0, ContactName.Line, ContactFaultKind.RefusesToClose), Fault(1, ContactName.Line, ContactFaultKind.Sound));

        Assert.All(run.Between(0.1, 1.019), sample =>
        {
            Assert.True(sample.CloseLine);
            Assert.False(sample.LineClosed);
            Assert.Equal(0, sample.ArmatureAmps);
        });
        Assert.True(run.At(1.021).LineClosed);
        Assert.True(run.At(1.05).ArmatureAmps > 10);
    }

    [Fact]
    public void LineRefusesToClose_AlreadyClosed_OpensWithItsCoilOnly()
    {
        PlayedRun run = Play(Fault(1, ContactName.Line, ContactFaultKind.RefusesToClose), Stop);

        Assert.All(run.Between(1, 2.509), sample => Assert.True(sample.LineClosed));
        Assert.False(run.At(2.511).LineClosed);
    }

    [Fact]
    public void LineDropsOut_Running_OpensAtOnceUnderItsCoil()
    {
        PlayedRun run = Play(Fault(1, ContactName.Line, ContactFaultKind.DropsOut));

        Assert.True(run.At(0.999).CloseLine && run.At(0.999).LineClosed);
        Assert.False(run.At(1).LineClosed);
        Assert.Equal(0, run.At(1).ArmatureAmps);
        Assert.True(run.Result.ArcJoules > 0);
        Assert.All(run.Between(1, 4), sample => Assert.False(sample.LineClosed));
    }

    [Fact]
    public void LineAuxiliaryStuckOpen_Running_SaysOpenUnderCurrent()
    {
        PlayedRun run = Play(Fault(1, ContactName.Line, ContactFaultKind.AuxiliaryStuckOpen));

        Assert.True(run.At(0.999).LineClosed);
        Assert.False(run.At(1).LineClosed);
        Assert.True(run.At(1).ArmatureAmps > 10);
    }

    [Fact]
    public void LineAuxiliaryStuckClosed_Stop_SaysClosedWithoutCurrent()
    {
        PlayedRun run = Play(Fault(1, ContactName.Line, ContactFaultKind.AuxiliaryStuckClosed), Stop, Fault(3, ContactName.Line, ContactFaultKind.Sound));

        Assert.All(run.Between(2.511, 2.999), sample =>
        {
            Assert.True(sample.LineClosed);
            Assert.Equal(0, sample.ArmatureAmps);
        });
        Assert.False(run.At(3).LineClosed);
    }

    [Fact]
    public void LineWeldsAndItsAuxiliarySticks_Stop_HidesTheWeld()
    {
        PlayedRun run = Play(
            Fault(1, ContactName.Line, ContactFaultKind.Welds), Fault(1, ContactName.Line, ContactFaultKind.AuxiliaryStuckOpen), Stop);

        Assert.All(run.Between(2.52, 4), sample => Assert.False(sample.LineClosed));
        Assert.True(run.At(2.6).ArmatureAmps > 10);
    }

    [Fact]
    public void StageRefusesToClose_CutOut_LeavesItsSectionIn()
    {
        PlayedRun run = Play(Fault(1, ContactName.Stage, ContactFaultKind.RefusesToClose, 1));

        Assert.Empty(run.Result.Cutouts);
        Assert.Contains(run.Samples, sample => sample.CloseStages == 1);
        Assert.All(run.Samples, sample => Assert.Equal(0, sample.StagesClosed));
    }

    [Fact]
    public void StageDropsOut_Running_PutsItsSectionBack()
    {
        PlayedRun run = Play(Fault(1.8, ContactName.Stage, ContactFaultKind.DropsOut, 1));

        Assert.Equal(1, run.At(1.799).StagesClosed);
        Assert.Equal(1, run.At(1.799).CloseStages);
        Assert.Equal(0, run.At(1.8).StagesClosed);
        Assert.True(run.At(1.82).ArmatureAmps < 0.75 * run.At(1.799).ArmatureAmps);
    }

    [Fact]
    public void StageWelds_Stop_StaysClosedAlone()
    {
        PlayedRun run = Play(Fault(1, ContactName.Stage, ContactFaultKind.Welds, 2), Stop);

        Assert.Equal(3, run.At(2.499).StagesClosed);
        Assert.All(run.Between(2.511, 4), sample => Assert.Equal(2, sample.StagesClosed));
    }

    [Fact]
    public void StageAuxiliaryStuckClosed_Accelerating_ChangesNoCurrent()
    {
        PlayedRun sound = Play(), stuck = Play(Fault(0.5, ContactName.Stage, ContactFaultKind.AuxiliaryStuckClosed, 3));

        Assert.Equal(0, stuck.At(0.499).StagesClosed);
        Assert.Equal(4, stuck.At(0.5).StagesClosed);
        Assert.Equal(sound.At(0.505).ArmatureAmps, stuck.At(0.505).ArmatureAmps);
    }

    [Fact]
    public void Brake_Stop_SlowsTheShaftAndTakesItsHeat()
    {
        PlayedRun run = Play(Stop);

        Sample closed = run.Samples.First(sample => sample.BrakeClosed), open = run.Samples.Last(sample => sample.BrakeClosed);
        Assert.Equal(0.02, closed.TimeSeconds - run.Samples.First(sample => sample.CloseBrake).TimeSeconds, 1e-9);
        Assert.Equal(-1.69 * run.At(2.56).SpeedRadPerSec / 1.38, run.At(2.56).ArmatureAmps, 5.0);
        Assert.InRange(open.SpeedRadPerSec, 80, 90);
        Assert.True(run.Result.BrakeJoules > 1000);
        RunResult result = run.Result;
        double spent = result.SectionJoules.Sum() + result.ArmatureJoules + result.BrakeJoules + result.LoadJoules + result.KineticJoules
            + result.MagneticJoules + result.ArcJoules;
        Assert.Equal(1, result.SupplyJoules / spent, 1e-9);
    }

    [Fact]
    public void BrakeWelds_Release_GoesOnBraking()
    {
        PlayedRun run = Play(Stop, Fault(2.6, ContactName.Brake, ContactFaultKind.Welds));

        Assert.False(run.At(3.9).CloseBrake);
        Assert.True(run.At(3.9).BrakeClosed);
        Assert.True(run.At(3.9).SpeedRadPerSec < 60);
        Assert.True(run.At(3.9).ArmatureAmps < -10);
    }

    [Theory]
    [InlineData(ContactFaultKind.RefusesToClose, false, 0)]
    [InlineData(ContactFaultKind.AuxiliaryStuckOpen, false, -60)]
    [InlineData(ContactFaultKind.AuxiliaryStuckClosed, true, -60)]
    public void BrakeFault_Stop_ShowsInCurrentAndFeedback(ContactFaultKind kind, bool reported, double mostAmps)
    {
        PlayedRun run = Play(Stop, Fault(2.505, ContactName.Brake, kind));

        Assert.True(run.At(2.55).CloseBrake || kind == ContactFaultKind.AuxiliaryStuckClosed);
        Assert.Equal(reported, run.At(2.55).BrakeClosed);
        if (run.At(2.55).CloseBrake) Assert.True(run.At(2.55).ArmatureAmps <= mostAmps);
        if (kind == ContactFaultKind.RefusesToClose) Assert.Equal(0, run.At(2.55).ArmatureAmps);
    }

    [Fact]
    public void FieldDropsOut_Running_DiesThroughItsDischargeResistor()
    {
        PlayedRun run = Play(Fault(1.5, ContactName.Field, ContactFaultKind.DropsOut));

        Assert.Equal(2, run.At(1.499).FieldAmps, 1e-5);
        Assert.False(run.At(1.5).FieldClosed);
        Assert.Equal(run.At(1.5).FieldAmps * Math.Exp(-0.4), run.At(1.52).FieldAmps, 1e-6);
        Assert.True(run.At(1.52).TorqueNewtonMetres < 0.75 * 1.69 * run.At(1.52).ArmatureAmps);
    }

    [Fact]
    public void FieldWelds_TripWithOpenLine_KeepsItsCurrent()
    {
        RunEvent stopChain = new(1.5, null, null, OperatorCommand.EmergencyStop);
        PlayedRun sound = Play(stopChain), welded = Play(stopChain, Fault(1, ContactName.Field, ContactFaultKind.Welds));

        Assert.False(sound.At(3).CloseField || sound.At(3).FieldClosed || welded.At(3).CloseField);
        Assert.Equal(0, sound.At(3).FieldAmps, 1e-6);
        Assert.True(welded.At(3).FieldClosed);
        Assert.Equal(2, welded.At(3).FieldAmps, 1e-6);
    }

    [Fact]
    public void FieldAuxiliaryStuckClosed_RefusesToCloseToo_HasNoField()
    {
        PlayedRun run = Play(Fault(0, ContactName.Field, ContactFaultKind.RefusesToClose), Fault(0, ContactName.Field, ContactFaultKind.AuxiliaryStuckClosed));

        Assert.True(run.At(0.01).FieldClosed && run.At(0.01).CloseField);
        Assert.All(run.Samples, sample => Assert.Equal(0, sample.FieldAmps));
    }

    [Theory]
    [InlineData(ContactName.Stage, 0)]
    [InlineData(ContactName.Stage, 4)]
    [InlineData((ContactName)9, 0)]
    public void ContactFault_NoSuchContactor_IsRefused(ContactName contact, int stage) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Play(Fault(0.5, contact, ContactFaultKind.Welds, stage)));

    private static RunEvent Fault(double seconds, ContactName contact, ContactFaultKind kind, int stage = 0) =>
        new(seconds, null, null, null) { ContactFault = new ContactFault(contact, kind, stage) };

    private static PlayedRun Play(params RunEvent[] events) =>
        PlayedRun.Of(PlayedRun.PatientWithBrakeAndField, PlayedRun.SetupWithBrakeAndField([.. events.OrderBy(happening => happening.AtSeconds)]));
}
