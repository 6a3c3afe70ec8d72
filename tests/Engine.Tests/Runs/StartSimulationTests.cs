using System;
using System.Linq;
using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class StartSimulationTests
{
    private static readonly Rig PanelRig = Rigs.LineShaft with { Control = Rigs.Panel, Contactors = new Contactors(0.04, 0.015) };

    [Fact]
    public void Run_ContactorDelays_ShiftCutoutsByExactlyTheClosingTime()
    {
        const double Closing = 0.04;
        RunResult ideal = Rigs.LineShaft.Run();
        RunResult delayed = (Rigs.LineShaft with { Contactors = new Contactors(Closing, 0.015) }).Run();

        Assert.Equal(3, delayed.Cutouts.Count);
        Assert.All(ideal.Cutouts, cutout => Assert.Equal(cutout.CommandSeconds, cutout.Seconds, 1e-12));
        Assert.All(delayed.Cutouts, cutout => Assert.Equal(cutout.CommandSeconds + Closing, cutout.Seconds, 1e-12));
        // The line contact closes later by as much, so the first threshold is met later by as much.
        Assert.Equal(ideal.Cutouts[0].CommandSeconds + Closing, delayed.Cutouts[0].CommandSeconds, 1e-9);
    }

    [Fact]
    public void Run_ClosingTimeBetweenTicks_ClosesBetweenTicks()
    {
        RunResult run = (PanelRig with { Contactors = new Contactors(0.0123456, 0.01) }).Run();

        Assert.All(run.Cutouts, cutout => Assert.Equal(cutout.CommandSeconds + 0.0123456, cutout.Seconds, 1e-12));
        Assert.All(run.Cutouts, cutout => Assert.Equal(Math.Round(cutout.CommandSeconds * 1000), cutout.CommandSeconds * 1000, 1e-6));
    }

    [Fact]
    public void Run_AnyDelays_NeverLiftAPeakAboveTheDesign() =>
        Gen.Select(Rigs.Any, Gen.Double[0, 0.2], Gen.Int[0, 20_000], Gen.Int[0, 100_000]).Sample((rig, closing, confirm, dwell) =>
        {
            Rig delayed = rig with
            {
                Control = new ControlSetup { ConfirmMicroseconds = confirm, MinimumDwellMicroseconds = dwell, InstantTripAmps = 1e6 },
                Contactors = new Contactors(closing, 0.01),
            };

            RunResult run = delayed.Run();

            Assert.InRange(run.PeakAmps, 0, rig.PeakAmps!.Value * (1 + 1e-4));
            Assert.Empty(run.Faults);
        }, iter: 60);

    // At a low or a high supply the thresholds move with the measured volts. The very first current, at standstill with
    // everything in, can only be that of the supply.
    [Fact]
    public void Run_AnySupply_KeepsEveryCutoutBelowThePeakCurrent() =>
        Gen.Select(Rigs.Any, Gen.Double[0.7, 1.3]).Sample((rig, part) =>
        {
            double rated = rig.Supply.OpenCircuitVolts, limit = rig.PeakAmps!.Value * (1 + 1e-4);
            Rig offRated = rig with
            {
                DesignVolts = rated,
                Supply = rig.Supply with { OpenCircuitVolts = part * rated },
                Control = rig.Control with { PeriodMicroseconds = 100 },
            };

            RunResult run = offRated.Run();

            Assert.Empty(run.Faults);
            Assert.All(run.Cutouts, cutout => Assert.InRange(cutout.PeakAmpsAfter, 0, limit));
            if (part <= 1) Assert.InRange(run.PeakAmps, 0, limit);
        }, iter: 100);

    [Theory]
    [InlineData(0.9)]
    [InlineData(1.1)]
    public void Run_SupplyTenPercentOff_CutsOutEveryStageAtThePeakCurrent(double part)
    {
        RunResult run = (Rigs.LineShaft with { DesignVolts = 220, Supply = new Supply(220 * part, 0), Machine = Rigs.LineShaft.Machine with { ArmatureHenries = 0 } }).Run();

        Assert.Equal(3, run.Cutouts.Count);
        Assert.All(run.Cutouts, cutout => Assert.Equal(1, cutout.PeakAmpsAfter / 156, 1e-3));
        Assert.All(run.Cutouts, cutout => Assert.InRange(cutout.PeakAmpsAfter, 0, 156 * (1 + 1e-6)));
    }

    [Fact]
    public void Run_SupplyStepsUpDuringTheStart_KeepsLaterCutoutsBelowThePeakCurrent()
    {
        RunResult run = (Rigs.LineShaft with { Events = [new RunEvent(0.5, null, 240, null)] }).Run();

        Assert.Equal(3, run.Cutouts.Count);
        Assert.All(run.Cutouts.Where(cutout => cutout.Seconds > 0.5), cutout => Assert.InRange(cutout.PeakAmpsAfter, 100, 156.01));
    }

    [Fact]
    public void Run_LoadStep_FindsItsNewSpeedWithoutTheController()
    {
        Rig rig = PanelRig with { DurationSeconds = 9, Events = [new RunEvent(5.00025, 110, null, null)] };

        RunResult run = rig.Run();

        TimelineEntry step = Assert.Single(run.Timeline, entry => entry.Event != null);
        Assert.Equal(5.00025, step.Seconds, 1e-12);
        Assert.Equal(70 / 1.69, step.ArmatureAmps, 0.01);
        Assert.Equal(110 / 1.69, run.FinalAmps, 0.001);
        Assert.Equal((218 - 0.18 * 110 / 1.69) / 1.69 * 30 / Math.PI, run.FinalRpm, 0.01);
        Assert.Equal(3, run.Cutouts.Count);
        Assert.Equal([Phase.Ready, Phase.Accelerating, Phase.Running], run.Phases.Select(entry => entry.Phase));
    }

    [Fact]
    public void Run_StopPressed_OpensEverythingAndIsReadyAgain()
    {
        Record record = new(1000);
        Rig rig = PanelRig with { DurationSeconds = 8, Events = [new RunEvent(4, null, null, OperatorCommand.Stop)] };

        RunResult run = rig.Run(record);

        Assert.Equal([Phase.Ready, Phase.Accelerating, Phase.Running, Phase.Stopping, Phase.Ready], run.Phases.Select(entry => entry.Phase));
        Assert.Equal(4, run.Phases[3].Seconds, 1e-9);
        Assert.Equal(4.015, run.Phases[4].Seconds, 0.002);
        Sample end = record.Samples[^1];
        Assert.False(end.LineClosed || end.CloseLine);
        Assert.Equal(0, end.StagesClosed | end.CloseStages);
        Assert.Equal(0, run.FinalAmps);
        Assert.Empty(run.Faults);

        // Between command and contact the current flows on; then the shaft coasts on its load alone.
        Assert.True(record.Samples.Single(sample => Math.Abs(sample.TimeSeconds - 4.015) < 1e-9).LineClosed is false);
        Assert.True(record.Samples.Single(sample => Math.Abs(sample.TimeSeconds - 4.014) < 1e-9).ArmatureAmps > 40);
        Sample coasting = record.Samples.Single(sample => Math.Abs(sample.TimeSeconds - 5.015) < 1e-9);
        Sample opened = record.Samples.Single(sample => Math.Abs(sample.TimeSeconds - 4.015) < 1e-9);
        Assert.Equal(70 / 2.5, opened.SpeedRadPerSec - coasting.SpeedRadPerSec, 1e-3);
        Assert.Equal(0.5 * 0.003 * Math.Pow(70 / 1.69, 2), run.ArcJoules, 0.01);
    }

    [Fact]
    public void Run_EmergencyStopReleased_StaysTrippedUntilReset()
    {
        Rig rig = PanelRig with
        {
            DurationSeconds = 12,
            Events =
            [
                new RunEvent(0, null, null, OperatorCommand.Start),
                new RunEvent(1, null, null, OperatorCommand.EmergencyStop),
                new RunEvent(2, null, null, OperatorCommand.Reset),
                new RunEvent(3, null, null, OperatorCommand.ReleaseEmergencyStop),
                new RunEvent(4, null, null, OperatorCommand.Start),
                new RunEvent(5, null, null, OperatorCommand.Reset),
                new RunEvent(7, null, null, OperatorCommand.Start),
            ],
        };

        RunResult run = rig.Run();

        FaultEntry fault = Assert.Single(run.Faults);
        Assert.Equal(FaultId.EmergencyStop, fault.Id);
        Assert.Equal(1, fault.Seconds, 1e-9);
        (Phase Phase, double Seconds)[] expected = [(Phase.Tripped, 1), (Phase.Ready, 5), (Phase.Accelerating, 7)];
        foreach ((Phase phase, double seconds) in expected)
        {
            Assert.Contains(run.Phases, entry => entry.Phase == phase && Math.Abs(entry.Seconds - seconds) < 1e-9);
        }

        Assert.Equal(6, run.Phases.Count);
        Assert.Equal(Phase.Running, run.Phases[^1].Phase);
    }

    [Fact]
    public void Run_LoadHoldsTheMotor_TripsWhenTheStageTookTooLong()
    {
        Rig rig = PanelRig with
        {
            Load = new Load(400, 0, 0),
            Control = Rigs.Panel with { MaximumStageMicroseconds = 1_000_000 },
            Contactors = new Contactors(0, 0),
            DurationSeconds = 2,
        };

        RunResult run = rig.Run();

        // Closed at 0, seen closed a period later, and timed from there.
        FaultEntry fault = Assert.Single(run.Faults);
        Assert.Equal(FaultId.StageTookTooLong, fault.Id);
        Assert.Equal(1.001, fault.Seconds, 1e-9);
        Assert.Equal(1, fault.Value);
        Assert.Equal(1, fault.Limit);
        Assert.Empty(run.Cutouts);
        Assert.Equal(0, run.FinalRpm);
        Assert.Equal(0, run.FinalAmps);
        Assert.Null(run.SecondsToSpeed);
        Assert.Equal(156, run.PeakAmps, 0.01);
        Assert.Equal(Phase.Tripped, run.Phases[^1].Phase);
    }

    [Fact]
    public void Run_LoadGrowsOnStageTwo_TripsOnThatStage()
    {
        // 140 N m take 82.8 A; stage 2 would end at 78.8 A.
        Rig rig = PanelRig with
        {
            Events = [new RunEvent(1.6, 140, null, null)],
            Control = Rigs.Panel with { MaximumStageMicroseconds = 3_000_000 },
            DurationSeconds = 6,
        };

        RunResult run = rig.Run();

        FaultEntry fault = Assert.Single(run.Faults);
        Assert.Equal(FaultId.StageTookTooLong, fault.Id);
        Assert.Equal(2, fault.Value);
        Assert.Equal(Assert.Single(run.Cutouts).Seconds + 3, fault.Seconds, 0.002);
    }

    [Fact]
    public void Run_CurrentAboveTheInstantTrip_TripsOnTheNextTick()
    {
        // A supply of 260 V drives 185 A through what was designed for 220 V and 156 A.
        RunResult run = (PanelRig with { Supply = new Supply(260, 0), DesignVolts = 220, Control = Rigs.Panel with { InstantTripAmps = 160 } }).Run();

        FaultEntry fault = Assert.Single(run.Faults);
        Assert.Equal(FaultId.Overcurrent, fault.Id);
        Assert.Equal(160, fault.Limit);
        Assert.InRange(fault.Value, 160, 185);
        Assert.InRange(fault.Seconds, 0.04, 0.05);
        Assert.Equal(0, run.FinalAmps);
    }

    [Fact]
    public void Run_Lockout_HoldsTheCutoutUntilTheCurrentIsBelow()
    {
        RunResult free = (Rigs.LineShaft with { Load = Load.None }).Run();
        Rig rig = Rigs.LineShaft with { Load = Load.None, Control = Rigs.LineShaft.Control with { LockoutAmps = 50 } };

        RunResult run = rig.Run();

        Assert.Equal(3, run.Cutouts.Count);
        Assert.All(run.Cutouts, cutout => Assert.InRange(cutout.AmpsBefore, 49, 50));
        Assert.True(run.Cutouts[0].Seconds > free.Cutouts[0].Seconds + 0.1);
        Assert.Contains(run.Timeline, entry => entry.Reason == Reason.CurrentAboveLockout);
    }

    [Fact]
    public void Run_Dwell_HoldsTheCutoutAndKeepsTheThresholdsTime()
    {
        RunResult free = Rigs.LineShaft.Run();
        Rig rig = Rigs.LineShaft with { Control = Rigs.LineShaft.Control with { MinimumDwellMicroseconds = 2_000_000 }, DurationSeconds = 8 };

        RunResult run = rig.Run();

        Assert.Equal(3, run.Cutouts.Count);
        Assert.Equal(free.Cutouts[0].Seconds, run.Cutouts[0].ThresholdSeconds, 50e-6);
        Assert.Equal(2, run.Cutouts[0].CommandSeconds, 50e-6);
        Assert.Equal(2, run.Cutouts[1].Seconds - run.Cutouts[0].Seconds, 50e-6);
    }

    [Fact]
    public void Run_Lockout_KeepsTheThresholdsTime()
    {
        RunResult free = (Rigs.LineShaft with { Load = Load.None }).Run();
        Rig rig = Rigs.LineShaft with { Load = Load.None, Control = Rigs.LineShaft.Control with { LockoutAmps = 50 } };

        RunResult run = rig.Run();

        Assert.Equal(free.Cutouts[0].Seconds, run.Cutouts[0].ThresholdSeconds, 50e-6);
    }

    [Fact]
    public void Run_ConfirmTime_HoldsTheCutoutByItself()
    {
        RunResult free = Rigs.LineShaft.Run();
        RunResult confirmed = (Rigs.LineShaft with { Control = Rigs.LineShaft.Control with { ConfirmMicroseconds = 3000 } }).Run();

        Assert.Equal(0.003, confirmed.Cutouts[0].Seconds - free.Cutouts[0].Seconds, 1e-9);
        Assert.Equal(free.Cutouts[0].ThresholdSeconds, confirmed.Cutouts[0].ThresholdSeconds, 1e-9);
    }

    // The longer run has 600 000 points, so that the remembered speeds are thinned many times over.
    [Theory]
    [InlineData(5)]
    [InlineData(12)]
    public void Run_ConstantTorqueWithoutInductance_IsUpToSpeedAtTheClosedFormTime(double duration)
    {
        const double K = 1.69, J = 2.5, Torque = 70, LoadAmps = Torque / K;
        Rig rig = Rigs.LineShaft with { Machine = Rigs.LineShaft.Machine with { ArmatureHenries = 0 }, DurationSeconds = duration };
        StarterDesign design = rig.Design();

        RunResult run = rig.Run();

        double seconds = design.Stages.Sum(stage => J * stage.TotalOhms / (K * K) * Math.Log((stage.PeakAmps - LoadAmps) / (stage.SwitchingAmps - LoadAmps)));
        double settled = (218 - 0.18 * LoadAmps) / K, from = design.Stages[^1].CutoutVolts / K;
        seconds += J * 0.18 / (K * K) * Math.Log((settled - from) / (settled - 0.95 * settled));
        Assert.Equal(settled * 30 / Math.PI, run.FinalRpm, 0.001);
        Assert.Equal(seconds, run.SecondsToSpeed!.Value, 50e-6);
    }

    [Fact]
    public void Run_SpinningFasterThanItEnds_HasNoTimeToSpeed()
    {
        RunResult run = (PanelRig with { InitialSpeedRadPerSec = 150, Load = new Load(70, 0, 0) }).Run();

        Assert.True(run.FinalRpm > 0);
        Assert.Null(run.SecondsToSpeed);
    }

    [Fact]
    public void Run_RmsAmps_IsTheArmaturesHeat()
    {
        Rig rig = PanelRig with { Machine = PanelRig.Machine with { BrushDropVolts = 0 } };

        RunResult run = rig.Run();

        Assert.Equal(1, run.RmsAmps * run.RmsAmps * 0.18 * rig.DurationSeconds / run.ArmatureJoules, 1e-12);
        Assert.Equal(1, run.PeakTorqueNewtonMetres / (1.69 * run.PeakAmps), 1e-12);
    }

    [Fact]
    public void Run_SourceResistance_IsBookedBesideTheSupply()
    {
        RunResult run = (PanelRig with { Supply = new Supply(220, 0.05) }).Run();

        Assert.Equal(1, run.SourceJoules / (run.RmsAmps * run.RmsAmps * 4 * 0.05), 1e-12);
    }
}
