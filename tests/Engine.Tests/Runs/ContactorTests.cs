using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>Bouncing contacts and coils with too little voltage, alone and in a run.</summary>
public sealed class ContactorTests
{
    private static readonly Contactors Bouncing = new(0.04, 0.015) { BounceCount = 2, BounceSeconds = 0.001 };
    private static readonly Contactors Coil = new(0.04, 0.015) { PickUpRatio = 0.85, DropOutRatio = 0.5 };

    [Fact]
    public void Bounce_AfterTheFirstTouch_OpensAndClosesAndIsReportedAfterTheLast()
    {
        Contactor contactor = new(Bouncing);
        contactor.Command(true, 1);

        // Touch at 1.040; open, closed, open, closed: the last touch at 1.044.
        Assert.Equal(
            [(1.040, true, false), (1.041, false, false), (1.042, true, false), (1.043, false, false), (1.044, true, true)],
            Moves(contactor).Select(move => (double.Round(move.Seconds, 9), move.Closed, move.Reported)));
    }

    [Fact]
    public void Bounce_CoilLetsGoInside_OpensOnceAndForAll()
    {
        Contactor contactor = new(Bouncing);
        contactor.Command(true, 1);
        contactor.Move();

        contactor.Command(false, 1.0405);

        Assert.Equal([(1.0555, false, false)], Moves(contactor).Select(move => (double.Round(move.Seconds, 9), move.Closed, move.Reported)));
    }

    [Fact]
    public void Bounce_AuxiliaryFailsInside_GoesOn()
    {
        Contactor contactor = new(Bouncing);
        contactor.Command(true, 1);
        contactor.Move();

        contactor.Fail(ContactFaultKind.AuxiliaryStuckOpen, 1.0405);

        Assert.Equal(4, Moves(contactor).Count);
        Assert.True(contactor.IsClosed && !contactor.IsReportedClosed);
    }

    [Fact]
    public void Bounce_InAStart_InterruptsTheCurrentAndCountsEachCutoutOnce()
    {
        RunSetup still = PlayedRun.Setup(), bouncing = still with { Contactors = still.Contactors with { BounceCount = 3, BounceSeconds = 0.0011 } };
        PlayedRun quiet = PlayedRun.Of(PlayedRun.Patient, still), loud = PlayedRun.Of(PlayedRun.Patient, bouncing);

        Assert.Equal(3, loud.Result.Cutouts.Count);
        Assert.Equal([1, 2, 3], loud.Result.Cutouts.Select(cutout => cutout.Stage));
        // The line's contact breaks what has begun to flow three times.
        Assert.True(loud.Result.ArcJoules > 0);
        Assert.Equal(0, loud.At(0.022).ArmatureAmps);
        Assert.False(loud.At(0.026).LineClosed);
        Assert.True(loud.At(0.027).LineClosed);
        // A stage's bounce only puts its section back for a millisecond: the peak behind it is nearly the same.
        Assert.All(quiet.Result.Cutouts.Zip(loud.Result.Cutouts), pair => Assert.Equal(1, pair.Second.PeakAmpsAfter / pair.First.PeakAmpsAfter, 0.02));
        Assert.Equal(quiet.Result.FinalRpm, loud.Result.FinalRpm, 1.0);
    }

