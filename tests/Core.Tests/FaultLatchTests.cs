using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The first cause wins and stays until a reset finds it gone.</summary>
public sealed class FaultLatchTests
{
    [Fact]
    public void Latch_LaterFault_DoesNotOverwriteTheFirst()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = -1200f;
        bench.Tick();

        bench.Readings.ArmatureAmps = float.NaN;
        bench.PressEmergencyStop();

        bench.AssertTripped(FaultId.Overcurrent, -1200f, 1000f);
        Assert.Equal((Phase.Running, 4), (bench.Controller.Fault.InPhase, bench.Controller.Fault.InStage));
    }

    [Fact]
    public void Reset_FirstCauseGoneAnotherPresent_IsRefused()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = 1200f;
        bench.Tick();

        bench.Readings.ArmatureAmps = 0f;
        bench.Readings.SpeedValid = false;
        bench.Tick().PressReset();

        bench.AssertTripped(FaultId.Overcurrent, 1200f, 1000f);
        bench.AssertWhy(Reason.ResetRefused, (int)FaultId.Overcurrent, 0f);
    }

    [Fact]
    public void Reset_HeldUntilTheCauseIsGone_NeedsAnotherPress()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.EmergencyStop = true;
        bench.Tick();
        bench.Readings.ResetPressed = true;
        bench.Tick();
        bench.AssertWhy(Reason.ResetRefused, (int)FaultId.EmergencyStop, 0f);

        bench.Readings.EmergencyStop = false;
        bench.Ticks(20);
        Assert.Equal(Phase.Tripped, bench.Controller.Phase);

        bench.Readings.ResetPressed = false;
        bench.Tick().PressReset();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Reset_OnTheTickOfTheTrip_IsRefused()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = 1200f;

        bench.PressReset();

        bench.AssertTripped(FaultId.Overcurrent, 1200f, 1000f);
        bench.AssertWhy(Reason.ResetRefused, (int)FaultId.Overcurrent, 0f);
    }

    [Fact]
    public void Reset_StartHeld_IsRefusedAndStartsNothing()
    {
        Bench bench = new Bench().Tick().PressEmergencyStop().Tick();
        bench.Readings.StartPressed = true;
        bench.Tick();

        bench.PressReset();
        bench.AssertWhy(Reason.ResetRefused, (int)FaultId.EmergencyStop, 0f);
        bench.AssertAllOff();

        bench.Readings.StartPressed = false;
        bench.Tick().PressReset();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Reset_ContactStillWelded_IsRefused()
    {
        Bench bench = new Bench().Run();
        bench.StagesStuck = 2;
        bench.PressStop().Ticks(100).AssertTripped(FaultId.ContactDidNotOpen, 2f, 0f);

        bench.PressReset();
        Assert.Equal(Reason.ResetRefused, bench.Controller.Why.Reason);

        bench.StagesStuck = 0;
        bench.Tick().PressReset();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Fact]
    public void Reset_WhileReadyOrRunning_DoesNothing()
    {
        Bench bench = new Bench().Tick().PressReset();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);

        bench.Run().PressReset();
        Assert.Equal(Phase.Running, bench.Controller.Phase);
    }

    [Fact]
    public void Reset_AfterIt_TheNextFaultIsLatchedWhole()
    {
        Bench bench = new Bench().Run();
        bench.Readings.ArmatureAmps = 1200f;
        bench.Tick();
        bench.Readings.ArmatureAmps = 0f;
        bench.Tick().PressReset();

        bench.PressEmergencyStop();

        bench.AssertTripped(FaultId.EmergencyStop, 1f, 0f);
        Assert.Equal((Phase.Ready, 1), (bench.Controller.Fault.InPhase, bench.Controller.Fault.InStage));
    }

    [Fact]
    public void FaultIds_Numbers_ArePublished()
    {
        Assert.Equal(
            [
                "None=0", "EmergencyStop=1", "ReadingInvalid=2", "Overcurrent=3", "ContactDidNotClose=4", "ContactDidNotOpen=5",
                "StageTookTooLong=6", "NoField=7", "FieldLost=8", "SupplyLow=9", "SupplyHigh=10", "Overload=11",
                "SequenceIncomplete=12", "Stalled=13", "SpeedSignalLost=14", "BackEmfDisagreement=15", "Overspeed=16",
                "ReverseRotation=17", "ResistorTooHot=18", "PermissiveLost=19", "LoopLate=20", "SettingsInvalid=21",
                "BrakeDidNotFinish=22", "CurrentWhileOpen=23", "SectionDrifted=24",
            ],
            Array.ConvertAll(Enum.GetValues<FaultId>(), fault => $"{fault}={(int)fault}"));
    }
}
