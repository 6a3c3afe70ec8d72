using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What becomes of every shipped fault case, and why it has to. Figures come from the case by the formula beside them.</summary>
public sealed class FaultCaseTests
{
    private const double Period = 0.001;

    [Fact]
    public void ShippedCases_All_PassTheirOwnVerdict() =>
        Assert.All(ShippedCase.Names, name => Assert.Equal("pass", ShippedCase.Run(name).Verdict.Word));

    // If(t) = 1.375 A e^(-t / 0.2 s) is below 1.1 A after 0.2 s ln 1.25 = 44.6 ms and must stay so for 5 ms. Until then the flux
    // falls by a fifth, and with it 103 V of back-EMF; the rest drives the current up through 0.245 ohm behind La/R = 11 ms.
    [Fact]
    public void FieldLoss_AtSpeed_TripsBeforeTheCurrentDoes()
    {
        RunResult result = ShippedCase.Run("field-loss").Result;

        FaultEntry fault = AssertFirst(result, FaultId.FieldLost, 4.0446 + 0.005, 4.0446 + 0.005 + 2 * Period);
        Assert.InRange(fault.Value, 1.375 * Math.Exp(-0.052 / 0.2), 1.1);
        Assert.Equal(1.1f, fault.Limit);
        Assert.Equal((Phase.Running, 5), (fault.Phase, fault.Stage));
        Assert.InRange(result.PeakAmps, 80, 1.5 * 80);
        Assert.Equal([Phase.Ready, Phase.FieldBuilding, Phase.Accelerating, Phase.Running, Phase.Tripped], result.Phases.Select(entry => entry.Phase));
    }

    // (1 - e^(-t Rf/Lf)) 1.375 A passes 1.1 A after 28/80 s ln 5 = 0.563 s behind the field contactor; then it stands 0.3 s.
    [Fact]
    public void FieldLoss_Start_WaitsForTheField()
    {
        RunResult result = ShippedCase.Run("field-loss").Result;

        double closes = 0.035 + 28.0 / 80 * Math.Log(5) + 0.3;
        Assert.InRange(result.Phases.First(entry => entry.Phase == Phase.Accelerating).Seconds, closes, closes + 3 * Period);
    }

    // Every contact has twice the slower contactor's time, but at least 0.1 s, to open after the stop at 7 s.
    [Fact]
    public void WeldedStage_AtTheStop_IsNamedAndMayBeLive()
    {
        RunResult result = ShippedCase.Run("welded-stage").Result;

        FaultEntry fault = AssertFirst(result, FaultId.ContactDidNotOpen, 7.1, 7.1 + 2 * Period);
        Assert.Equal(2f, fault.Value);
        Assert.Equal("contactor of stage 2", FaultText.Measured(fault));
        Assert.Equal(FaultSeverity.MayBeLive, FaultTable.RowOf(fault.Id).Severity);
        Assert.Equal((0, 2), (fault.Snapshot!.StagesCommanded, fault.Snapshot.StagesClosed));
        Assert.InRange(result.PeakAmps, 170, 180);
    }

    [Fact]
    public void StageRefuses_OneContactTimeLater_TripsWithTheResistanceStillIn()
    {
        RunResult result = ShippedCase.Run("stage-refuses").Result;

        double commanded = result.Timeline.First(entry => entry.Reason == Reason.StageCutOut && entry.Stage == 3).Seconds;
        FaultEntry fault = AssertFirst(result, FaultId.ContactDidNotClose, commanded + 0.1, commanded + 0.1 + 2 * Period);
        Assert.Equal(3f, fault.Value);
        Assert.Equal([1, 2], result.Cutouts.Select(cutout => cutout.Stage));
    }