    [Theory]
    [InlineData(0.84, false)]
    [InlineData(0.85, true)]
    [InlineData(1.1, true)]
    public void Coil_AtAVoltage_ClosesFromPickUpOn(double ratio, bool closes)
    {
        Contactor contactor = new(Coil);
        contactor.Feed(ratio, 0);

        contactor.Command(true, 1);

        Assert.Equal(closes ? 1.04 : double.PositiveInfinity, contactor.MovesAtSeconds, 1e-12);
    }

    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.49, true)]
    [InlineData(0, true)]
    public void Coil_Closed_LetsGoBelowDropOutOnly(double ratio, bool opens)
    {
        Contactor contactor = Closed();

        contactor.Feed(ratio, 2);

        Assert.Equal(opens ? 2.015 : double.PositiveInfinity, contactor.MovesAtSeconds, 1e-12);
    }

    [Fact]
    public void Coil_VoltageComesBack_ClosesFromPickUpAndNotFromDropOut()
    {
        Contactor contactor = Closed();
        contactor.Feed(0.3, 2);
        contactor.Move();
        Assert.False(contactor.IsClosed);

        contactor.Feed(0.7, 3);
        Assert.Equal(double.PositiveInfinity, contactor.MovesAtSeconds);
        contactor.Feed(0.9, 4);

        Assert.Equal(4.04, contactor.MovesAtSeconds, 1e-12);
    }

    [Fact]
    public void CoilVoltage_DipInARun_DropsEveryContactorAtOnce()
    {
        PlayedRun run = PlayedRun.Of(
            PlayedRun.Patient,
            PlayedRun.Setup(new RunEvent(3, null, null, null) { CoilVoltageRatio = 0.6 }, new RunEvent(3.5, null, null, null) { CoilVoltageRatio = 0.4 }));

        Assert.True(run.At(3.4).LineClosed && run.At(3.4).StagesClosed != 0);
        Assert.True(run.At(3.509).LineClosed);
        Assert.False(run.At(3.511).LineClosed);
        Assert.Equal(0, run.At(3.511).StagesClosed);
        Assert.Equal(0, run.At(3.511).ArmatureAmps);
    }

    [Fact]
    public void CoilVoltage_DipInACase_TripsByTheFeedbackAndIsTold()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(["at = \"5 s\"\ncoil-voltage = 0.4"]));

        Assert.Equal("contact did not close", Assert.Single(study.Result.Faults).Name);
        Assert.Contains("event: the coils get 40 % of their rated voltage", study.Result.Timeline.Select(ReasonText.Sentence));
    }

    [Fact]
    public void Prepare_EveryKey_ArrivesInTheContactors() => Assert.Equal(
        new Contactors(0.04, 0.015) { BounceCount = 3, BounceSeconds = 0.002, PickUpRatio = 0.8, DropOutRatio = 0.6 },
        CaseRunner.Prepare(Case(
            ("contactors.bounce-count", "3"), ("contactors.bounce-time", "2 ms"), ("contactors.pick-up-voltage", "0.8"), ("contactors.drop-out-voltage", "0.6"))).Setup.Contactors);

    [Fact]
    public void Prepare_NothingOfIt_IsTheStandardsCoilWithoutBounce() => Assert.Equal(
        (0, 0.85, 0.5), CaseRunner.Prepare(Case()).Setup.Contactors is var found ? (found.BounceCount, found.PickUpRatio, found.DropOutRatio) : default);

    [Fact]
    public void Prepare_CoilThatLetsGoAboveItsPickUp_IsRefused()
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(Case(("contactors.pick-up-voltage", "0.4"))));

        Assert.Equal(
            ("contactors.pick-up-voltage", "a coil that lets go below 0.5 and closes from 0.4", "contactors.drop-out-voltage up to contactors.pick-up-voltage"),
            (problem.Key, problem.Found, problem.Allowed));
    }

    private static CaseFile Case(params (string Key, string? Value)[] keys) => LineShaftCase.With([], [.. keys]);

    private static Contactor Closed()
    {
        Contactor contactor = new(Coil);
        contactor.Command(true, 1);
        contactor.Move();
        return contactor;
    }

    private static List<(double Seconds, bool Closed, bool Reported)> Moves(Contactor contactor)
    {
        List<(double, bool, bool)> moves = [];
        while (double.IsFinite(contactor.MovesAtSeconds))
        {
            double at = contactor.MovesAtSeconds;
            contactor.Move();
            moves.Add((at, contactor.IsClosed, contactor.IsReportedClosed));
        }

        return moves;
    }
}