    // At the return the back-EMF is near 360 V: on the bare armature (440 - 2 - 360) V / 0.26 ohm = 300 A would flow.
    [Fact]
    public void DipShort_ReturnOfTheSupply_MeetsTheResistanceThatItNeeds()
    {
        StartStudy study = ShippedCase.Run("dip-short");
        RunResult result = study.Result;

        Assert.Empty(result.Faults);
        Assert.Equal(Phase.Running, result.Phases[^1].Phase);
        TimelineEntry back = result.Timeline.First(entry => entry.Event == null && entry.Seconds >= 5.3);
        double backEmf = study.Record.Samples.Last(sample => sample.TimeSeconds <= 5.3).BackEmfVolts;
        Assert.Equal(4, back.Stage);
        Assert.InRange((440 - 2 - backEmf) / 0.26, 250, 350);
        Assert.Equal([4, 5, 6], result.Cutouts.Where(cutout => cutout.Seconds > 5).Select(cutout => cutout.Stage));
        Assert.InRange(result.PeakAmps, 170, 180);
    }

    [Fact]
    public void DipLong_AfterTheDipTime_OpensTheLineAndStaysOff()
    {
        StartStudy study = ShippedCase.Run("dip-long");

        FaultEntry fault = AssertFirst(study.Result, FaultId.SupplyLow, 5.5, 5.5 + 2 * Period);
        Assert.InRange(fault.Value, 380, 386);
        Assert.Equal(400f, fault.Limit);
        Assert.Equal(Phase.Tripped, study.Result.Phases[^1].Phase);
        Assert.All(study.Record.Samples.Where(sample => sample.TimeSeconds > 5.52), sample => Assert.Equal(0f, sample.ArmatureAmps));
    }

    [Fact]
    public void SpeedLostStarting_AfterItsTime_TripsAndCutsNothingOutMeanwhile()
    {
        RunResult result = ShippedCase.Run("speed-lost-starting").Result;

        FaultEntry fault = AssertFirst(result, FaultId.SpeedSignalLost, 1.2, 1.2 + 2 * Period);
        Assert.False(fault.Snapshot!.SpeedValid);
        Assert.Empty(result.Cutouts);
        Assert.InRange(result.PeakAmps, 30, 32);
    }

    // Nothing is left to decide: all resistance is out and the machine's own back-EMF holds the current.
    [Fact]
    public void SpeedLostRunning_KeepsRunning()
    {
        RunResult result = ShippedCase.Run("speed-lost-running").Result;

        Assert.Empty(result.Faults);
        Assert.Equal(Phase.Running, result.Phases[^1].Phase);
        Assert.Contains(result.Timeline, entry => entry.Reason == Reason.RunningWithoutSpeed);
        // T = k I at the end: 0.45 N m over 0.138 V s/rad.
        Assert.Equal(0.45 / 0.138, result.FinalAmps, 0.01);
    }

    // The longer confirm time lets each back-EMF grow a little further: the cutouts come later and the peaks behind them are lower.
    [Fact]
    public void SpeedLostFinish_CutsOutLaterAndLower()
    {
        RunResult with = ShippedCase.Run("speed-lost-running").Result, without = ShippedCase.Run("speed-lost-finish").Result;

        Assert.Empty(without.Faults);
        Assert.Equal(Phase.Running, without.Phases[^1].Phase);
        Assert.Equal([1, 2], without.Cutouts.Select(cutout => cutout.Stage));
        // 100 ms instead of 3 ms, and a bit for the estimate.
        Assert.InRange(without.Cutouts[0].Seconds - with.Cutouts[0].Seconds, 0.09, 0.15);
        Assert.All(without.Cutouts.Zip(with.Cutouts), pair => Assert.True(pair.First.PeakAmpsAfter < pair.Second.PeakAmpsAfter));
    }

    // (110 - 2) V over the first total of 1.35 ohm and the supply's 0.025 ohm; 60 A are passed 2.6 mH / 1.375 ohm x ln 4.2 = 2.7 ms
    // after the contact closes at 35 ms.
    [Fact]
    public void Stalled_AfterTheStallTime_TripsAtThePeakOfTheFirstStage()
    {
        RunResult result = ShippedCase.Run("stalled").Result;

        FaultEntry fault = AssertFirst(result, FaultId.Stalled, 0.8377, 0.8377 + 2 * Period);
        Assert.Equal(108 / 1.375, fault.Value, 0.05);
        Assert.Equal(60f, fault.Limit);
        Assert.Equal(108 / 1.375, result.PeakAmps, 0.05);
        Assert.Equal(0, result.FinalRpm);
    }

    [Fact]
    public void BrakeStop_BrakesOnTheBackEmfAndEndsReady()
    {
        StartStudy study = ShippedCase.Run("brake-stop");
        RunResult result = study.Result;

        Assert.Empty(result.Faults);
        Assert.Equal(
            [Phase.Ready, Phase.Accelerating, Phase.Running, Phase.Stopping, Phase.Braking, Phase.Stopping, Phase.Ready],
            result.Phases.Select(entry => entry.Phase));
        // I = -(E - Vb) / (1.2 + 0.22) ohm at the speed at which the contact closes; the inductance rounds it off a little.
        Sample closing = study.Record.Samples.First(sample => sample.BrakeClosed);
        double first = (closing.BackEmfVolts - 2) / 1.42;
        Assert.InRange(-study.Record.Samples.Min(sample => sample.ArmatureAmps), 0.97 * first, first);
        Assert.True(first < 80);
        // The resistor takes its part of the resistances; the load takes the rest of the shaft's energy.
        double radPerSec = closing.SpeedRadPerSec, joules = 0.5 * 0.64 * radPerSec * radPerSec;
        Assert.InRange(result.BrakeJoules, 0.3 * joules, 1.2 / 1.42 * joules);
        PhaseEntry released = result.Phases[^2];
        double rpm = study.Record.Samples.First(sample => sample.TimeSeconds >= released.Seconds).SpeedRadPerSec * 30 / Math.PI;
        Assert.InRange(rpm, 117, 120);
    }

    // The contact parts 15 ms after the stop, every contact has 0.1 s to open, and the current flows on all the same.
    [Fact]
    public void ArcStands_AtAStopFromLowSpeed_IsSeenByItsCurrent()
    {
        StartStudy study = ShippedCase.Run("arc-stands");
        RunResult result = study.Result;

        FaultEntry fault = AssertFirst(result, FaultId.CurrentWhileOpen, 0.615, 0.615 + 2 * Period);
        Assert.Equal(FaultSeverity.MayBeLive, FaultTable.RowOf(fault.Id).Severity);
        Assert.Equal((false, 0), (fault.Snapshot!.LineClosed, fault.Snapshot.StagesClosed));
        // (220 - 2 - 60) V less the back-EMF over every section, the armature's 0.25 and the source's 0.015 ohm.
        double backEmf = study.Setup.Machine.Constant * result.FinalRpm * Math.PI / 30, ohms = study.Setup.SectionOhms.Sum() + 0.265;
        Assert.Equal((158 - backEmf) / ohms, result.FinalAmps, 0.01);
        // The arc's heat is 60 V times the charge that passed it.
        Sample[] arc = [.. study.Record.Samples.Where(sample => sample.TimeSeconds > 0.515)];
        double charge = arc.Zip(arc.Skip(1)).Sum(pair => (pair.Second.TimeSeconds - pair.First.TimeSeconds) * (pair.First.ArmatureAmps + pair.Second.ArmatureAmps) / 2);
        Assert.Equal(60 * charge, result.ArcJoules, 0.002 * result.ArcJoules);
    }

    // At 1026 r/min and more the back-EMF is 190 V: it leaves 28 V, less than the arc's 60 V.
    [Fact]
    public void ArcStands_StoppedAtSpeed_GoesOutBehindTheAuxiliaryContact()
    {
        string text = ShippedCase.Text("arc-stands").Replace("at = \"0.5 s\"", "at = \"3 s\"", StringComparison.Ordinal);
        StartStudy study = LineShaftCase.Run(CaseFile.Parse("late.toml", text));

        Assert.Empty(study.Result.Faults);
        Assert.Equal(Phase.Ready, study.Result.Phases[^1].Phase);
        Assert.Contains(study.Record.Samples, sample => sample.TimeSeconds > 3.014 && !sample.LineClosed && sample.ArmatureAmps > 5);
        Assert.Equal(0, study.Result.FinalAmps);
        Assert.True(study.Result.ArcJoules > 0);
    }

    // The back-EMF of 297 V lies between the thresholds of stage 2 (257 V) and stage 3 (321 V): two stages are not needed.
    [Fact]
    public void SpinningStart_ClosesTheLineOnTheStageThatTheBackEmfLeavesNeeded()
    {
        StartStudy study = ShippedCase.Run("spinning-start");
        RunResult result = study.Result;

        Assert.Empty(result.Faults);
        Sample closing = study.Record.Samples.First(sample => sample.TimeSeconds > 6 && sample.LineClosed);
        Assert.Equal((3, 0b11), (closing.Stage, closing.StagesClosed));
        Assert.InRange(closing.BackEmfVolts, 257, 321);
        Assert.Equal([1, 2, 3, 4, 5, 6, 3, 4, 5, 6], result.Cutouts.Select(cutout => cutout.Stage));
        double peak = study.Record.Samples.Where(sample => sample.TimeSeconds > 6).Max(sample => sample.ArmatureAmps);
        Assert.InRange(peak, 130, 180);
        Assert.True((438 - closing.BackEmfVolts) / study.Design.Stages[2].TotalOhms <= 180);
    }

    // Without an auxiliary contact only the step of the current could have told; it does not come within the contact time.
    [Fact]
    public void UnseenContact_WithoutAStepOfTheCurrent_IsNamed()
    {
        RunResult result = ShippedCase.Run("unseen-contact").Result;

        double commanded = result.Timeline.First(entry => entry.Reason == Reason.StageCutOut && entry.Stage == 2).Seconds;
        FaultEntry fault = AssertFirst(result, FaultId.ContactDidNotClose, commanded + 0.1, commanded + 0.1 + 2 * Period);
        Assert.Equal(2f, fault.Value);
        Assert.Equal([1], result.Cutouts.Select(cutout => cutout.Stage));
    }

    // 0.67 of the current is 1.49 of the resistance: more than all sections together, so no contact explains it.
    [Fact]
    public void CurrentSensor_ReadsTooLittle_ShowsNoKnownResistance()
    {
        RunResult result = ShippedCase.Run("current-sensor").Result;

        // The line closes at 35 ms, its current is judged 60 ms later.
        FaultEntry fault = AssertFirst(result, FaultId.SectionDrifted, 0.095, 0.095 + 2 * Period);
        Assert.Equal(0.67, fault.Value / fault.Limit, 0.01);
        Assert.InRange(result.PeakAmps, 76, 80);
    }

    // Level 1 after tau ln(end / (end - 1)) from cold with end = (I / 1.12 In)^2; the start and ten seconds' work came before, so
    // a little earlier.
    [Fact]
    public void Overload_ReachesItsLimitAsTheThermalImageSays()
    {
        RunResult result = ShippedCase.Run("overload").Result;

        double end = Math.Pow(170.4 / (1.12 * 93), 2);
        double cold = 10 + 125 * Math.Log(end / (end - 1));
        FaultEntry fault = AssertFirst(result, FaultId.Overload, cold - 4, cold);
        Assert.Equal(170.4, fault.Value, 0.1);
        Assert.Equal(93f, fault.Limit);
    }

    [Fact]
    public void PermissiveLost_AfterTheConfirmTime_NamesTheInput()
    {
        RunResult result = ShippedCase.Run("permissive-lost").Result;

        FaultEntry fault = AssertFirst(result, FaultId.PermissiveLost, 5.02, 5.02 + 2 * Period);
        Assert.Equal((1f, 3f), (fault.Value, fault.Limit));
        Assert.Equal("input 2", FaultText.Measured(fault));
    }

    private static FaultEntry AssertFirst(RunResult result, FaultId id, double from, double to)
    {
        FaultEntry first = Assert.Single(result.Faults);
        Assert.Equal(id, first.Id);
        // A tick's own time is a product of floats.
        Assert.InRange(first.Seconds, from - 1e-9, to);
        Assert.Equal(Phase.Tripped, result.Phases[^1].Phase);
        Assert.Same(first, Assert.Single(result.Timeline, entry => entry.Fault != null).Fault);
        return first;
    }
}
